// Turning and mirroring points.
import fc from "fast-check";
import { expect, test } from "vitest";
import { mirroredIn } from "../../kernel/geometry/mirror.ts";
import { cross, distance, minus } from "../../kernel/geometry/point.ts";
import { rotated } from "../../kernel/geometry/rotate.ts";
import { anyPoint } from "./curves.ts";

test("a positive quarter turn takes right to down", () => {
  const turned = rotated({ x: 15, y: 7 }, { x: 5, y: 7 }, Math.PI / 2);
  expect(turned.x).toBeCloseTo(5, 12);
  expect(turned.y).toBeCloseTo(17, 12);
});

test("turning keeps distances and undoes itself", () => {
  fc.assert(
    fc.property(anyPoint, anyPoint, fc.double({ min: -10, max: 10, noNaN: true }), (p, about, angle) => {
      const turned = rotated(p, about, angle);
      expect(Math.abs(distance(turned, about) - distance(p, about))).toBeLessThan(1e-11);
      expect(distance(rotated(turned, about, -angle), p)).toBeLessThan(1e-11);
    }),
  );
});

test("a mirror image lies as far on the other side of the line", () => {
  expect(mirroredIn({ x: 3, y: 4 }, { x: 0, y: 0 }, { x: 0, y: 10 })).toEqual({ x: -3, y: 4 });
  fc.assert(
    fc.property(anyPoint, anyPoint, anyPoint, (p, a, b) => {
      fc.pre(distance(a, b) > 1);
      const image = mirroredIn(p, a, b);
      const along = minus(b, a);
      expect(Math.abs(cross(along, minus(image, a)) + cross(along, minus(p, a)))).toBeLessThan(1e-6);
      expect(distance(image, a)).toBeCloseTo(distance(p, a), 8);
      expect(distance(mirroredIn(image, a, b), p)).toBeLessThan(1e-8);
    }),
  );
});

test("without a line the mirror is the point", () => {
  expect(mirroredIn({ x: 3, y: 4 }, { x: 1, y: 1 }, { x: 1, y: 1 })).toEqual({ x: -1, y: -2 });
});
