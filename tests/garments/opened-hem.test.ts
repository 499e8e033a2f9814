// A rectangle of 300 by 1000, opened by 200 at its hem: trued with an arc about the hinge, and with one arc through its corners
// (trade handbook 4.2 and 4.3).
import { expect, test } from "vitest";
import { lengthOf, workedText } from "../worked-recipe.ts";

const outcome = workedText(`chalkline 1
units mm
piece panel {
  line top = (0, 0) to (300 mm, 0)
  line side = (300 mm, 0) to (300 mm, 1000 mm)
  line hem = (0, 1000 mm) to (300 mm, 1000 mm)
  line other-side = (0, 0) to (0, 1000 mm)
  outline top, side, hem, other-side
  point left-corner = (0, 1000 mm)
  point right-corner = (300 mm, 1000 mm)
  spread-from top at 50% to hem by 200 mm
  true-seam hem
  arc one = left-corner to right-corner radius 1562.15 mm bulging down
}
`);

test("one arc of a radius of 1562.15 through the hem's corners is 500.636 long (check value 25)", () => {
  expect(outcome.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(Math.abs(lengthOf(outcome, "panel", "one") - 500.636)).toBeLessThanOrEqual(0.05);
});

test("the hem filled with an arc about the hinge is 500.335 (check value 20), within 0.1 % of it (trade handbook 4.3)", () => {
  const filled = lengthOf(outcome, "panel", "hem");
  expect(filled).toBeCloseTo(500.335, 3);
  expect(Math.abs(lengthOf(outcome, "panel", "one") / filled - 1)).toBeLessThan(0.001);
});
