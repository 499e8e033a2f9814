// A double-ended dart as it is drawn, reported and carried along by a fit alteration.
import { expect, test } from "vitest";
import { drawPiece } from "../../kernel/drawing/draw.ts";
import type { Stroke, StrokeKind } from "../../kernel/drawing/drawing.ts";
import { pieceInWords } from "../../kernel/drawing/piece-in-words.ts";
import { endOf, startOf } from "../../kernel/geometry/path.ts";
import { between } from "../../kernel/geometry/point.ts";
import { workedText } from "../worked-recipe.ts";

const front = (dart: string, more = ""): string => `chalkline 1
units cm
piece front {
  point bust    = (9 cm, 26 cm)
  curve neck    = (0, 6 cm) to (7.4 cm, -2.5 cm) handles (4 cm, 6 cm), (5.6 cm, 1.8 cm)
  line shoulder = (7.4 cm, -2.5 cm) to (20 cm, 2.7 cm)
  curve armhole = (20 cm, 2.7 cm) to (27 cm, 24 cm) through (17.5 cm, 13 cm) heading down arriving right
  line side     = (27 cm, 24 cm) to (27 cm, 60 cm)
  line hem      = (0, 60 cm) to (27 cm, 60 cm)
  line center   = (0, 6 cm) to (0, 60 cm)
  outline center, neck, shoulder, armhole, side, hem
  mark hem as hem
  line waist = center at 34 cm to side at 16 cm
  double-ended-dart inner = ${dart}
  ${more}
}
`;

const strokesOf = (text: string, kind: StrokeKind): Stroke[] => {
  const { garment } = workedText(text);
  const [group] = drawPiece(garment, garment.pieces.get("front")!).groups;
  return group!.strokes.filter((stroke) => stroke.kind === kind && stroke.of?.name === "inner");
};

const upright = "waist at 20 cm width 2 cm above 10 cm below 8 cm";

test("is drawn with four stitch lines and its fold from tip to tip, and without notches", () => {
  expect(strokesOf(front(upright), "sewing-line")).toHaveLength(4);
  const [fold, ...others] = strokesOf(front(upright), "dart-center");
  expect(others).toEqual([]);
  expect([startOf(fold!.path), endOf(fold!.path)]).toEqual([
    { x: 200, y: 300 },
    { x: 200, y: 480 },
  ]);
  expect(strokesOf(front(upright), "notch")).toEqual([]);
});

const holesOf = (text: string): string[] =>
  strokesOf(text, "drill")
    .filter(({ path }) => startOf(path).y === endOf(path).y)
    .map(({ path }) => between(startOf(path), endOf(path), 0.5))
    .map(({ x, y }) => `${x.toFixed(3)}, ${y.toFixed(3)}`);

// 10 to 15 mm short of each tip along the fold, 2 to 5 mm inside the legs at the widest: handbook of the trade 5.5.
test("has its drill holes 12 mm short of the tips and 3 mm inside the legs at the widest", () => {
  expect(holesOf(front(upright))).toEqual([
    "200.000, 312.000",
    "200.000, 468.000",
    "193.000, 400.000",
    "207.000, 400.000",
  ]);
});

// Half of 20 mm is 10; a quarter of 8 mm is 2.
test("has them nearer in a dart too small for that", () => {
  expect(holesOf(front("waist at 20 cm width 8 mm above 2 cm below 2 cm"))).toEqual([
    "200.000, 390.000",
    "200.000, 410.000",
    "198.000, 400.000",
    "202.000, 400.000",
  ]);
});

// The root of 100 squared and 10 squared is 100.50, that of 80 squared and 10 squared 80.62.
test("is read out with the legs of both halves", () => {
  const { garment } = workedText(front(upright));
  expect(pieceInWords(garment, garment.pieces.get("front")!)).toContain(
    "inner on the waist, 2 cm wide, 10.05 cm along the upper leg, 8.06 cm along the lower",
  );
});

const fuller = "fuller-bust bust-dart = bust by 1.5 cm about armhole at 60% to side at 6 cm";

test("lies in one part of a front that is made fuller, and goes with it", () => {
  const { findings, garment } = workedText(front(upright, fuller));
  expect(findings.map(({ code }) => code)).toEqual([]);
  const { first, lower } = garment.pieces.get("front")!.darts.get("inner")!;
  // The part at the side and below follows the bust point without turning, which goes out by 15 mm.
  expect(first.x).toBeCloseTo(190 + 15, 6);
  expect(lower!.x).toBeCloseTo(200 + 15, 6);
});

test("under the bust point it would be cut in two, which is said", () => {
  const { findings } = workedText(front("waist at 9 cm width 2 cm above 10 cm below 8 cm", fuller));
  expect(findings.map(({ code, message }) => [code, message])).toEqual([
    ["slash-through-dart", "The parts that move meet in the dart inner."],
  ]);
});

test("a line that goes another way than its dart is refused", () => {
  const short = front(
    upright,
    "line low = (7 cm, 50 cm) to (20 cm, 48 cm)\n  double-ended-dart more = low at 12.6 mm width 4 mm above 2 cm below 2 cm\n  " +
      fuller,
  );
  const { findings } = workedText(short);
  expect(findings.map(({ code }) => code)).toEqual(["dart-off-edge"]);
});
