// The set-in sleeve block against the handbook's worked example (trade handbook 3.4, check values 64 to 68).
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { part } from "../../kernel/geometry/split.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { lengthOf, placeOf, workedRecipe, workedText } from "../worked-recipe.ts";

/** The sleeve for the armholes of the fitted bodice of R88: back 228.04, front 236.84, upper arm 280. */
const sleeve = (more = ""): Outcome =>
  workedText(`chalkline 1
units mm
use "blocks/set-in-sleeve.chalk" as set-in {
  armhole-back = 228.04 mm
  armhole-front = 236.84 mm
${more}}
piece sleeve = set-in.sleeve { }
`);

const height = (outcome: Outcome): number =>
  placeOf(outcome, "sleeve", "back-underarm").y - placeOf(outcome, "sleeve", "crown").y;

describe("the sleeve of R88, 330 mm wide with an ease of 25", () => {
  const outcome = sleeve();
  const { path } = outcome.garment.pieces.get("sleeve")!.edges.get("cap")!;
  const crownAt = nearest(path, placeOf(outcome, "sleeve", "crown")).at;

  test("has no complaint", () => expect(outcome.findings).toEqual([]));
  test("has a cap 161.10 high (check value 64)", () => expect(Math.abs(height(outcome) - 161.1)).toBeLessThan(0.05));
  test("has a cap as long as the armhole and its ease, 489.88", () => {
    expect(Math.abs(lengthOf(outcome, "sleeve", "cap") - 489.88)).toBeLessThanOrEqual(0.001);
  });
  test("has 14.71 of its ease behind and 10.29 in front (check value 65)", () => {
    const back = pathLength(part(path, 0, crownAt));
    expect(Math.abs(back - 228.04 - 14.71)).toBeLessThan(0.05);
    expect(Math.abs(pathLength(path) - back - 236.84 - 10.29)).toBeLessThan(0.05);
  });
  test("is 161.88 and 168.12 wide behind and in front", () => {
    expect(Math.abs(placeOf(outcome, "sleeve", "back-underarm").x + 161.88)).toBeLessThan(0.01);
    expect(Math.abs(placeOf(outcome, "sleeve", "front-underarm").x - 168.12)).toBeLessThan(0.01);
  });
  test("has its wrist where the handbook has it", () => {
    const [back, front] = [placeOf(outcome, "sleeve", "wrist-back"), placeOf(outcome, "sleeve", "wrist-front")];
    expect(Math.abs(back.x + 106.88)).toBeLessThan(0.01);
    expect(Math.abs(front.x - 113.12)).toBeLessThan(0.01);
    expect(Math.abs(back.y - 428.9)).toBeLessThan(0.05);
  });
  test("has ends of its seams 432.41 apart (check value 67), and curves a little longer", () => {
    const [from, to] = [placeOf(outcome, "sleeve", "back-underarm"), placeOf(outcome, "sleeve", "wrist-back")];
    expect(Math.abs(Math.hypot(to.x - from.x, to.y - from.y) - 432.41)).toBeLessThan(0.05);
    expect(lengthOf(outcome, "sleeve", "under-back")).toBeCloseTo(lengthOf(outcome, "sleeve", "under-front"), 6);
    expect(lengthOf(outcome, "sleeve", "under-back") - 432.41).toBeLessThan(2);
  });
});

test.each([
  // Source: trade handbook 3.4, same cap length over a wider biceps line; check value 66 is that of 390.
  [80, 145.8],
  [110, 128.3],
  [140, 107.6],
])("with an ease of %d at the upper arm its cap is %d high", (ease, cap) => {
  expect(Math.abs(height(sleeve(`  arm-ease = ${ease} mm\n`)) - cap)).toBeLessThanOrEqual(0.1);
});

test("the triangle over 330 with sides of 231.84 and 228.04 is 160.14 high (check value 68)", () => {
  const outcome = workedText(`chalkline 1
units mm
piece triangle {
  point back = (0, 0)
  point front = (330 mm, 0)
  point crown = compass(back, 228.04 mm, front, 231.84 mm, left)
}
`);
  const { x, y } = placeOf(outcome, "triangle", "crown");
  expect(Math.abs(-y - 160.14)).toBeLessThan(0.05);
  // Where its foot lies: 162.35 from the back.
  expect(Math.abs(x - 162.35)).toBeLessThan(0.05);
});

test("a dropped armhole and no ease give the low cap of the handbook", () => {
  // Source: trade handbook 4.12, last row: 480 wide, no ease, equal halves of 526.00 / 2, height 90.5.
  const outcome = workedText(`chalkline 1
units mm
use "blocks/set-in-sleeve.chalk" as set-in {
  armhole-back = 263 mm
  armhole-front = 263 mm
  cap-ease = 0 mm
  arm-ease = 200 mm
}
piece sleeve = set-in.sleeve { }
`);
  expect(Math.abs(height(outcome) - 90.5)).toBeLessThan(0.1);
});

test("it comes out clean as it stands", () => {
  expect(workedRecipe("blocks/set-in-sleeve.chalk").findings).toEqual([]);
});
