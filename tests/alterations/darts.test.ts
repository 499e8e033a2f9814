// Darts: the handbook's figures, and what must hold of any dart that is moved, split, closed, trued or carried along.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shut } from "../../kernel/alter/shut.ts";
import { dartMeasures } from "../../kernel/dart-measures.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { corners, cubic, endOf, type Path, startOf, straight } from "../../kernel/geometry/path.ts";
import { distance, minus, type Point } from "../../kernel/geometry/point.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { asin, tan, toDegrees, toRadians, turnBetween } from "../../kernel/geometry/trig.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { closeDart } from "../../kernel/steps/close-dart.ts";
import { dart } from "../../kernel/steps/dart.ts";
import { dartToGathers } from "../../kernel/steps/dart-to-gathers.ts";
import { extendHem } from "../../kernel/steps/extend-hem.ts";
import { moveDart } from "../../kernel/steps/move-dart.ts";
import { shortenDart } from "../../kernel/steps/shorten-dart.ts";
import { splitDart } from "../../kernel/steps/split-dart.ts";
import { spreadFrom } from "../../kernel/steps/spread-from.ts";
import { trueSeam } from "../../kernel/steps/true-seam.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Dart, Piece } from "../../kernel/working.ts";
import {
  apart,
  areaOf,
  at,
  lengthOf,
  madePiece,
  pathOf,
  place,
  placeOf,
  problemOf,
  rectangle,
  worked,
} from "./made-piece.ts";

const dartOf = (piece: Piece, name: string): Dart => piece.darts.get(name)!;
const angleOf = (piece: Piece, name: string): number => dartMeasures(dartOf(piece, name)).angle;
const widthOf = (piece: Piece, name: string): number => dartMeasures(dartOf(piece, name)).width;

/** A skirt panel with its waist on top, and a dart in the middle of it. */
const panel = (width: number, long: number): Piece =>
  worked(
    dart,
    { name: "pinch", place: place(150, 0, { on: "top" }), width, long },
    rectangle(300, 600, { hem: "hem", center: "fold" }),
  ).now;

/** How far the peak of a cap stands outside of the straight line between the leg ends. */
const peakOf = (piece: Piece, name: string): number => {
  const { first, second, tip, edge } = dartOf(piece, name);
  const path = pathOf(piece, edge);
  const middle = at((first.x + second.x) / 2, (first.y + second.y) / 2);
  const [from, to] = [nearest(path, first).at, nearest(path, second).at];
  const peaks = Array.from({ length: 401 }, (_, i) => pointAt(path, from + ((to - from) * i) / 400));
  return Math.max(...peaks.map((point) => distance(point, tip))) - distance(middle, tip);
};

describe("a dart drawn on a straight edge", () => {
  test("25 wide and 140 deep has legs of 140.557 and 10.204 deg", () => {
    // Source: handbook of the trade 4.8, check value 36.
    const { legs, angle } = dartMeasures(dartOf(panel(25, 140), "pinch"));
    expect(legs[0]).toBeCloseTo(140.557, 3);
    expect(legs[1]).toBeCloseTo(140.557, 3);
    expect(toDegrees(angle)).toBeCloseTo(10.204, 3);
  });
  test("takes its width out of the sewn edge, and nothing more", () => {
    expect(sewnLengthOf(panel(25, 140), "top")).toBeCloseTo(275, 9);
  });
  test("20 wide and 100 deep has a cap of 2.020", () => {
    // Source: handbook of the trade 4.10, check value 42: (w/2) tan 2 phi, where the edge runs straight across the open dart.
    expect(peakOf(panel(20, 100), "pinch")).toBeCloseTo(2.02, 3);
    expect(peakOf(panel(20, 100), "pinch")).toBeCloseTo(10 * tan(2 * Math.atan(0.1)), 6);
  });
  test("has the cap of the side that it is folded to, and both halves of it lie on one another", () => {
    const piece = panel(20, 100);
    const slanted = worked(
      dart,
      { name: "slant", place: place(300, 200, { on: "side" }), width: 20, tip: at(220, 230) },
      piece,
    ).now;
    const { first, second, tip, edge } = dartOf(slanted, "slant");
    const path = pathOf(slanted, edge);
    const [from, to] = [nearest(path, first).at, nearest(path, second).at];
    // Folded down, so the side below covers it: mirrored in the lower leg the cap runs on as the side does.
    const near = pointAt(path, to - 1);
    const below = pointAt(path, to + 1);
    const leg = minus(second, tip);
    expect(turnBetween(leg, minus(near, second))).toBeCloseTo(-turnBetween(leg, minus(below, second)), 6);
    expect(from).toBeLessThan(to);
  });
});

