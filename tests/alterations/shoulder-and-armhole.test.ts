// Shoulders dropped, widened and sloped, and the armholes below them: the handbook's coat block and what must hold of any amount.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { endDirection, startDirection } from "../../kernel/geometry/path.ts";
import { dot, type Point } from "../../kernel/geometry/point.ts";
import { toDegrees, turnBetween } from "../../kernel/geometry/trig.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { lengthOf, placeOf, workedText } from "../worked-recipe.ts";

/** The coat block with its back, front or sleeve altered by these lines. */
const altered = (lines: string): Outcome =>
  workedText(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece coat-back = coat.back { }
piece coat-front = coat.front { }
piece back = coat.back {
${lines}
}
piece front = coat.front {
${lines}
}
`);

const errors = ({ findings }: Outcome): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ message }) => message);

const directions = (outcome: Outcome, piece: string, edge: string): { first: Point; last: Point } => {
  const { path } = outcome.garment.pieces.get(piece)!.edges.get(edge)!;
  return { first: startDirection(path), last: endDirection(path) };
};

describe("the coat block dropped by 60, its underarm 40 lower and 10 further out", () => {
  // Source: trade handbook 4.12 and check value 57. The across marks move out by 0.85 of the drop there, and lie halfway
  // between tip and underarm as in the block.
  const outcome = altered("  drop-shoulder shoulder by 60 mm lowering 40 mm out 10 mm");

  test("has no complaint", () => expect(errors(outcome)).toEqual([]));
  test.each([
    ["back", "shoulder-tip", 262.3, 36.5],
    ["front", "shoulder-tip", 257.6, 49.5],
    ["back", "underarm", 280, 285],
    ["front", "underarm", 280, 285],
    // 190 + 51 and (36.5 + 285) / 2; 175 + 51 and (49.5 + 285) / 2.
    ["back", "across", 241, 160.8],
    ["front", "across", 226, 167.3],
  ])("has the %s's %s where the handbook has it", (piece, place, x, y) => {
    const point = placeOf(outcome, piece, place);
    expect(Math.abs(point.x - x)).toBeLessThanOrEqual(0.06);
    expect(Math.abs(point.y - y)).toBeLessThanOrEqual(0.06);
  });
  test("has armholes of 263.70 and 262.30, 526.00 in all", () => {
    const [back, front] = [lengthOf(outcome, "back", "armscye"), lengthOf(outcome, "front", "armscye")];
    expect(Math.abs(back - 263.7)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(front - 262.3)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(back + front - 526)).toBeLessThanOrEqual(0.05);
  });
  test("has its notches a third of the armhole from the underarm, as the block has", () => {
    const piece = outcome.garment.pieces.get("back")!;
    const [notch] = piece.notches.filter(({ edge }) => edge === "armscye");
    const block = outcome.garment.pieces.get("coat-back")!.notches.find(({ edge }) => edge === "armscye")!;
    expect(notch?.double).toBe(true);
    // The back armhole is drafted from the underarm up.
    expect(notch!.point).not.toEqual(block.point);
    const measured = workedText(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece back = coat.back {
  drop-shoulder shoulder by 60 mm lowering 40 mm out 10 mm
  point third = armscye at length(armscye) / 3
}
`);
    const third = placeOf(measured, "back", "third");
    expect(Math.hypot(third.x - notch!.point.x, third.y - notch!.point.y)).toBeLessThan(0.01);
  });
});

test("dropping by any amount keeps the shoulder straight, and the armhole square, upright and level where the block has it so", () => {
  const amount = fc.record({
    drop: fc.double({ min: 0, max: 80, noNaN: true }),
    lowering: fc.double({ min: 20, max: 120, noNaN: true }),
    out: fc.double({ min: 0, max: 30, noNaN: true }),
  });
  fc.assert(
    fc.property(amount, ({ drop, lowering, out }) => {
      const words = (mm: number): string => `${mm.toFixed(4)} mm`;
      const outcome = altered(
        `  drop-shoulder shoulder by ${words(drop)} lowering ${words(lowering)} out ${words(out)}`,
      );
      expect(errors(outcome)).toEqual([]);
      expect(lengthOf(outcome, "front", "shoulder")).toBeCloseTo(138 + drop, 3);
      expect(lengthOf(outcome, "front", "neck")).toBeCloseTo(lengthOf(outcome, "coat-front", "neck"), 9);
      expect(lengthOf(outcome, "front", "opening")).toBeCloseTo(lengthOf(outcome, "coat-front", "opening"), 9);
      expect(lengthOf(outcome, "front", "hem")).toBeCloseTo(lengthOf(outcome, "coat-front", "hem"), 9);
      const shoulder = directions(outcome, "front", "shoulder");
      const armhole = directions(outcome, "front", "armscye");
      expect(Math.abs(dot(shoulder.last, armhole.first))).toBeLessThan(1e-9);
      expect(armhole.last.y).toBeCloseTo(0, 9);
      const underarm = placeOf(outcome, "front", "underarm");
      expect(underarm.x).toBeCloseTo(270 + out, 3);
      expect(underarm.y).toBeCloseTo(245 + lowering, 3);
    }),
    { numRuns: 40 },
  );
});

