// Paths beside paths: distances, corners, arcs and the way back.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { pathLength, pointAt, pointOn } from "../../kernel/geometry/arc-length.ts";
import { selfCrossings } from "../../kernel/geometry/intersect.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { carriedOn, offsetPath, offsetUntrimmed } from "../../kernel/geometry/offset.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import {
  corners,
  cubic,
  endDirection,
  endOf,
  line,
  mapped,
  startDirection,
  startOf,
  straight,
  through,
} from "../../kernel/geometry/path.ts";
import { cross, distance, dot, minus } from "../../kernel/geometry/point.ts";
import { mildCubic } from "./curves.ts";

const p = (x: number, y: number) => ({ x, y });
const by = fc.integer({ min: -20, max: 20 }).filter((mm) => mm !== 0);

/** The points at n even steps along a path. */
const along = (path: Path, n: number) =>
  Array.from({ length: n + 1 }, (_, i) => pointAt(path, (pathLength(path) * i) / n));

const meets = (path: Path): boolean =>
  path.every((span, i) => i === 0 || (path[i - 1]!.end.x === span.start.x && path[i - 1]!.end.y === span.start.y));

describe("a straight line", () => {
  test("moves to the left of travel as seen on the page", () => {
    expect(offsetPath(straight(p(0, 0), p(100, 0)), 10)).toEqual([line(p(0, -10), p(100, -10))]);
    expect(offsetPath(straight(p(0, 0), p(100, 0)), -10)).toEqual([line(p(0, 10), p(100, 10))]);
    expect(offsetPath(straight(p(0, 0), p(0, 100)), 10)).toEqual([line(p(10, 0), p(10, 100))]);
  });
});