describe("the cap of an edge that is trued with its darts folded shut", () => {
  const trued = worked(trueSeam, { edges: ["top"] }, panel(20, 100)).now;

  test("is square to the legs, and as much higher as the smooth edge bends on the way to the middle", () => {
    // Handbook of the trade 4.10: (w/2) tan phi where the folded edge is straight. Smoothed over 100 mm, the corner of
    // 11.42 deg is a bend of radius 100 / 0.199 = 502 mm; over half the width of 10.2 mm that rises by another 0.1 mm.
    const { width, legs, angle } = dartMeasures(dartOf(trued, "pinch"));
    expect(legs[0]).toBeCloseTo(legs[1], 9);
    const bend = (width / 2) ** 2 / (2 * (100 / toRadians(11.42)));
    expect(Math.abs(peakOf(trued, "pinch") - (width / 2) * tan(angle / 2) - bend)).toBeLessThan(0.02);
  });
  test("an edge square to the legs already is true, and its cap is 1.000", () => {
    // Source: handbook of the trade 4.10, check value 43. Two stretches that each stand square to a leg of the dart.
    const phi = Math.atan(0.1);
    const tip = at(0, 100);
    const [first, second] = [at(-10, 0), at(10, 0)];
    const [left, right] = [
      at(first.x - 100 * Math.cos(phi), 100 * Math.sin(phi)),
      at(second.x + 100 * Math.cos(phi), 100 * Math.sin(phi)),
    ];
    const top: Path = [...straight(left, first), ...straight(first, second), ...straight(second, right)];
    const bare = madePiece([
      { name: "top", path: top },
      { name: "side", path: straight(right, at(120, 400)) },
      { name: "hem", path: straight(at(120, 400), at(-120, 400)) },
      { name: "center", path: straight(at(-120, 400), left) },
    ]);
    const drawn = worked(dart, { name: "pinch", place: place(0, 0, { on: "top" }), width: 20, tip }, bare).now;
    expect(peakOf(drawn, "pinch")).toBeCloseTo(1, 6);
    const again = worked(trueSeam, { edges: ["top"] }, drawn);
    expect(again.words).toBe("top was true already");
    expect(peakOf(again.now, "pinch")).toBeCloseTo(1, 6);
  });
  test("folded shut it is one line without a corner", () => {
    expect(corners(shut(trued, "top").line, toRadians(0.1))).toEqual([]);
    expect(corners(shut(panel(20, 100), "top").line, toRadians(0.1))).toHaveLength(1);
  });
  test("opened again, an edge lies where it lay", () => {
    const piece = panel(20, 100);
    const folded = shut(piece, "top");
    const open = folded.opened(piece, folded.line);
    expect(lengthOf(open, "top")).toBeCloseTo(lengthOf(piece, "top"), 9);
    expect(apart(dartOf(open, "pinch").first, dartOf(piece, "pinch").first)).toBeLessThan(1e-9);
    expect(apart(dartOf(open, "pinch").second, dartOf(piece, "pinch").second)).toBeLessThan(1e-9);
  });
  test("legs of unequal length are equal once trued, at the longer of them", () => {
    const drawn = worked(
      dart,
      { name: "slant", place: place(150, 0, { on: "top" }), width: 20, tip: at(160, 100) },
      rectangle(300, 600),
    ).now;
    const before = dartMeasures(dartOf(drawn, "slant")).legs;
    const after = dartMeasures(dartOf(worked(trueSeam, { edges: ["top"] }, drawn).now, "slant")).legs;
    expect(Math.abs(before[0] - before[1])).toBeGreaterThan(1);
    expect(after[0]).toBeCloseTo(after[1], 6);
    expect(after[0]).toBeGreaterThan(Math.min(...before));
  });
  test("an edge is brought to a sewn length with its darts in it", () => {
    const { now } = worked(trueSeam, { edges: ["top"], length: 290, moving: "end" }, panel(20, 100));
    expect(sewnLengthOf(now, "top")).toBeCloseTo(290, 6);
    const other = worked(trueSeam, { edges: ["top"], length: 290, moving: "start" }, panel(20, 100)).now;
    expect(sewnLengthOf(other, "top")).toBeCloseTo(290, 6);
    expect(distance(endOf(pathOf(other, "top")), at(300, 0))).toBeLessThan(1e-6);
  });
});

