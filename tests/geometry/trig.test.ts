// Our own sines and their inverses against the built-in ones, and the directions angles count in.
import fc from "fast-check";
import { expect, test } from "vitest";
import "./curves.ts";
import {
  acos,
  angleOf,
  asin,
  atan,
  atan2,
  bearing,
  cos,
  sin,
  tan,
  toDegrees,
  toRadians,
  turnBetween,
} from "../../kernel/geometry/trig.ts";

const close = (ours: number, builtIn: number): boolean =>
  Math.abs(ours - builtIn) <= 1e-15 * Math.max(1, Math.abs(builtIn));

const angles = fc.oneof(
  fc.double({ min: -1e5, max: 1e5, noNaN: true }),
  fc.double({ min: -7, max: 7, noNaN: true }),
  fc.integer({ min: -400, max: 400 }).map((eighths) => (eighths * Math.PI) / 8),
);

test("sine and cosine agree with the built-in ones to 1e-15", () => {
  fc.assert(
    fc.property(angles, (x) => {
      expect(Math.abs(sin(x) - Math.sin(x))).toBeLessThanOrEqual(2.3e-16);
      expect(Math.abs(cos(x) - Math.cos(x))).toBeLessThanOrEqual(2.3e-16);
    }),
    { numRuns: 5000 },
  );
});

test("the tangent agrees to a few units in the last place", () => {
  fc.assert(
    fc.property(fc.double({ min: -1.57, max: 1.57, noNaN: true }), (x) => {
      expect(Math.abs(tan(x) - Math.tan(x))).toBeLessThanOrEqual(1e-15 * Math.max(1, Math.abs(Math.tan(x))));
    }),
    { numRuns: 2000 },
  );
});

test("the inverses agree with the built-in ones to 1e-15", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      (v, w) => {
        expect(close(asin(v), Math.asin(v))).toBe(true);
        expect(close(acos(v), Math.acos(v))).toBe(true);
        expect(close(atan(w), Math.atan(w))).toBe(true);
        expect(close(atan2(v, w), Math.atan2(v, w))).toBe(true);
        expect(close(atan2(w, v), Math.atan2(w, v))).toBe(true);
      },
    ),
    { numRuns: 5000 },
  );
});

test("the small angles keep their relative accuracy", () => {
  for (const x of [1e-3, 1e-6, 1e-9, 1e-12]) {
    expect(sin(x) / Math.sin(x)).toBeCloseTo(1, 15);
    expect(atan(x) / Math.atan(x)).toBeCloseTo(1, 15);
  }
});

test("atan2 keeps the standard's special cases", () => {
  for (const y of [0, -0, 1, -1]) {
    for (const x of [0, -0, 1, -1]) expect(Object.is(atan2(y, x), Math.atan2(y, x))).toBe(true);
  }
  expect(atan2(Number.NaN, 1)).toBeNaN();
  expect(asin(1.5)).toBeNaN();
});

test("a quarter turn from pointing right points down the page", () => {
  expect(bearing(0)).toEqual({ x: 1, y: 0 });
  expect(bearing(Math.PI / 2).y).toBe(1);
  expect(angleOf({ x: 0, y: 3 })).toBe(Math.PI / 2);
  expect(turnBetween({ x: 1, y: 0 }, { x: 0, y: 1 })).toBe(Math.PI / 2);
});

test("a half turn is positive whichever way the signs of nought fall", () => {
  expect(angleOf({ x: -1, y: -0 })).toBe(Math.PI);
  expect(turnBetween({ x: 1, y: 0 }, { x: -1, y: -0 })).toBe(Math.PI);
});

test("degrees and radians", () => {
  expect(toRadians(180)).toBe(Math.PI);
  expect(toDegrees(Math.PI / 2)).toBe(90);
});

test("the handle of a quarter circle is four thirds of the tangent of an eighth of pi", () => {
  // trade.md, check value 83.
  expect((4 / 3) * tan(Math.PI / 8)).toBeCloseTo(0.5522847, 7);
});
