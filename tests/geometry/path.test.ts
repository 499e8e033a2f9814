// Building paths, their ends and directions, corners and straightness.
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import {
  corners,
  cubic,
  endDirection,
  endOf,
  isStraight,
  joined,
  line,
  mapped,
  reversed,
  spanEndDirection,
  spanStartDirection,
  startDirection,
  startOf,
  straight,
  through,
} from "../../kernel/geometry/path.ts";

const p = (x: number, y: number) => ({ x, y });

test("a path reversed runs from its end to its start and keeps its pivots", () => {
  const path: Path = [{ ...line(p(0, 0), p(10, 0)), pivot: p(5, 5) }, cubic(p(10, 0), p(12, 0), p(20, 6), p(20, 10))];
  const back = reversed(path);
  expect(startOf(back)).toEqual(p(20, 10));
  expect(endOf(back)).toEqual(p(0, 0));
  expect(back[1]!.pivot).toEqual(p(5, 5));
  expect(back[0]).toEqual(cubic(p(20, 10), p(20, 6), p(12, 0), p(10, 0)));
  expect(reversed(back)).toEqual(path);
});

test("a bent line needs two points", () => {
  expect(() => through([p(0, 0)])).toThrow(RangeError);
  expect(through([p(0, 0), p(1, 0), p(1, 1)])).toEqual([line(p(0, 0), p(1, 0)), line(p(1, 0), p(1, 1))]);
});

describe("directions", () => {
  test("of handles that lie on their ends come from the next control point", () => {
    const span = cubic(p(0, 0), p(0, 0), p(0, 10), p(10, 10));
    expect(spanStartDirection(span)).toEqual(p(0, 1));
    expect(spanEndDirection(span)).toEqual(p(1, 0));
    const bare = cubic(p(0, 0), p(0, 0), p(3, 4), p(3, 4));
    expect(spanStartDirection(bare).x).toBeCloseTo(0.6, 15);
    expect(spanEndDirection(bare).y).toBeCloseTo(0.8, 15);
  });

  test("of a path pass over spans of no length", () => {
    const path = [line(p(0, 0), p(0, 0)), line(p(0, 0), p(0, 5)), line(p(0, 5), p(0, 5))];
    expect(startDirection(path)).toEqual(p(0, 1));
    expect(endDirection(path).x).toBeCloseTo(0);
    expect(endDirection(path).y).toBe(1);
  });
});

test("mapping moves points, handles and pivots", () => {
  const path: Path = [{ ...cubic(p(0, 0), p(1, 0), p(2, 1), p(2, 2)), pivot: p(0, 2) }, line(p(2, 2), p(2, 5))];
  const moved = mapped(path, (q) => p(q.x + 10, q.y - 1));
  expect(moved).toEqual([
    { ...cubic(p(10, -1), p(11, -1), p(12, 0), p(12, 1)), pivot: p(10, 1) },
    line(p(12, 1), p(12, 4)),
  ]);
  expect(moved[1]).not.toHaveProperty("pivot");
});

describe("joining", () => {
  test("moves a start within the tolerance onto the end before it", () => {
    const path = joined([straight(p(0, 0), p(10, 0)), straight(p(10.001, 0), p(10, 20))]);
    expect(path).toEqual([line(p(0, 0), p(10, 0)), line(p(10, 0), p(10, 20))]);
  });

  test("bridges a gap with a line", () => {
    const path = joined([straight(p(0, 0), p(10, 0)), straight(p(10, 5), p(0, 5))]);
    expect(path).toHaveLength(3);
    expect(path[1]).toEqual(line(p(10, 0), p(10, 5)));
  });
});

describe("corners", () => {
  test("tell where and how far the path turns, clockwise positive", () => {
    const path = through([p(0, 0), p(30, 0), p(30, 40), p(130, 40), p(230, 41)]);
    const found = corners(path, 0.1);
    expect(found.map(({ index, at }) => [index, at])).toEqual([
      [1, 30],
      [2, 70],
    ]);
    expect(found[0]!.turn).toBeCloseTo(Math.PI / 2, 12);
    expect(found[1]!.turn).toBeCloseTo(-Math.PI / 2, 12);
  });

  test("are not found on smooth arcs, nor at a span of no length", () => {
    expect(corners(arcSpans(p(0, 0), p(100, 0), 3), 1e-6)).toEqual([]);
    expect(corners([line(p(0, 0), p(5, 0)), line(p(5, 0), p(5, 0)), line(p(5, 0), p(9, 0))], 1e-6)).toEqual([]);
  });
});

describe("straightness", () => {
  test("goes by the curve and not by its handles", () => {
    // Both handles 4 mm off: the middle of the curve is 3/4 of that off.
    const path = [cubic(p(0, 0), p(30, 4), p(60, 4), p(90, 0))];
    expect(isStraight(path, 3.001)).toBe(true);
    expect(isStraight(path, 2.999)).toBe(false);
  });

  test("a bent line is as straight as its corner is near the line between its ends", () => {
    const path = through([p(0, 0), p(50, 1), p(100, 0)]);
    expect(isStraight(path, 1.0001)).toBe(true);
    expect(isStraight(path, 0.9999)).toBe(false);
  });

  test("a closed path is not straight", () => {
    expect(isStraight(arcSpans(p(0, 0), p(10, 0), 2 * Math.PI), 1)).toBe(false);
  });
});