test("a shoulder sloped either way keeps its length, and the armhole keeps its", () => {
  fc.assert(
    fc.property(fc.double({ min: -8, max: 8, noNaN: true }), (degrees) => {
      const outcome = altered(`  slope-shoulder shoulder by ${degrees.toFixed(6)} deg`);
      expect(errors(outcome)).toEqual([]);
      for (const half of ["back", "front"]) {
        expect(lengthOf(outcome, half, "shoulder")).toBeCloseTo(138, 6);
        expect(
          Math.abs(lengthOf(outcome, half, "armscye") - lengthOf(outcome, `coat-${half}`, "armscye")),
        ).toBeLessThan(0.001);
        const turned = turnBetween(
          directions(outcome, `coat-${half}`, "shoulder").last,
          directions(outcome, half, "shoulder").last,
        );
        expect(toDegrees(turned)).toBeCloseTo(degrees, 4);
      }
    }),
    { numRuns: 30 },
  );
});

test("the tip of a sloped shoulder moves by the shoulder's length times the angle", () => {
  // Source: trade handbook 4.13, slope change: S x angle, for small angles; 138 mm x 2 deg = 4.817 mm.
  const outcome = altered("  slope-shoulder shoulder by 2 deg");
  const [was, is] = [placeOf(outcome, "coat-back", "shoulder-tip"), placeOf(outcome, "back", "shoulder-tip")];
  expect(Math.hypot(is.x - was.x, is.y - was.y)).toBeCloseTo(138 * ((2 * Math.PI) / 180), 3);
});

test("a shoulder is narrowed and widened again, a lowered underarm raised again, and the block is as it was", () => {
  const outcome = altered(`  widen-shoulder shoulder by -20 mm moving across
  widen-shoulder shoulder by 20 mm moving across
  lower-armhole armscye by 25 mm
  lower-armhole armscye by -25 mm`);
  expect(errors(outcome)).toEqual([]);
  for (const half of ["back", "front"])
    for (const edge of ["shoulder", "armscye", "side", "neck", "hem"])
      expect(lengthOf(outcome, half, edge)).toBeCloseTo(lengthOf(outcome, `coat-${half}`, edge), 6);
});

test("lowering the armhole redraws the lower quarter of the ellipse only", () => {
  // By one cubic a quarter of the ellipse of 80 by 113.5 + 30 mm: Ramanujan's formula for the whole ellipse, over 4.
  const [a, b] = [80, 143.5];
  const quarter = (Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)))) / 4;
  const [c, d] = [80, 113.5];
  const before = (Math.PI * (3 * (c + d) - Math.sqrt((3 * c + d) * (c + 3 * d)))) / 4;
  const outcome = altered("  lower-armhole armscye by 30 mm");
  const grown = lengthOf(outcome, "back", "armscye") - lengthOf(outcome, "coat-back", "armscye");
  expect(Math.abs(grown - (quarter - before))).toBeLessThan(0.1);
});

test("a shoulder that moves forward takes from the front what it gives the back", () => {
  const outcome = workedText(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece back = coat.back { }
piece front = coat.front { }
forward-shoulder front.shoulder onto back.shoulder by 15 mm
seam front.shoulder with back.shoulder
`);
  expect(errors(outcome)).toEqual([]);
  expect(lengthOf(outcome, "front", "shoulder")).toBeCloseTo(138, 6);
  expect(lengthOf(outcome, "back", "shoulder")).toBeCloseTo(138, 6);
  const all = lengthOf(outcome, "front", "armscye") + lengthOf(outcome, "back", "armscye");
  // The whole armhole of the block, check value 54, changes by less than the pin that marks its crown is thick.
  expect(Math.abs(all - 541.55)).toBeLessThan(0.6);
});
