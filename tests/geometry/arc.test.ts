// Arcs stay on their circles and hit their ends.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import "./curves.ts";
import { arcAbout, arcBulging, arcSpans } from "../../kernel/geometry/arc.ts";
import { pathLength, pointAt, pointOn } from "../../kernel/geometry/arc-length.ts";
import { corners, endOf, startDirection, startOf } from "../../kernel/geometry/path.ts";
import { distance } from "../../kernel/geometry/point.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";

const p = (x: number, y: number) => ({ x, y });

describe("an arc through an angle", () => {
  test("keeps to its circle and is radius times angle long", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -7, max: 7, noNaN: true }).filter((angle) => Math.abs(angle) > 1e-3),
        fc.integer({ min: 5, max: 900 }),
        (angle, radius) => {
          const center = p(40, -30);
          const start = p(40 + radius, -30);
          const path = arcSpans(center, start, angle);
          expect(startOf(path)).toBe(start);
          expect(endOf(path)).toEqual(rotated(start, center, angle));
          expect(Math.abs(pathLength(path) / (radius * Math.abs(angle)) - 1)).toBeLessThan(1.1e-9);
          for (const span of path) {
            expect(span.pivot).toBeUndefined();
            for (const t of [0.2, 0.5, 0.8]) {
              expect(Math.abs(distance(pointOn(span, t), center) / radius - 1)).toBeLessThan(1.1e-9);
            }
          }
          expect(corners(path, 1e-9)).toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });

  test("a positive angle runs clockwise on the page, in spans of at most 1/32 turn", () => {
    expect(startDirection(arcSpans(p(0, 0), p(10, 0), 1)).y).toBeCloseTo(1, 12);
    expect(arcSpans(p(0, 0), p(10, 0), 2 * Math.PI)).toHaveLength(32);
    expect(arcSpans(p(0, 0), p(10, 0), Math.PI / 2)).toHaveLength(8);
    expect(arcSpans(p(0, 0), p(10, 0), 0.01)).toHaveLength(1);
  });
});

describe("an arc between given ends", () => {
  test("hits both exactly", () => {
    const start = p(100, 0);
    const end = p(1e-7, 100.0000001);
    const path = arcAbout(p(0, 0), start, end, Math.PI / 2);
    expect(startOf(path)).toBe(start);
    expect(endOf(path)).toBe(end);
    expect(pathLength(path)).toBeCloseTo(50 * Math.PI, 5);
  });

  test("goes the long way round when told to", () => {
    const path = arcAbout(p(0, 0), p(100, 0), p(0, 100), -1.5 * Math.PI);
    expect(pathLength(path)).toBeCloseTo(150 * Math.PI, 5);
  });
});

describe("an arc of a radius over a chord", () => {
  test("chord 400 with sagitta 10 has radius 2005 and is 400.666 long", () => {
    // trade.md, check value 90.
    const arc = arcBulging(p(0, 0), p(400, 0), 2005, p(0, -1))!;
    expect(pathLength(arc.path)).toBeCloseTo(400.666, 3);
    expect(distance(arc.center, p(200, 1995))).toBeLessThan(1e-9);
    expect(pointAt(arc.path, pathLength(arc.path) / 2).y).toBeCloseTo(-10, 6);
  });

  test("bulges to the side asked for, whichever way it runs", () => {
    for (const [start, end] of [
      [p(0, 0), p(100, 0)],
      [p(100, 0), p(0, 0)],
    ] as const) {
      for (const side of [p(0, 1), p(0, -1)]) {
        const { path } = arcBulging(start, end, 60, side)!;
        for (const span of path) expect(pointOn(span, 0.5).y * side.y).toBeGreaterThan(0);
        expect(startOf(path)).toBe(start);
        expect(endOf(path)).toBe(end);
      }
    }
  });

  test("is half a circle at least radius, and nothing below", () => {
    const half = arcBulging(p(0, 0), p(100, 0), 50, p(0, 1))!;
    expect(pathLength(half.path)).toBeCloseTo(50 * Math.PI, 6);
    expect(arcBulging(p(0, 0), p(100, 0), 49.999, p(0, 1))).toBeUndefined();
  });
});
