// Cutting keeps the curve, the lengths and the shared points.
import fc from "fast-check";
import { expect, test } from "vitest";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import type { CubicSpan } from "../../kernel/geometry/path.ts";
import { cubic, endOf, line, reversed, startOf, straight, through } from "../../kernel/geometry/path.ts";
import { distance } from "../../kernel/geometry/point.ts";
import { part, splitAt, splitSpan } from "../../kernel/geometry/split.ts";
import { anyCubic, asBezier, mildCubic } from "./curves.ts";

const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });

test("a cubic splits as bezier-js splits it", () => {
  fc.assert(
    fc.property(anyCubic, share, (span, t) => {
      const theirs = asBezier(span).split(t);
      splitSpan(span, t).forEach((half, side) => {
        const { start, startHandle, endHandle, end } = half as CubicSpan;
        const points = (side === 0 ? theirs.left : theirs.right).points;
        [start, startHandle, endHandle, end].forEach((q, i) => {
          expect(distance(q, points[i]!)).toBeLessThan(1e-9);
        });
      });
    }),
  );
});

test("both halves keep the pivot", () => {
  const pivot = { x: 1, y: 2 };
  const [left, right] = splitSpan({ ...line({ x: 0, y: 0 }, { x: 10, y: 0 }), pivot }, 0.25);
  expect(left).toEqual({ ...line({ x: 0, y: 0 }, { x: 2.5, y: 0 }), pivot });
  expect(right.pivot).toBe(pivot);
});

test("the lengths of the parts add up, and the cut is shared to the last bit", () => {
  fc.assert(
    fc.property(anyCubic, mildCubic, share, share, (first, second, one, other) => {
      const path = [first, line(first.end, second.start), second];
      const length = pathLength(path);
      const [from, to] = [Math.min(one, other) * length, Math.max(one, other) * length];
      const [before, middle, after] = [part(path, 0, from), part(path, from, to), part(path, to, length)];
      expect(Math.abs(pathLength(before) - from)).toBeLessThan(1e-8);
      expect(Math.abs(pathLength(middle) - (to - from))).toBeLessThan(1e-8);
      expect(Math.abs(pathLength(before) + pathLength(middle) + pathLength(after) - length)).toBeLessThan(1e-8);
      expect(startOf(middle)).toEqual(endOf(before));
      expect(endOf(middle)).toEqual(startOf(after));
      expect(startOf(middle)).toEqual(pointAt(path, from));
      expect(startOf(before)).toBe(first.start);
      expect(endOf(after)).toBe(second.end);
    }),
    { numRuns: 300 },
  );
});

test("a part is on the path", () => {
  fc.assert(
    fc.property(anyCubic, share, share, share, (span, one, other, inside) => {
      const path = [span];
      const length = pathLength(path);
      const [from, to] = [Math.min(one, other) * length, Math.max(one, other) * length];
      const onPart = pointAt(part(path, from, to), inside * (to - from));
      // Near a cusp a length that is right to 1e-9 is still a place right to 1e-9.
      expect(distance(onPart, pointAt(path, from + inside * (to - from)))).toBeLessThan(1e-7);
    }),
    { numRuns: 300 },
  );
});

test("a part from later to earlier runs backwards", () => {
  const path = [cubic({ x: 0, y: 0 }, { x: 10, y: 0 }, { x: 20, y: 10 }, { x: 20, y: 20 })];
  expect(part(path, 12, 5)).toEqual(reversed(part(path, 5, 12)));
});

test("cuts at a joint leave whole spans", () => {
  const bent = through([
    { x: 0, y: 0 },
    { x: 30, y: 0 },
    { x: 30, y: 40 },
  ]);
  expect(splitAt(bent, 30)).toEqual([[bent[0]], [bent[1]]]);
  expect(part(bent, 0, 70)).toEqual(bent);
});

test("a cut at an end leaves one side missing", () => {
  const path = straight({ x: 0, y: 0 }, { x: 10, y: 0 });
  expect(splitAt(path, 0)).toEqual([undefined, path]);
  expect(splitAt(path, 5e-10)).toEqual([undefined, path]);
  expect(splitAt(path, 10)).toEqual([path, undefined]);
  const [left, right] = splitAt(path, 2);
  expect([left, right].map((side) => pathLength(side!))).toEqual([2, 8]);
});

test("a part between equal lengths is a point", () => {
  const path = straight({ x: 0, y: 0 }, { x: 10, y: 0 });
  expect(part(path, 4, 4)).toEqual([line({ x: 4, y: 0 }, { x: 4, y: 0 })]);
  expect(pathLength(part(path, 10, 10))).toBe(0);
});
