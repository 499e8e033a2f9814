// The nearest place and the feet of perpendiculars.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { directionAt, pathLength, pointAt, pointOn } from "../../kernel/geometry/arc-length.ts";
import { feet, nearest } from "../../kernel/geometry/nearest.ts";
import { line, straight, through } from "../../kernel/geometry/path.ts";
import { distance, dot, minus } from "../../kernel/geometry/point.ts";
import { anyCubic, anyPoint, mildCubic } from "./curves.ts";

const p = (x: number, y: number) => ({ x, y });
const share = fc.double({ min: 0, max: 1, noNaN: true });

describe("nearest", () => {
  test("of a point on the path is that point, to 1e-9", () => {
    fc.assert(
      fc.property(anyCubic, mildCubic, share, (first, second, at) => {
        const path = [first, line(first.end, second.start), second];
        const q = pointAt(path, at * pathLength(path));
        const found = nearest(path, q);
        expect(found.distance).toBeLessThan(1e-9);
        expect(distance(pointAt(path, found.at), q)).toBeLessThan(1e-7);
      }),
      { numRuns: 500 },
    );
  });

  test("is no farther than any of a thousand places", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, (span, q) => {
        const found = nearest([span], q);
        const places = Array.from({ length: 1001 }, (_, i) => distance(pointOn(span, i / 1000), q));
        expect(Math.min(...places)).toBeGreaterThanOrEqual(found.distance - 1e-9);
        expect(distance(found.point, q)).toBeCloseTo(found.distance, 9);
      }),
      { numRuns: 200 },
    );
  });

  test("is an end where the perpendicular misses the path", () => {
    const path = straight(p(0, 0), p(10, 0));
    expect(nearest(path, p(-3, 4))).toEqual({ at: 0, point: p(0, 0), distance: 5 });
    expect(nearest(path, p(13, 4))).toEqual({ at: 10, point: p(10, 0), distance: 5 });
    expect(nearest(path, p(4, 2))).toEqual({ at: 4, point: p(4, 0), distance: 2 });
  });

  test("from the centre of a circle is the radius", () => {
    expect(nearest(arcSpans(p(5, 5), p(105, 5), 2), p(5, 5)).distance).toBeCloseTo(100, 6);
  });
});

describe("feet", () => {
  test("stand square on the path and come nearest first", () => {
    fc.assert(
      fc.property(mildCubic, anyPoint, (span, q) => {
        const path = [span];
        const found = feet(path, q);
        found.forEach((foot, i) => {
          const off = dot(minus(q, foot.point), directionAt(path, foot.at));
          expect(Math.abs(off)).toBeLessThan(1e-7);
          if (i > 0) expect(foot.distance).toBeGreaterThanOrEqual(found[i - 1]!.distance);
        });
      }),
      { numRuns: 300 },
    );
  });

  test("of a point inside a circle are the near and the far side", () => {
    const found = feet(arcSpans(p(0, 0), p(0, -100), 2 * Math.PI), p(30, 40));
    expect(found).toHaveLength(2);
    expect(found[0]!.distance).toBeCloseTo(50, 6);
    // A cubic of 1/32 turn leans off the circle's direction by some 1e-8: that far the feet may slip along.
    expect(found[0]!.point.x).toBeCloseTo(60, 5);
    expect(found[1]!.distance).toBeCloseTo(150, 6);
    expect(found[1]!.point.y).toBeCloseTo(-80, 5);
  });

  test("at a smooth joint come once", () => {
    const path = [line(p(0, 0), p(10, 0)), line(p(10, 0), p(30, 0))];
    expect(feet(path, p(10, 7))).toEqual([{ at: 10, point: p(10, 0), distance: 7 }]);
  });

  test("do not include ends that are merely near", () => {
    expect(feet(straight(p(0, 0), p(10, 0)), p(-3, 4))).toEqual([]);
  });

  test("on a bent line there is one on each side", () => {
    const found = feet(through([p(0, 0), p(100, 0), p(100, 100)]), p(60, 30));
    expect(found.map((foot) => [foot.at, foot.distance])).toEqual([
      [60, 30],
      [130, 40],
    ]);
  });
});
