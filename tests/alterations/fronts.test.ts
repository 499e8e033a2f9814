// Laps, facings in one with the front, and cascades: the handbook's worked numbers, and the fall slashed the long way round.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { signedArea } from "../../kernel/geometry/area.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import { lengthOf, placeOf, workedText } from "../worked-recipe.ts";

const errors = ({ findings }: Outcome): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ message }) => message);

const areaOf = ({ garment }: Outcome, piece: string): number =>
  Math.abs(signedArea(boundary(garment.pieces.get(piece)!)!));

const coat = (lines: string): Outcome =>
  workedText(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece block = coat.front { }
piece front = coat.front {
${lines}
}
`);

describe("the front of the coat block carried up into a plain cascade", () => {
  // Source: trade handbook 4.16, worked with R88: neck point (74.0, -24.7), front edge at x = -20, top 94.0 long.
  const plain = coat("  cascade-front fall = opening");
  const round = coat("  cascade-front fall = opening rounded 40 mm");

  test("has no complaint", () => expect([...errors(plain), ...errors(round)]).toEqual([]));
  test("has a top of 94.0, square to the front edge", () => {
    const { path } = plain.garment.pieces.get("front")!.edges.get("fall")!;
    expect(Math.abs(lengthOf(plain, "front", "fall") - 94)).toBeLessThan(0.05);
    expect(path[0]!.start.y).toBeCloseTo(path[0]!.end.y, 9);
    expect(path[0]!.end.x).toBeCloseTo(-20, 9);
    expect(Math.abs(path[0]!.end.y + 24.7)).toBeLessThan(0.05);
  });
  test("rounded with a radius of 40 has 54 straight and a quarter of a circle", () => {
    expect(lengthOf(round, "front", "fall")).toBeCloseTo(54 + 20 * Math.PI, 3);
    expect(lengthOf(plain, "front", "opening") - lengthOf(round, "front", "opening")).toBeCloseTo(40, 9);
  });
  test("is marked for its fastening level with the front neck point, 59.33 below the nape", () => {
    // Source: check value 55.
    const { notches, drills, edges } = plain.garment.pieces.get("front")!;
    const notch = notches.find(({ edge }) => edge === "opening")!;
    expect(notch.point.x).toBeCloseTo(-20, 6);
    expect(Math.abs(notch.point.y - 59.33)).toBeLessThan(0.05);
    expect(drills).toHaveLength(1);
    expect(Math.abs(drills[0]!.point.y - 59.33)).toBeLessThan(0.05);
    expect(drills[0]!.point.x).toBeCloseTo(0, 6);
    expect(edges.has("neck")).toBe(true);
  });
  test("keeps shoulder, armhole, side and hem", () => {
    for (const edge of ["shoulder", "armscye", "side", "hem"])
      expect(lengthOf(round, "front", edge)).toBeCloseTo(lengthOf(round, "block", edge), 9);
  });
});

describe("a fall for a front edge", () => {
  const fall = (length: string, width: string, degrees: string): Outcome =>
    workedText(`chalkline 1
units mm
piece front {
  line top     = (0, 0) to (200 mm, 0)
  line side    = (200 mm, 0) to (200 mm, ${length} mm)
  line hem     = (0, ${length} mm) to (200 mm, ${length} mm)
  line opening = (0, 0) to (0, ${length} mm)
  outline opening, top, side, hem
}
cascade-fall fall = front.opening width ${width} mm turning ${degrees} deg
seam fall.inner with front.opening
`);

  test("600 long, 150 wide, turning 90 deg has a free edge of 835.62", () => {
    // Source: trade handbook 4.16, check value 96.
    const outcome = fall("600", "150", "90");
    expect(errors(outcome)).toEqual([]);
    expect(Math.abs(lengthOf(outcome, "fall", "free") - 835.62)).toBeLessThan(0.01);
    expect(lengthOf(outcome, "fall", "inner")).toBeCloseTo(600, 4);
  });
  test("has a free edge as much longer as its width times its angle", () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((each) => each.toFixed(3));
    fc.assert(
      fc.property(number(300, 1200), number(20, 300), number(5, 355), (length, width, degrees) => {
        const outcome = fall(length, width, degrees);
        expect(errors(outcome)).toEqual([]);
        const grown = lengthOf(outcome, "fall", "free") - lengthOf(outcome, "fall", "inner");
        expect(Math.abs(grown - (Number(width) * Number(degrees) * Math.PI) / 180)).toBeLessThan(0.01);
        expect(Math.abs(lengthOf(outcome, "fall", "inner") - Number(length))).toBeLessThan(0.01);
      }),
      { numRuns: 30 },
    );
  });
  test("is what a strip becomes that is slashed and opened place by place", () => {
    // Each of six slashes opens by 15 deg, so by 2 x 150 x sin 7.5 deg at the free edge; trued, each is an arc of 150 x 15 deg.
    const outcome = workedText(`chalkline 1
units mm
piece strip-piece {
  line sewn   = (0, 0) to (600 mm, 0)
  line bottom = (600 mm, 0) to (600 mm, 150 mm)
  line free   = (0, 150 mm) to (600 mm, 150 mm)
  line top    = (0, 0) to (0, 150 mm)
  outline sewn, bottom, free, top
  grain (5 mm, 75 mm) to (20 mm, 75 mm)
  repeat 6 as n {
    spread-from sewn at (n - 0.5) / 6 to free by 15 deg
  }
  mark free as hem
}
piece trued-strip = strip-piece {
  true-seam free keeping ends
}
`);
    expect(errors(outcome)).toEqual([]);
    expect(lengthOf(outcome, "strip-piece", "sewn")).toBeCloseTo(600, 6);
    const chords = 600 + 6 * 2 * 150 * Math.sin((7.5 * Math.PI) / 180);
    expect(lengthOf(outcome, "strip-piece", "free")).toBeCloseTo(chords, 3);
    // Check value 96 again, by the sector that each arc fills.
    expect(Math.abs(lengthOf(outcome, "trued-strip", "free") - 835.62)).toBeLessThan(0.01);
  });
});

describe("a facing in one with the front", () => {
  test("mirrors what it faces, and adds its own width of cloth", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 88, noNaN: true }).map((mm) => mm.toFixed(3)),
        (width) => {
          const outcome = coat(`  point inside = (${width} mm - 20 mm, 400 mm)
  fold-back-facing facing = opening by ${width} mm
  point level = meet(neck, (x(inside), -50 mm)--(x(inside), 200 mm))`);
          expect(errors(outcome)).toEqual([]);
          const piece = outcome.garment.pieces.get("front")!;
          const { point } = piece.places.get("level")!;
          expect(lengthOf(outcome, "front", "facing")).toBeCloseTo(1000 - point.y, 4);
          expect(lengthOf(outcome, "front", "facing-hem")).toBeCloseTo(Number(width), 6);
          expect(lengthOf(outcome, "front", "neck")).toBeCloseTo(lengthOf(outcome, "block", "neck"), 9);
          const added = areaOf(outcome, "front") - areaOf(outcome, "block");
          // All of the strip but what the neck cuts out of it, which is less than a rectangle from the neck down to it.
          expect(added).toBeGreaterThan(Number(width) * (1000 - 59.4) - 1);
          expect(added).toBeLessThan(Number(width) * (1000 - point.y) + 1);
        },
      ),
      { numRuns: 25 },
    );
  });
  test("folds on the old front edge, which stays as a line inside", () => {
    const outcome = coat("  fold-back-facing facing = opening by 70 mm");
    const { edges, outline } = outcome.garment.pieces.get("front")!;
    expect(edges.has("opening")).toBe(true);
    expect(outline.map(({ edge }) => edge)).not.toContain("opening");
    expect(outline.map(({ edge }) => edge)).toEqual(expect.arrayContaining(["facing", "facing-neck", "facing-hem"]));
  });
});

test("a lap moves the front edge out and leaves the center line", () => {
  const outcome = coat("  extend-front old-edge = opening by 30 mm");
  expect(errors(outcome)).toEqual([]);
  expect(lengthOf(outcome, "front", "neck") - lengthOf(outcome, "block", "neck")).toBeCloseTo(30, 9);
  expect(lengthOf(outcome, "front", "hem") - lengthOf(outcome, "block", "hem")).toBeCloseTo(30, 9);
  expect(lengthOf(outcome, "front", "old-edge")).toBeCloseTo(lengthOf(outcome, "block", "opening"), 9);
  expect(placeOf(outcome, "front", "front-neck").x).toBeCloseTo(0, 9);
});
