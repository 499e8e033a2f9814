// The misses size table against the published table of ASTM D5585-11e1, as the trade handbook has it (table 1A, check values
// 108 and 109).
import { expect, test } from "vitest";
import { workedRecipe } from "../worked-recipe.ts";

const inch = 25.4;

/** A measure of the fitted bodice in this size, in inches. */
const measureOf = (size: string, name: string): number => {
  const { value } = workedRecipe("blocks/fitted-bodice.chalk", { size }).values.get(name)!;
  return (value as { value: number }).value / inch;
};

test("size 8 has a bust of 36 1/4 in and a curvy waist of 28 in (check value 108)", () => {
  expect(measureOf("misses-8", "bust-girth")).toBeCloseTo(36.25, 9);
  expect(measureOf("misses-8", "waist-girth")).toBeCloseTo(28, 9);
});

test("size 12 has a bust of 38 3/4 in and a neck base of 15 1/8 in (check value 109)", () => {
  expect(measureOf("misses-12", "bust-girth")).toBeCloseTo(38.75, 9);
  expect(measureOf("misses-12", "neck-base-girth")).toBeCloseTo(15.125, 9);
});

// Table 1A: the grade is not constant; bust grows 5/8 to 1 1/4 in up to size 10, then 1 1/2 rising to 2 in.
test.each([
  ["misses-00", "misses-0", 5 / 8],
  ["misses-8", "misses-10", 1],
  ["misses-10", "misses-12", 1.5],
  ["misses-18", "misses-20", 2],
])("from %s to %s the bust grows by %f in", (smaller, larger, growth) => {
  expect(measureOf(larger, "bust-girth") - measureOf(smaller, "bust-girth")).toBeCloseTo(growth, 9);
});
