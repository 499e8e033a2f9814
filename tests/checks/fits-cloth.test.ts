// How wide a piece may be across the grain.
import { describe, expect, test } from "vitest";
import { fitsCloth } from "../../kernel/checks/fits-cloth.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { toRadians } from "../../kernel/geometry/trig.ts";
import type { Grain, Judgement, Piece } from "../../kernel/working.ts";
import {
  allowed,
  at,
  atLine,
  cut,
  garment,
  judgementsOf,
  madePiece,
  marked,
  panel,
  rectangle,
  shell,
} from "./made-garment.ts";

const along = (edge: string): Grain => ({ kind: "along", edge, drawnBy: atLine(25) });

const judged = (piece: Piece): Judgement[] => judgementsOf(fitsCloth, garment([piece], { cuts: [cut(piece.name)] }));

/** A piece of this width and 400 long, with 15 mm all round, its grain down the center. */
const wide = (width: number): Piece => allowed(rectangle("valance", width, 400, { grain: along("center") }), 15);

// The cloth is 1500 wide, and the allowances take 15 on either side.
describe("across the grain", () => {
  test.each([
    [1469.99, "pass"],
    [1470, "pass"],
    [1470.01, "error"],
  ])("%f mm and twice 15: %s", (width, verdict) => {
    const judgements = judged(wide(width));
    expect(judgements).toMatchObject([{ on: "valance", verdict, where: { line: 60 } }]);
    expect(judgements[0]?.found).toBeCloseTo(width + 30, 6);
  });

  test("in words", () => {
    expect(judged(wide(1600))).toMatchObject([
      {
        wanted: "at most 1500 mm",
        message: "With its allowances valance is 1630 mm wide across the grain; shell is 1500 mm wide.",
        related: [{ where: { line: 5 } }, { where: { line: 25 } }],
      },
    ]);
  });

  test("along the grain a piece may be as long as it likes", () => {
    const long = allowed(rectangle("valance", 3000, 400, { grain: along("top") }), 15);
    expect(judged(long)).toMatchObject([{ verdict: "pass", found: expect.closeTo(430, 6) }]);
  });

  // Turned by any angle with its grain a piece is as wide as before.
  test.each([10, 45, 137])("turned by %d deg", (degrees) => {
    const turned = (x: number, y: number) => rotated(at(x, y), at(70, 20), toRadians(degrees));
    const corners = [turned(0, 0), turned(1000, 0), turned(1000, 400), turned(0, 400)] as const;
    const piece = allowed(panel("valance", corners, { grain: along("center") }), 15);
    expect(judged(piece)[0]?.found).toBeCloseTo(1030, 6);
  });

  // On the true bias a square of 1000 lies with its diagonal, 1000 times the root of 2, across the cloth.
  test("on the bias", () => {
    const bias: Grain = { kind: "line", from: at(0, 0), to: at(500, 500), drawnBy: atLine(25) };
    const piece = allowed(rectangle("cowl", 1000, 1000, { grain: bias }), 0);
    expect(judged(piece)[0]?.found).toBeCloseTo(1000 * Math.SQRT2, 6);
  });
});

describe("on the fold", () => {
  const folded = (width: number, more: Partial<Piece> = {}): Piece =>
    allowed(marked(rectangle("back", width, 1000, more), "center", "fold"), 15);

  // Half of 1500 is 750, of which 15 go to the one allowance beyond the side.
  test.each([
    [734.99, "pass"],
    [735, "pass"],
    [735.01, "error"],
  ])("%f mm and 15 on half the cloth: %s", (width, verdict) => {
    const judgements = judged(folded(width));
    expect(judgements).toMatchObject([{ verdict }]);
    expect(judgements[0]?.found).toBeCloseTo(2 * (width + 15), 6);
  });

  test("in words", () => {
    expect(judged(folded(800))[0]?.message).toBe(
      "With its allowances, opened on its fold, back is 1630 mm wide across the grain; shell is 1500 mm wide.",
    );
  });
});

// Source: trade handbook 7.6, circle skirt for a waist of 700, 650 long, allowances of 15: the radius of the hem is 761.41,
// and a half circle needs 1552.8 along and 791.4 across. Here a quarter on the fold makes the half, the fold along the grain.
test("half a circle skirt needs 1552.8 mm", () => {
  const [waist, hem] = [111.4085, 761.4085];
  const quarter = marked(
    madePiece("skirt", [
      ["center", straight(at(0, waist), at(0, hem))],
      ["hem", arcSpans(at(0, 0), at(0, hem), -Math.PI / 2)],
      ["side", straight(at(hem, 0), at(waist, 0))],
      ["waist", arcSpans(at(0, 0), at(waist, 0), Math.PI / 2)],
    ]),
    "center",
    "fold",
  );
  const [across] = judged(allowed(quarter, 15));
  expect(across).toMatchObject({ verdict: "error" });
  expect(across?.found).toBeCloseTo(1552.8, 1);
});

describe("nothing to measure", () => {
  test("without a width of the cloth", () => {
    const { width: _, ...unknown } = shell;
    const of = garment([wide(5000)], { cuts: [cut("valance")], fabrics: new Map([["shell", unknown]]) });
    expect(judgementsOf(fitsCloth, of)).toEqual([]);
  });

  test("without a grain line, a closed outline, or a cut", () => {
    const { grain: _, ...ungrained } = wide(5000);
    expect(judged(ungrained)).toEqual([]);
    expect(judged({ ...wide(5000), outline: [] })).toEqual([]);
    expect(judgementsOf(fitsCloth, garment([wide(5000)]))).toEqual([]);
  });

  test("on a piece with a failed line", () => {
    expect(judged({ ...wide(5000), doubtful: true })).toEqual([]);
  });
});