describe("a dart that is closed into flare", () => {
  test("opens the hem by w Rh / l", () => {
    // Source: handbook of the trade 4.8, check value 37: 25 wide, 140 deep, 460 from its tip to the hem gives 81.82.
    const { now, words, amount } = worked(closeDart, { name: "pinch", target: { edge: "hem" } }, panel(25, 140));
    expect(lengthOf(now, "hem") - 300).toBeCloseTo(81.82, 2);
    expect(lengthOf(now, "hem") - 300).toBeCloseTo((25 * 460) / Math.hypot(140, 12.5), 6);
    expect(amount).toBeCloseTo(81.82, 2);
    expect(words).toBe("closed pinch, opened 81.8 mm at the hem, 10.2 deg");
    expect(now.darts.size).toBe(0);
    expect(lengthOf(now, "top")).toBeCloseTo(275, 9);
    for (const edge of ["side", "center"]) expect(lengthOf(now, edge)).toBeCloseTo(600, 9);
  });
  test("is bridged about its tip, so that the trued hem has an arc there", () => {
    const { now } = worked(closeDart, { name: "pinch", target: { edge: "hem" } }, panel(25, 140));
    const hem = pathOf(worked(trueSeam, { edges: ["hem"] }, now).now, "hem");
    const arc = hem.filter(({ pivot }) => pivot);
    expect(pathLength(arc)).toBeCloseTo(460 * 2 * asin(12.5 / Math.hypot(140, 12.5)), 4);
  });
});

describe("a dart that is moved", () => {
  /** A disc of a piece: its edges all lie at one distance from the tip, so a moved dart is as wide as where it was. */
  const fan = (radius: number, degrees: number): Piece => {
    const half = radius * Math.sin(toRadians(degrees / 2));
    const deep = radius * Math.cos(toRadians(degrees / 2));
    const edges = madePiece([
      { name: "top", path: straight(at(-400, -deep), at(400, -deep)) },
      { name: "side", path: straight(at(400, -deep), at(400, 400)) },
      { name: "hem", path: straight(at(400, 400), at(-400, 400)) },
      { name: "center", path: straight(at(-400, 400), at(-400, -deep)), role: "fold" },
    ]);
    return worked(dart, { name: "bust", place: place(0, -deep, { on: "top" }), width: 2 * half, tip: at(0, 0) }, edges)
      .now;
  };
  // Sources: handbook of the trade 4.9, check values 39, 40 and 41: the angle, where it goes, and the width it has there.
  test.each([
    [15, 250, 200, 52.21],
    [15, 250, 150, 39.158],
    [10, 200, 260, 45.321],
    [20, 200, 120, 41.676],
  ])("%d deg, from radius %d to radius %d, is %f wide", (degrees, from, to, width) => {
    const drawn = fan(from, degrees);
    // A hem at that distance from the tip.
    const piece = worked(extendHem, { edge: "hem", length: to - 400 }, drawn).now;
    const { now } = worked(moveDart, { name: "bust", to: at(0, to) }, piece);
    expect(widthOf(now, "bust")).toBeCloseTo(width, 2);
    expect(toDegrees(angleOf(now, "bust"))).toBeCloseTo(degrees, 9);
    expect(dartOf(now, "bust").edge).toBe("hem");
    expect(sewnLengthOf(now, "top")).toBeCloseTo(sewnLengthOf(piece, "top"), 6);
  });
  test("leaves a straight edge straight where it closes and where it opens square to its legs", () => {
    const piece = fan(250, 15);
    const moved = worked(moveDart, { name: "bust", to: at(400, 0) }, piece).now;
    const side = shut(moved, "side").line;
    expect(corners(side, toRadians(0.001))).toEqual([]);
    expect(pathLength(side)).toBeCloseTo(lengthOf(piece, "side"), 9);
  });
  test("points to the place that it is turned about, and is as wide as its angle there", () => {
    const piece = worked(shortenDart, { name: "bust", length: 30 }, fan(250, 15)).now;
    const { now } = worked(moveDart, { name: "bust", to: at(400, 0), about: at(0, 0) }, piece);
    expect(dartOf(now, "bust").tip).toEqual(at(0, 0));
    expect(toDegrees(angleOf(now, "bust"))).toBeCloseTo(15, 9);
  });
  test("takes along what lies on the part that turns, and puts what lay on its cloth where it closes", () => {
    const drawn = fan(250, 15);
    const foot = at(0, startOf(pathOf(drawn, "top")).y);
    const named = {
      ...drawn,
      places: new Map([
        ["foot", { name: "foot", point: foot, drawnBy: drawn.drawnBy }],
        ["right", { name: "right", point: at(200, -100), drawnBy: drawn.drawnBy }],
        ["left", { name: "left", point: at(-200, -100), drawnBy: drawn.drawnBy }],
      ]),
    };
    const { now } = worked(moveDart, { name: "bust", to: at(400, 0) }, named);
    expect(placeOf(now, "left")).toEqual(at(-200, -100));
    expect(distance(placeOf(now, "right"), rotated(at(200, -100), at(0, 0), toRadians(-15)))).toBeLessThan(1e-9);
    expect(nearest(pathOf(now, "top"), placeOf(now, "foot")).distance).toBeLessThan(1e-6);
  });
});

