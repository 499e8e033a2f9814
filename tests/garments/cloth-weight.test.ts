// Cloth sold by the ounce, against the trade handbook 7.1, check values 97 and 98.
import { expect, test } from "vitest";
import { workedText } from "../worked-recipe.ts";

const weightOf = (weight: string): number =>
  workedText(`chalkline 1\nfabric shell "denim" width 150 cm weight ${weight}\n`).garment.fabrics.get("shell")!.weight!;

test("an ounce to the square yard is 33.9057 g/m2 (check value 97)", () => {
  expect(Math.abs(weightOf("1 osy") - 33.9057)).toBeLessThanOrEqual(0.001);
});

// The page prints 220.
test("a denim of 6.5 oz weighs 220.4 g/m2 (check value 98)", () => {
  expect(Math.abs(weightOf("6.5 osy") - 220.4)).toBeLessThanOrEqual(0.5);
});
