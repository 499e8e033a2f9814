// Necks lowered, widened and drawn anew: against the coat block drafted with those measures in the first place.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Outcome } from "../../kernel/kernel.ts";
import { lengthOf, placeOf, workedText } from "../worked-recipe.ts";

const altered = (lines: string): Outcome =>
  workedText(`chalkline 1
units mm
use "blocks/straight-coat.chalk" as coat
piece block = coat.front { }
piece front = coat.front {
${lines}
}
`);

const errors = ({ findings }: Outcome): string[] =>
  findings.filter(({ severity }) => severity === "error").map(({ message }) => message);

/** The front neck of the handbook, 3.2 rule 7, as one cubic measured by many chords; the lap of 20 mm comes on top. */
const handbookNeck = (width: number, depth: number): number => {
  const kappa = (4 / 3) * Math.tan(Math.PI / 8);
  const slope = (22 * Math.PI) / 180;
  const points: readonly (readonly [number, number])[] = [
    [0, depth],
    [kappa * width, depth],
    [width - kappa * depth * Math.sin(slope), kappa * depth * Math.cos(slope)],
    [width, 0],
  ];
  const at = (t: number, axis: 0 | 1): number =>
    [(1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t ** 2, t ** 3].reduce(
      (sum, weight, index) => sum + weight * points[index]![axis],
      0,
    );
  const steps = 4000;
  return Array.from({ length: steps }, (_, step) => {
    const [from, to] = [step / steps, (step + 1) / steps];
    return Math.hypot(at(to, 0) - at(from, 0), at(to, 1) - at(from, 1));
  }).reduce((sum, chord) => sum + chord, 0);
};

test("the reckoning here gives the handbook's own neck of 119.63 (check value 53)", () => {
  expect(Math.abs(handbookNeck(74, 84) - 119.63)).toBeLessThan(0.01);
});

describe("the front neck of the coat block", () => {
  test.each([10, 35, -20])("lowered by %d is the neck drafted so deep", (by) => {
    const outcome = altered(`  lower-neck neck by ${by} mm`);
    expect(errors(outcome)).toEqual([]);
    expect(lengthOf(outcome, "front", "neck")).toBeCloseTo(20 + handbookNeck(74, 84 + by), 3);
    expect(lengthOf(outcome, "front", "opening")).toBeCloseTo(lengthOf(outcome, "block", "opening") - by, 6);
    expect(lengthOf(outcome, "front", "shoulder")).toBeCloseTo(138, 6);
    expect(placeOf(outcome, "front", "front-neck").x).toBeCloseTo(0, 6);
  });

  test.each([10, 30, -15])("widened by %d along the shoulder is the neck drafted so wide and deep", (by) => {
    const outcome = altered(`  widen-neck neck by ${by} mm`);
    expect(errors(outcome)).toEqual([]);
    const slope = (22 * Math.PI) / 180;
    const [width, depth] = [74 + by * Math.cos(slope), 84 - by * Math.sin(slope)];
    expect(lengthOf(outcome, "front", "neck")).toBeCloseTo(20 + handbookNeck(width, depth), 3);
    expect(lengthOf(outcome, "front", "shoulder")).toBeCloseTo(138 - by, 6);
    expect(lengthOf(outcome, "front", "opening")).toBeCloseTo(lengthOf(outcome, "block", "opening"), 9);
  });

  test("drawn anew to its own depth it is what it was", () => {
    const outcome = altered("  draw-neck neck depth 84 mm");
    expect(errors(outcome)).toEqual([]);
    expect(lengthOf(outcome, "front", "neck")).toBeCloseTo(lengthOf(outcome, "block", "neck"), 4);
  });

  test("lowered and raised, widened and narrowed by as much, is what it was", () => {
    const by = fc.double({ min: -25, max: 60, noNaN: true }).map((mm) => mm.toFixed(4));
    fc.assert(
      fc.property(by, by, (down, wide) => {
        const outcome = altered(`  lower-neck neck by ${down} mm
  widen-neck neck by ${wide} mm
  widen-neck neck by -(${wide} mm)
  lower-neck neck by -(${down} mm)`);
        expect(errors(outcome)).toEqual([]);
        for (const edge of ["neck", "shoulder", "opening", "armscye", "hem"])
          expect(lengthOf(outcome, "front", edge)).toBeCloseTo(lengthOf(outcome, "block", edge), 6);
      }),
      { numRuns: 30 },
    );
  });
});

test("a front comes out of its back: the necks differ, all else is the same", () => {
  const outcome = workedText(`chalkline 1
units mm
use "blocks/loose-bodice.chalk" as loose
piece back = loose.back { }
piece front = loose.back {
  mark center as opening
  draw-neck neck depth 84 mm
  keep shoulder, armscye, side, hem
}
seam front.shoulder with back.shoulder
seam front.side with back.side
`);
  expect(errors(outcome)).toEqual([]);
  // 59.33 mm below the nape: check value 55.
  expect(lengthOf(outcome, "back", "center") - lengthOf(outcome, "front", "center")).toBeCloseTo(59.33, 2);
  // A neck of this shape turns less where the shoulder slopes by 18 deg: it stays within 2 mm of the block's front neck.
  expect(Math.abs(lengthOf(outcome, "front", "neck") - 119.63)).toBeLessThan(2);
});