/** A four-sided piece of straight and curved edges, with a dart on one, and a place on another to move it to. */
const anyDart = fc
  .record({
    bulges: fc.array(fc.double({ min: -0.1, max: 0.1, noNaN: true }), { minLength: 4, maxLength: 4 }),
    turned: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
    share: fc.double({ min: 0.3, max: 0.7, noNaN: true }),
    to: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
    edge: fc.integer({ min: 1, max: 3 }),
    width: fc.double({ min: 5, max: 40, noNaN: true }),
    long: fc.double({ min: 60, max: 160, noNaN: true }),
  })
  .map(({ bulges, turned, share, to, edge, width, long }) => {
    const spots = [at(-250, -230), at(270, -250), at(260, 240), at(-280, 260)];
    const edges = spots.map((spot, index) => {
      const path = bulging(spot, spots[(index + 1) % 4]!, bulges[index]!);
      return turned[index]
        ? { name: `e${index}`, path: [...path].reverse().map(reversedSpan), turned: true as const }
        : { name: `e${index}`, path };
    });
    const bare = madePiece(edges, { middle: at(5, 8) });
    const on = pathOf(bare, "e0");
    const middle = pointAt(on, share * pathLength(on));
    const piece = worked(
      dart,
      { name: "pinch", place: place(middle.x, middle.y, { on: "e0" }), width, long },
      bare,
    ).now;
    const goal = pathOf(bare, `e${edge}`);
    return { piece, to: pointAt(goal, to * pathLength(goal)), back: middle };
  });

const bulging = (from: Point, to: Point, bulge: number): Path => {
  const out = at(-(to.y - from.y) * bulge, (to.x - from.x) * bulge);
  const third = (share: number): Point =>
    at(from.x + (to.x - from.x) * share + out.x, from.y + (to.y - from.y) * share + out.y);
  return bulge === 0 ? straight(from, to) : [cubic(from, third(1 / 3), third(2 / 3), to)];
};

const reversedSpan = (span: Path[number]): Path[number] =>
  span.kind === "line"
    ? { ...span, start: span.end, end: span.start }
    : { ...span, start: span.end, startHandle: span.endHandle, endHandle: span.startHandle, end: span.start };

/** The place from which the old mouth was reached, as the part that turned has taken it. */
const closedAt = (piece: Piece, length: number): Point => pointAt(pathOf(piece, "e0"), length);

