// Lengths against circles, ellipses and bezier-js, and the way back from a length to a place.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import {
  derivativeOn,
  directionAt,
  lengthTo,
  pathLength,
  pointAt,
  pointOn,
  positionAt,
  spanLength,
} from "../../kernel/geometry/arc-length.ts";
import type { CubicSpan } from "../../kernel/geometry/path.ts";
import { cubic, mapped, straight, through } from "../../kernel/geometry/path.ts";
import { distance, size } from "../../kernel/geometry/point.ts";
import { anyCubic, asBezier, mildCubic } from "./curves.ts";

// trade.md, check value 83: the handle of a quarter circle as a share of its radius.
const kappa = 0.5522847;

const quarter = (radius: number): CubicSpan =>
  cubic({ x: radius, y: 0 }, { x: radius, y: radius * kappa }, { x: radius * kappa, y: radius }, { x: 0, y: radius });

/** The length by very many chords, which is short by a known share of the step. */
const byChords = (span: CubicSpan, count: number): number => {
  let sum = 0;
  for (let i = 0; i < count; i += 1) sum += distance(pointOn(span, i / count), pointOn(span, (i + 1) / count));
  return sum;
};

describe("known lengths", () => {
  test("one cubic for a quarter circle is 157.1017 long, not 157.0796", () => {
    // trade.md, check value 84.
    expect(spanLength(quarter(100))).toBeCloseTo(157.1017, 3);
  });

  test("quarter ellipses, drawn as squeezed circles, have their known lengths", () => {
    // trade.md, check values 85 to 87. An arc squeezed in one direction is a cubic for the ellipse just as near.
    for (const [a, b, length] of [
      [100, 50, 121.106],
      [80, 220, 248.633],
      [74, 84, 124.217],
    ] as const) {
      const circle = arcSpans({ x: 0, y: 0 }, { x: 1, y: 0 }, Math.PI / 2);
      expect(pathLength(mapped(circle, (p) => ({ x: a * p.x, y: b * p.y })))).toBeCloseTo(length, 3);
    }
  });

  test("a circle of arcs is two pi r long", () => {
    // Geometry: the perimeter of a circle. Each cubic of 1/32 turn is long by a share below 1e-10.
    expect(
      Math.abs(pathLength(arcSpans({ x: 7, y: -3 }, { x: 107, y: -3 }, 2 * Math.PI)) - 200 * Math.PI),
    ).toBeLessThan(1e-6);
  });

  test("a straight cubic with an even pace is as long as its chord", () => {
    expect(spanLength(cubic({ x: 0, y: 0 }, { x: 30, y: 40 }, { x: 60, y: 80 }, { x: 90, y: 120 }))).toBeCloseTo(
      150,
      10,
    );
  });

  test("a cubic that runs out and back on one line is measured through its turning point", () => {
    // x(t) = 3(1-t)^2 t * 100 rises to x(1/3) = 400/9 and falls to 0 at t = 1.
    const there = cubic({ x: 0, y: 0 }, { x: 100, y: 0 }, { x: 0, y: 0 }, { x: 0, y: 0 });
    expect(Math.abs(spanLength(there) - 800 / 9)).toBeLessThan(1e-9);
  });
});

test("lengths agree with bezier-js on mild curves", () => {
  // bezier-js 6.1.4, Legendre-Gauss with 24 points: good to 1e-12 of mild curves.
  fc.assert(
    fc.property(mildCubic, (span) => {
      expect(Math.abs(spanLength(span) - asBezier(span).length())).toBeLessThan(1e-7);
    }),
  );
});

test("near a cusp the length still agrees with a million chords", () => {
  for (const off of [1, 0.1, 0.01, 0.001, 0]) {
    const span = cubic({ x: 0, y: 0 }, { x: 200, y: 100 }, { x: off, y: 100 }, { x: 200 - off, y: 0 });
    // Chords are short by at most the sum of (turn squared / 24) a chord: here below 1e-7 mm, but for rounding.
    expect(Math.abs(spanLength(span) - byChords(span, 1_000_000))).toBeLessThan(2e-7);
  }
});

test("the length of a span is the sum of its parts to 1e-9", () => {
  fc.assert(
    fc.property(anyCubic, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (span, t) => {
      const path = [span];
      const before = lengthTo(path, { index: 0, t });
      const backwards = [cubic(span.end, span.endHandle, span.startHandle, span.start)];
      const after = lengthTo(backwards, { index: 0, t: 1 - t });
      expect(Math.abs(before + after - spanLength(span))).toBeLessThan(2e-9);
    }),
    { numRuns: 1000 },
  );
});

test("a place found by its length has that length", () => {
  fc.assert(
    fc.property(anyCubic, mildCubic, fc.double({ min: 0, max: 1, noNaN: true }), (first, second, share) => {
      const path = [first, second];
      const s = share * pathLength(path);
      expect(Math.abs(lengthTo(path, positionAt(path, s)) - s)).toBeLessThan(2e-9);
    }),
    { numRuns: 1000 },
  );
});

test("ends are exact and beyond them the path stops", () => {
  fc.assert(
    fc.property(anyCubic, (span) => {
      const path = [span];
      expect(pointAt(path, 0)).toBe(span.start);
      expect(pointAt(path, pathLength(path))).toBe(span.end);
      expect(pointAt(path, -5)).toBe(span.start);
      expect(pointAt(path, pathLength(path) + 5)).toBe(span.end);
    }),
  );
});

test("a joint belongs to the later span, but the end of all to the last", () => {
  const bent = through([
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 30, y: 40 },
  ]);
  expect(positionAt(bent, 30)).toEqual({ index: 1, t: 0 });
  expect(positionAt(bent, 70)).toEqual({ index: 1, t: 1 });
  expect(positionAt(bent, 15)).toEqual({ index: 0, t: 0.5 });
  expect(directionAt(bent, 30)).toEqual({ x: 0, y: 1 });
  expect(directionAt(bent, 29)).toEqual({ x: 1, y: 0 });
});

test("directions have length 1, also where a handle lies on its end", () => {
  const span = cubic({ x: 0, y: 0 }, { x: 0, y: 0 }, { x: 60, y: 80 }, { x: 60, y: 80 });
  for (const s of [0, 10, 50, 100]) {
    const direction = directionAt([span], s);
    expect(direction.x).toBeCloseTo(0.6, 12);
    expect(direction.y).toBeCloseTo(0.8, 12);
  }
});

test("points and derivatives agree with bezier-js", () => {
  fc.assert(
    fc.property(anyCubic, fc.double({ min: 0, max: 1, noNaN: true }), (span, t) => {
      expect(distance(pointOn(span, t), asBezier(span).get(t))).toBeLessThan(1e-9);
      expect(distance(derivativeOn(span, t), asBezier(span).derivative(t))).toBeLessThan(1e-8);
    }),
  );
});

test("a straight path is measured by its ends", () => {
  const path = straight({ x: 0, y: 0 }, { x: 30, y: 40 });
  expect(pathLength(path)).toBe(50);
  expect(size(directionAt(path, 10))).toBeCloseTo(1, 15);
});
