// Zeros of polynomials given by their zeros.
import fc from "fast-check";
import { expect, test } from "vitest";
import "./curves.ts";
import { rootsOf } from "../../kernel/geometry/roots.ts";

/** The Bernstein coefficients of the product of (t - zero), by blossoming: each is a symmetric mean. */
const withZeros = (zeros: readonly number[]): number[] => {
  const degree = zeros.length;
  let power = [1];
  for (const zero of zeros) {
    const next = new Array<number>(power.length + 1).fill(0);
    power.forEach((value, i) => {
      next[i] = next[i]! - zero * value;
      next[i + 1] = next[i + 1]! + value;
    });
    power = next;
  }
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
  return power.map((_, j) => {
    let sum = 0;
    for (let i = 0; i <= j; i += 1) sum += (choose(j, i) / choose(degree, i)) * power[i]!;
    return sum;
  });
};

test("separate zeros are all found", () => {
  const zeros = fc.uniqueArray(fc.integer({ min: -20, max: 120 }), { minLength: 1, maxLength: 5 });
  fc.assert(
    fc.property(zeros, (hundredths) => {
      const expected = hundredths
        .map((h) => h / 100)
        .filter((t) => t > 0 && t < 1)
        .sort((a, b) => a - b);
      // A zero at 0 or 1 itself may be lost or gained by rounding of the coefficients; leave those to the next test.
      const found = rootsOf(withZeros(hundredths.map((h) => h / 100))).filter((t) => t > 1e-9 && t < 1 - 1e-9);
      expect(found).toHaveLength(expected.length);
      found.forEach((t, i) => {
        expect(Math.abs(t - expected[i]!)).toBeLessThan(1e-8);
      });
    }),
    { numRuns: 1000 },
  );
});

test("zeros at the very ends are exact, a double zero comes once", () => {
  expect(rootsOf([0, 1, 3])).toEqual([0]);
  expect(rootsOf([-3, -1, 0])).toEqual([1]);
  expect(rootsOf([1, -1, 1])).toEqual([0.5]);
  expect(rootsOf([1, 2, 3])).toEqual([]);
  expect(rootsOf([0, 0, 0, 0])).toEqual([]);
});