describe("a mild curve", () => {
  test("comes out everywhere at the distance, to 1e-4, ends on the normals and directions kept", () => {
    fc.assert(
      fc.property(mildCubic, by, (span, mm) => {
        const path = [span];
        const moved = offsetPath(path, mm);
        fc.pre(tightest(path) > Math.abs(mm) * 1.2);
        expect(meets(moved)).toBe(true);
        for (const q of along(moved, 60)) {
          const foot = nearest(path, q);
          expect(Math.abs(foot.distance - Math.abs(mm))).toBeLessThan(1e-4);
        }
        for (const [q, end, direction] of [
          [startOf(moved), startOf(path), startDirection(path)],
          [endOf(moved), endOf(path), endDirection(path)],
        ] as const) {
          expect(distance(q, end)).toBeCloseTo(Math.abs(mm), 10);
          expect(dot(minus(q, end), direction)).toBeCloseTo(0, 10);
          expect(cross(direction, minus(q, end)) * mm).toBeLessThan(0);
        }
        expect(cross(startDirection(moved), startDirection(path))).toBeCloseTo(0, 10);
        expect(cross(endDirection(moved), endDirection(path))).toBeCloseTo(0, 10);
        expect(corners(moved, 1e-6)).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  test("moved out and in again returns to within 2e-4", () => {
    fc.assert(
      fc.property(mildCubic, by, (span, mm) => {
        const path = [span];
        fc.pre(tightest(path) > Math.abs(mm) * 1.5);
        const back = offsetPath(offsetPath(path, mm), -mm);
        for (const q of along(back, 40)) expect(nearest(path, q).distance).toBeLessThan(2e-4);
        expect(distance(startOf(back), startOf(path))).toBeLessThan(1e-9);
        expect(distance(endOf(back), endOf(path))).toBeLessThan(1e-9);
      }),
      { numRuns: 100 },
    );
  });

  test("ends at any distance, where rounding is coarser than the tolerance too", () => {
    const curves = [
      cubic(p(0, 0), p(55, 0), p(100, 45), p(100, 100)),
      cubic(p(0, 0), p(100, 0), p(0, 100), p(100, 100)),
      cubic(p(0, 0), p(200, 100), p(-100, 100), p(100, 0)),
      cubic(p(0, 0), p(100, 1e-7), p(100, -1e-7), p(0, 0)),
    ];
    for (const curve of curves) {
      for (const mm of [1e5, -1e5, 1e9, 1e12, 1e17]) {
        const { path } = offsetUntrimmed([curve], mm);
        // Eleven halvings of the whole, as the algorithm is bounded.
        expect(path.length).toBeLessThanOrEqual(2048);
        expect(distance(startOf(path), curve.start) / Math.abs(mm)).toBeCloseTo(1, 9);
        expect(distance(endOf(path), curve.end) / Math.abs(mm)).toBeCloseTo(1, 9);
      }
    }
  });

  test("takes few spans", () => {
    const path = [cubic(p(0, 0), p(80, 60), p(160, 60), p(240, 0))];
    expect(offsetPath(path, 10).length).toBeLessThanOrEqual(8);
  });
});

describe("an arc", () => {
  const quarter = arcSpans(p(0, 0), p(100, 0), Math.PI / 2);

  test("comes out as an arc, larger on the left when it runs clockwise", () => {
    for (const [mm, radius] of [
      [10, 110],
      [-30, 70],
    ] as const) {
      const moved = offsetPath(quarter, mm);
      for (const q of along(moved, 50)) expect(Math.abs(distance(q, p(0, 0)) - radius)).toBeLessThan(1e-6);
      expect(Math.abs(pathLength(moved) - (radius * Math.PI) / 2)).toBeLessThan(1e-4);
    }
  });

  test("with its pivot is scaled exactly, span for span", () => {
    const swung = quarter.map((span) => ({ ...span, pivot: p(0, 0) }));
    const moved = offsetPath(swung, 25);
    expect(moved).toHaveLength(swung.length);
    const scaled = mapped(swung, (q) => p(q.x * 1.25, q.y * 1.25));
    moved.forEach((span, i) => {
      expect(span.kind).toBe("cubic");
      expect(span.pivot).toEqual(p(0, 0));
      for (const t of [0, 0.3, 1]) expect(distance(pointOn(span, t), pointOn(scaled[i]!, t))).toBeLessThan(1e-12);
    });
    // A length that grows by the angle times the distance.
    expect(pathLength(moved) - pathLength(swung)).toBeCloseTo((25 * Math.PI) / 2, 6);
  });

  test("run the other way is smaller on the left", () => {
    const moved = offsetPath(
      arcSpans(p(0, 0), p(100, 0), -1).map((span) => ({ ...span, pivot: p(0, 0) })),
      25,
    );
    expect(distance(endOf(moved), p(0, 0))).toBeCloseTo(75, 10);
  });

  test("a chord with a pivot moves its two ends radially", () => {
    const chord: Path = [{ ...line(p(100, 0), p(0, 100)), pivot: p(0, 0) }];
    const [moved] = offsetPath(chord, 10);
    expect(moved!.start).toEqual(p(110, 0));
    expect(moved!.end).toEqual(p(0, 110));
    expect(moved!.pivot).toEqual(p(0, 0));
  });

  test("smaller than the distance vanishes, and the lines beside it meet", () => {
    // A corner of 90 degrees rounded with radius 5, moved by 20 to the inside.
    const rounded: Path = [
      line(p(0, 0), p(95, 0)),
      ...arcSpans(p(95, 5), p(95, 0), Math.PI / 2).map((span) => ({ ...span, pivot: p(95, 5) })),
      line(p(100, 5), p(100, 100)),
    ];
    const moved = offsetPath(rounded, -20);
    expect(moved).toHaveLength(2);
    expect(distance(endOf([moved[0]!]), p(80, 20))).toBeLessThan(1e-9);
  });
});

describe("corners", () => {
  const corner = through([p(0, 0), p(100, 0), p(100, 100)]);

  test("outside are carried on to a mitre", () => {
    const moved = offsetPath(corner, 10);
    expect(moved).toHaveLength(2);
    expect(meets(moved)).toBe(true);
    expect(distance(endOf([moved[0]!]), p(110, -10))).toBeLessThan(1e-12);
    expect(pathLength(moved)).toBeCloseTo(220, 10);
  });

  test("inside are trimmed where the sides cross", () => {
    const moved = offsetPath(corner, -10);
    expect(moved).toHaveLength(2);
    expect(meets(moved)).toBe(true);
    expect(distance(endOf([moved[0]!]), p(90, 10))).toBeLessThan(1e-12);
    expect(pathLength(moved)).toBeCloseTo(180, 10);
  });

  test("of a curve and a line are carried on straight from the curve", () => {
    const path: Path = [cubic(p(0, 0), p(40, 0), p(80, 0), p(100, 20)), line(p(100, 20), p(60, 120))];
    const moved = offsetPath(path, 10);
    expect(meets(moved)).toBe(true);
    const added = moved[moved.length - 2]!;
    expect(added.kind).toBe("line");
    expect(cross(minus(added.end, added.start), p(1, 1))).toBeCloseTo(0, 8);
    // Ten from both directions at once.
    expect(cross(minus(added.end, p(100, 20)), p(Math.SQRT1_2, Math.SQRT1_2))).toBeCloseTo(10, 3);
  });

  test("nearly straight, or nearly folded back, are joined by a straight line", () => {
    const bend = through([p(0, 0), p(100, 0), p(200, 0.005)]);
    expect(pathLength(offsetPath(bend, 10))).toBeCloseTo(200, 2);
    const spike = through([p(0, 0), p(100, 0), p(0, 2)]);
    const moved = offsetPath(spike, 10);
    expect(moved).toHaveLength(3);
    expect(pathLength([moved[1]!])).toBeCloseTo(20, 1);
  });

  test("a notch narrower than the distance is passed over without a loop", () => {
    const notched = through([p(0, 0), p(100, 0), p(103, -8), p(106, 0), p(200, 0)]);
    // On the left the notch stands out and its sides are carried on; on the right it is a narrow valley.
    const moved = offsetPath(notched, -15);
    expect(selfCrossings(moved)).toEqual([]);
    for (const q of along(moved, 100)) expect(nearest(notched, q).distance).toBeGreaterThan(15 - 0.002);
  });
});

test("a curve tighter than the distance is trimmed of its loop", () => {
  const tight = [cubic(p(0, 0), p(60, 100), p(60, 100), p(120, 0))];
  const moved = offsetPath(tight, -40);
  expect(selfCrossings(moved)).toEqual([]);
  expect(meets(moved)).toBe(true);
  for (const q of along(moved, 100)) expect(nearest(tight, q).distance).toBeGreaterThan(40 - 0.002);
});

test("smooth joints stay joints", () => {
  const path: Path = [line(p(0, 0), p(100, 0)), ...arcSpans(p(100, 50), p(100, 0), 1)];
  const moved = offsetPath(path, -10);
  expect(meets(moved)).toBe(true);
  expect(corners(moved, 1e-6)).toEqual([]);
  expect(pathLength(moved)).toBeCloseTo(100 + 40, 5);
});

test("by nought the path stays", () => {
  const path = straight(p(0, 0), p(1, 1));
  expect(offsetPath(path, 0)).toBe(path);
});

describe("carrying on", () => {
  test("lengthens a line and adds one to a curve", () => {
    expect(carriedOn(straight(p(0, 0), p(10, 0)), "end", 5)).toEqual([line(p(0, 0), p(15, 0))]);
    expect(carriedOn(straight(p(0, 0), p(10, 0)), "start", 5)).toEqual([line(p(-5, 0), p(10, 0))]);
    const curve = [cubic(p(0, 0), p(10, 0), p(20, 10), p(20, 20))];
    expect(carriedOn(curve, "end", 5)).toEqual([...curve, line(p(20, 20), p(20, 25))]);
    expect(carriedOn(curve, "start", 5)).toEqual([line(p(-5, 0), p(0, 0)), ...curve]);
  });
});

/** The least radius of curvature of a path, mm, by the circle through three near points. */
const tightest = (path: Path): number => {
  const points = along(path, 400);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < points.length - 1; i += 1) {
    const [a, b, c] = [points[i - 1]!, points[i]!, points[i + 1]!];
    const twiceArea = Math.abs(cross(minus(b, a), minus(c, a)));
    if (twiceArea > 0) least = Math.min(least, (distance(a, b) * distance(b, c) * distance(a, c)) / (2 * twiceArea));
  }
  return least;
};