describe("any dart", () => {
  test("has legs of one length, and takes its width exactly", () => {
    fc.assert(
      fc.property(anyDart, ({ piece }) => {
        const { legs } = dartMeasures(dartOf(piece, "pinch"));
        expect(Math.abs(legs[0] - legs[1])).toBeLessThan(1e-9);
      }),
      { numRuns: 60 },
    );
  });
  test("keeps its angle to 1e-9 rad where it is moved to, and every edge its sewn length to 1e-6", () => {
    // Source: handbook of the trade 4.9, check value 44.
    fc.assert(
      fc.property(anyDart, ({ piece, to }) => {
        const { now } = worked(moveDart, { name: "pinch", to }, piece);
        expect(Math.abs(angleOf(now, "pinch") - angleOf(piece, "pinch"))).toBeLessThan(1e-9);
        for (const edge of piece.edges.keys())
          expect(Math.abs(sewnLengthOf(now, edge) - sewnLengthOf(piece, edge))).toBeLessThan(1e-6);
        expect(distance(dartOf(now, "pinch").tip, dartOf(piece, "pinch").tip)).toBe(0);
      }),
      { numRuns: 60 },
    );
  });
  test("moved there and back is the dart that it was", () => {
    fc.assert(
      fc.property(anyDart, ({ piece, to }) => {
        const { now } = worked(moveDart, { name: "pinch", to }, piece);
        const along = nearest(pathOf(piece, "e0"), dartOf(piece, "pinch").first).at;
        const back = worked(moveDart, { name: "pinch", to: closedAt(now, along) }, now).now;
        expect(Math.abs(lengthOf(back, "e0") - lengthOf(piece, "e0"))).toBeLessThan(1e-6);
        expect(Math.abs(areaOf(back) - areaOf(piece))).toBeLessThan(1e-3);
        expect(Math.abs(widthOf(back, "pinch") - widthOf(piece, "pinch"))).toBeLessThan(1e-6);
        const shift = distance(placeOf(back, "middle"), placeOf(piece, "middle"));
        expect(shift).toBeLessThan(1e-6);
        for (const edge of piece.edges.keys())
          expect(distance(startOf(pathOf(back, edge)), startOf(pathOf(piece, edge)))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });
  test("split in two has the angle that it had, and both halves point to its tip", () => {
    fc.assert(
      fc.property(anyDart, fc.double({ min: 0.1, max: 0.9, noNaN: true }), ({ piece, to }, share) => {
        const { now } = worked(splitDart, { names: ["other"], dart: "pinch", places: [to], shares: [share] }, piece);
        expect(Math.abs(angleOf(now, "pinch") + angleOf(now, "other") - angleOf(piece, "pinch"))).toBeLessThan(1e-9);
        expect(Math.abs(angleOf(now, "other") - share * angleOf(piece, "pinch"))).toBeLessThan(1e-9);
        for (const edge of piece.edges.keys())
          if (edge !== "e0") expect(Math.abs(sewnLengthOf(now, edge) - sewnLengthOf(piece, edge))).toBeLessThan(1e-6);
        expect(Math.abs(sewnLengthOf(now, "e0") - sewnLengthOf(piece, "e0"))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });
  test("shut and opened again, its edge lies where it lay", () => {
    fc.assert(
      fc.property(anyDart, fc.constantFrom("start" as const, "end" as const), ({ piece }, stays) => {
        const folded = shut(piece, "e0", stays);
        expect(pathLength(folded.line)).toBeCloseTo(sewnLengthOf(piece, "e0"), 6);
        const open = folded.opened(piece, folded.line);
        expect(distance(dartOf(open, "pinch").first, dartOf(piece, "pinch").first)).toBeLessThan(1e-6);
        expect(distance(dartOf(open, "pinch").second, dartOf(piece, "pinch").second)).toBeLessThan(1e-6);
        expect(Math.abs(lengthOf(open, "e0") - lengthOf(piece, "e0"))).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });
});

describe("darts ride along", () => {
  test("in a slash beside them, as stiff things", () => {
    const piece = panel(20, 100);
    const opened = worked(
      spreadFrom,
      { hinge: place(60, 0, { on: "top" }), target: { edge: "hem" }, opening: { length: 80 } },
      piece,
    ).now;
    const [before, after] = [dartMeasures(dartOf(piece, "pinch")), dartMeasures(dartOf(opened, "pinch"))];
    expect(after.angle).toBeCloseTo(before.angle, 12);
    expect(after.legs[0]).toBeCloseTo(before.legs[0], 9);
    expect(nearest(pathOf(opened, "top"), dartOf(opened, "pinch").first).distance).toBeLessThan(1e-6);
    expect(sewnLengthOf(opened, "top")).toBeCloseTo(280, 6);
  });
  test("and no slash goes through one", () => {
    const through = {
      hinge: place(30, 0, { on: "top" }),
      target: { place: at(300, 200) },
      opening: { length: 20 },
    };
    expect(problemOf(spreadFrom, through, panel(20, 100))).toEqual({
      code: "slash-through-dart",
      message: "The slash goes through the dart pinch.",
      hint: "Slash beside it, or turn it into flare with `close-dart pinch to` the edge that opens.",
    });
  });
  test("where the edge moves out: the legs go on to it, and the cap with them", () => {
    const { now } = worked(extendHem, { edge: "top", length: 30 }, panel(20, 100));
    const { width, angle, legs } = dartMeasures(dartOf(now, "pinch"));
    // The legs are as long as 130 is to 100.
    expect(width).toBeCloseTo(26, 6);
    expect(legs[0]).toBeCloseTo(1.3 * Math.hypot(100, 10), 6);
    expect(angle).toBeCloseTo(2 * Math.atan(0.1), 9);
    expect(peakOf(now, "pinch")).toBeCloseTo(1.3 * peakOf(panel(20, 100), "pinch"), 4);
  });
});

describe("a dart that is gathered", () => {
  test("leaves the sewn length as it was, over the stretch that is named", () => {
    const piece = panel(24, 100);
    const { now, words } = worked(dartToGathers, { name: "pinch", over: 100 }, piece);
    expect(sewnLengthOf(now, "top")).toBeCloseTo(276, 9);
    expect(lengthOf(now, "top")).toBeCloseTo(300, 9);
    expect(now.takeUps).toMatchObject([{ kind: "gather", edge: "top", from: at(100, 0), to: at(200, 0), amount: 24 }]);
    expect(words).toBe("gathered 100 mm of the top into 76 mm, 32% more cloth");
  });
});

const atelier = kernel(vocabulary);
const recipe = (lines: string): Outcome =>
  atelier.work({
    file: "test.chalk",
    text: `chalkline 1
units cm
piece bodice {
  point bust-point = (9 cm, 24 cm)
  line neck     = (0, 0) to (7 cm, 0)
  line shoulder = (7 cm, 0) to (19 cm, 4 cm)
  line side     = (19 cm, 4 cm) to (23 cm, 40 cm)
  line waist    = (0, 40 cm) to (23 cm, 40 cm)
  line center   = (0, 0) to (0, 40 cm)
  outline center, neck, shoulder, side, waist
  mark center as fold
  dart bust = foot(bust-point, side) width 3 cm to bust-point
${lines}
}
`,
  });
const told = (lines: string): string[] =>
  recipe(lines)
    .findings.filter(({ severity }) => severity === "error")
    .map(({ code, where, message }) => `${code} ${where.line}: ${message}`);

describe("mistakes, each told on its line", () => {
  test.each([
    [
      "  dart d = side at 50% width 50 cm long 5 cm",
      "dart-wider-than-edge 13: The dart takes up 50 cm, and side measures 36.31 cm.",
    ],
    [
      "  dart d = waist at 1 cm width 5 cm long 5 cm",
      "dart-beyond-edge 13: From here waist goes on for 1 cm, and half of the dart takes up 2.5 cm.",
    ],
    ["  dart d = waist at 50% width 2 cm long 50 cm", "dart-outside 13: The dart would reach out of bodice."],
    [
      "  dart d = (3 cm, 3 cm) width 2 cm long 5 cm",
      "dart-off-outline 13: The mouth of a dart lies on the outline of bodice, and this place lies 3 cm off its center.",
    ],
    ["  dart d = center at 50% width 2 cm long 5 cm", "dart-on-fold 13: center is a fold, and no dart opens there."],
    ["  dart d = bust.first width 2 cm long 5 cm", "dart-overlaps 13: The dart would lie over the mouth of bust."],
    [
      "  dart d = waist at 50% width 0 cm long 5 cm",
      "dart-without-width 13: A dart takes up more than nothing of its edge.",
    ],
    [
      "  dart d = waist at 50% width 2 cm long 0 cm",
      "dart-without-length 13: The tip of a dart lies inside the piece.",
    ],
    ["  move-dart bust to bust.first", "dart-onto-itself 13: bust is there already: the place lies on its own mouth."],
    [
      "  move-dart bust to part(side, bust.first, bust.second) at 50%",
      "dart-onto-itself 13: bust is there already: the place lies on its own mouth.",
    ],
    [
      "  move-dart bust to bust-point",
      "dart-off-outline 13: A dart opens on the outline of bodice, and this place lies 9 cm off it.",
    ],
    [
      "  move-dart bust to waist at 50% about (9 cm, 30 cm)",
      "dart-legs-differ 13: The legs of bust, drawn from that place, differ by 1.26 cm, so it cannot close.",
    ],
    ["  move-dart waist to side at 50%", "dart-wanted 13: A dart of bodice is wanted here, and this is an edge."],
    ["  shorten-dart bust by 40 cm", "dart-used-up 13: bust is 12.15 cm long, so nothing of it would be left."],
    [
      "  split-dart a, b = bust to waist at 50%",
      "split-dart-lists 13: 2 names stand before the =, and 1 place behind to.",
    ],
    [
      "  split-dart a = bust to waist at 50% by 100%",
      "split-dart-share 13: The shares leave nothing of the dart that is split.",
    ],
    ["  split-dart a = bust to waist at 50% by 0", "split-dart-share 13: A share of a dart is more than nothing."],
    ["  close-dart bust to shoulder", "flare-misses 13: Down from the tip of bust one does not come to shoulder."],
    [
      "  dart-to-gathers bust over 2 cm",
      "stretch-too-short 13: bust is 3 cm wide, and a stretch of 2 cm would be sewn to nothing.",
    ],
    [
      "  dart-to-ease bust over 60 cm",
      "stretch-beyond-edge 13: 30 cm on either side of bust reaches beyond the end of side.",
    ],
    ["  point p = bust.mouth", "member-missing 13: A dart has no part called mouth."],
    [
      "  dart bust = waist at 50% width 2 cm long 5 cm",
      "name-taken 13: bust already names something here, since line 12.",
    ],
  ])("%s", (line, message) => expect(told(line)).toEqual([message]));

  test("all else is drawn", () => {
    const { garment } = recipe("  move-dart bust to bust.first\n  dart d = waist at 50% width 2 cm long 5 cm");
    expect([...garment.pieces.get("bodice")!.darts.keys()]).toEqual(["bust", "d"]);
  });
});

describe("names", () => {
  test("the tip and the leg ends are places, in the direction in which the edge was drafted", () => {
    const { values, findings } = recipe(`  let open = angle(bust.first, bust.tip, bust.second)
  check y(bust.first) < y(bust.second)
  check distance(bust.tip, bust-point) = 0 cm
  check distance(bust.first, bust.second) = 3 cm within 0.001 mm`);
    expect(findings.map(({ code }) => code)).toEqual(["dart-near-apex"]);
    expect(values.size).toBe(0);
  });
  test("a dart drawn in a block goes by its name below it, the first one where the block is repeated", () => {
    const { garment, findings } = recipe(`  repeat 2 as n {
    dart pinch = waist at 10 cm + n * 4 cm width 1 cm long 5 cm
    shorten-dart pinch by 1 cm
  }
  shorten-dart bust by 2.5 cm
  true-seam waist, side
  move-dart pinch to waist at 3 cm`);
    expect(findings.map(({ message }) => message)).toEqual([]);
    expect(garment.pieces.get("bodice")!.darts.size).toBe(3);
  });
  test("a check that concerns a dart is waived on it", () => {
    const text = `chalkline 1
piece strap {
  line top = (0, 0) to (20 cm, 0)
  line side = (20 cm, 0) to (20 cm, 20 cm)
  line hem = (0, 20 cm) to (20 cm, 20 cm)
  line center = (0, 0) to (0, 20 cm)
  outline center, top, side, hem
  dart slant = top at 50% width 2 cm to (13 cm, 8 cm)
  accept dart-legs on slant because "pressed into shape"
}
`;
    expect(atelier.work({ file: "test.chalk", text }).findings).toEqual([]);
  });
});

test("the examples of these steps come out clean", () => {
  const steps = vocabulary.steps.filter(({ name }) => name.includes("dart"));
  expect(steps).toHaveLength(8);
  for (const { name, example } of steps) {
    const { findings } = atelier.work({ file: "test.chalk", text: example });
    expect([name, ...findings.map(({ message }) => message)]).toEqual([name]);
  }
});
