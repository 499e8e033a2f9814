// The lobby coat with its collar and facings: every part fits the edge it is sewn to.
import { expect, test } from "vitest";
import { distance } from "../../kernel/geometry/point.ts";
import { lengthOf, placeOf, workedRecipe } from "../worked-recipe.ts";

const coat = workedRecipe("lobby-coat-collar.chalk");

test("the collar is as long as the neck of the coat block, 81.84 and 119.63 (trade handbook 3.2, check value 53)", () => {
  // The swing may move the back neck by what keep allows, 0.5.
  expect(Math.abs(lengthOf(coat, "collar", "neck") - 81.84 - 119.63)).toBeLessThanOrEqual(0.5);
  expect(lengthOf(coat, "collar", "neck") - lengthOf(coat, "collar", "top")).toBeCloseTo(10, 6);
});

// Plain measures: facings of 70 are 70 wide where they run out square to the edge they follow.
test("the facings are 70 wide at hem, shoulder and center back", () => {
  expect(lengthOf(coat, "front-facing", "hem")).toBeCloseTo(70, 1);
  expect(lengthOf(coat, "front-facing", "shoulder")).toBeCloseTo(70, 1);
  expect(lengthOf(coat, "neck-facing", "shoulder")).toBeCloseTo(70, 1);
  expect(lengthOf(coat, "neck-facing", "center")).toBeCloseTo(70, 1);
});

test("the facings are as long as the edges they are sewn to", () => {
  for (const edge of ["opening", "neck"]) {
    expect(lengthOf(coat, "front-facing", edge)).toBeCloseTo(lengthOf(coat, "front", edge), 6);
  }
  expect(lengthOf(coat, "neck-facing", "neck")).toBeCloseTo(lengthOf(coat, "back", "neck"), 6);
});

test("six buttonholes, 110 apart, the first 20 below the neck", () => {
  const [top, last] = ["top-button", "last-button"].map((place) => placeOf(coat, "front", place));
  expect(top!.y - placeOf(coat, "front", "front-neck").y).toBeCloseTo(20, 6);
  expect(distance(top!, last!)).toBeCloseTo(5 * 110, 6);
});

// Common practice, no source: a hip pocket is a sixth of the bust wide, 880 / 6, to the nearest half centimetre.
test("the pocket is 145 wide", () => {
  expect(lengthOf(coat, "pocket", "top")).toBeCloseTo(145, 6);
});
