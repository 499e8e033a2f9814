// Pictures taken aslant: the map between a rectangle and its picture, held against others' reckonings of it.
import fc from "fast-check";
import { expect, test } from "vitest";
import { enlarged, inverse, type Quad, rectangleTo, sentBy } from "../../../editor/paper/homography.ts";
import { cross, minus, type Point, size } from "../../../kernel/geometry/point.ts";

const at = (x: number, y: number): Point => ({ x, y });
const near = (found: Point | undefined, wanted: Point, digits = 6): void => {
  expect(found?.x).toBeCloseTo(wanted.x, digits);
  expect(found?.y).toBeCloseTo(wanted.y, digits);
};

test("a square goes to four points as others reckon it", () => {
  // Source: zxing/zxing (Apache 2.0), core/src/test/java/com/google/zxing/common/PerspectiveTransformTestCase.java, testSquareToQuadrilateral.
  const map = rectangleTo(1, 1, [at(2, 3), at(10, 4), at(16, 15), at(4, 9)]);
  near(sentBy(map, at(0, 0)), at(2, 3));
  near(sentBy(map, at(1, 0)), at(10, 4));
  near(sentBy(map, at(0, 1)), at(4, 9));
  near(sentBy(map, at(1, 1)), at(16, 15));
  near(sentBy(map, at(0.5, 0.5)), at(6.535211, 6.8873234), 5);
  near(sentBy(map, at(1.5, 1.5)), at(48, 42.42857), 4);
});

test("a rectangle of 6 by 4 goes to four points as others reckon it", () => {
  // Source: ij-plugins/ijp-color (LGPL 2.1), ijp-color/src/test/scala/ij_plugins/color/util/PerspectiveTransformTest.scala.
  const map = rectangleTo(6, 4, [at(207, 95), at(461, 132), at(436, 312), at(198, 255)]);
  near(sentBy(map, at(3, 2)), at(317.07786, 199.30959), 4);
});

test("four points in four others, by way of a square, as others reckon it", () => {
  // Source: the same file of zxing/zxing, testQuadrilateralToQuadrilateral.
  const from = rectangleTo(1, 1, [at(2, 3), at(10, 4), at(16, 15), at(4, 9)]);
  const to = rectangleTo(1, 1, [at(103, 110), at(300, 120), at(290, 270), at(150, 280)]);
  near(sentBy(to, sentBy(inverse(from), at(10, 4))!), at(300, 120));
  near(sentBy(to, sentBy(inverse(from), at(0.5, 0.5))!), at(7.1516876, -64.60185), 3);
  near(sentBy(to, sentBy(inverse(from), at(50, 50))!), at(328.09116, 334.16385), 3);
});

/** Twice the area of a triangle; positive where it goes clockwise on the page. */
const turn = (a: Point, b: Point, c: Point): number => cross(minus(b, a), minus(c, b));

/** Four points in turn, clockwise, none of them nearly in line with its neighbours. */
const quads: fc.Arbitrary<Quad> = fc
  .array(fc.record({ x: fc.integer({ min: 0, max: 4000 }), y: fc.integer({ min: 0, max: 3000 }) }), {
    minLength: 4,
    maxLength: 4,
  })
  .map((points) => points as unknown as Quad)
  .filter((quad) =>
    quad.every((b, i) => {
      const [a, c] = [quad[(i + 3) % 4]!, quad[(i + 1) % 4]!];
      return turn(a, b, c) > 0.1 * size(minus(b, a)) * size(minus(c, b));
    }),
  );
const sides = fc.double({ min: 10, max: 1000, noNaN: true });
const shares = fc.double({ min: 0, max: 1, noNaN: true });

/**
 * The eight numbers by the general way: two linear equations for each corner, solved by elimination with pivots.
 * Source: R. Hartley and A. Zisserman, "Multiple View Geometry in Computer Vision", section 4.1 (the direct linear
 * transformation, with its last number set to 1).
 */
const solved = (from: Quad, to: Quad): number[] => {
  const rows = from.flatMap(({ x, y }, i) => {
    const { x: u, y: v } = to[i]!;
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, v],
    ];
  });
  for (let column = 0; column < 8; column += 1) {
    const best = rows
      .slice(column)
      .reduce((most, row) => (Math.abs(row[column]!) > Math.abs(most[column]!) ? row : most));
    rows.splice(rows.indexOf(best), 1);
    rows.splice(column, 0, best);
    rows.forEach((row, i) => {
      if (i === column) return;
      const times = row[column]! / best[column]!;
      for (let k = column; k < 9; k += 1) row[k]! -= times * best[k]!;
    });
  }
  return rows.map((row, i) => row[8]! / row[i]!);
};

test("every corner goes exactly to its point, and every other spot where the general solution sends it", () => {
  fc.assert(
    fc.property(quads, sides, sides, shares, shares, (quad, width, height, across, down) => {
      const map = rectangleTo(width, height, quad);
      const corners: Quad = [at(0, 0), at(width, 0), at(width, height), at(0, height)];
      corners.forEach((corner, i) => {
        near(sentBy(map, corner), quad[i]!, 6);
      });
      const [a, b, c, d, e, f, g, h] = solved(corners, quad) as [
        number,
        number,
        number,
        number,
        number,
        number,
        number,
        number,
      ];
      const { x, y } = at(across * width, down * height);
      const depth = g * x + h * y + 1;
      near(sentBy(map, { x, y }), at((a * x + b * y + c) / depth, (d * x + e * y + f) / depth), 5);
    }),
  );
});

test("there and back is nothing, and a larger map is as much larger", () => {
  fc.assert(
    fc.property(quads, sides, sides, shares, shares, (quad, width, height, across, down) => {
      const map = rectangleTo(width, height, quad);
      const spot = at(across * width, down * height);
      near(sentBy(inverse(map), sentBy(map, spot)!), spot, 5);
      near(sentBy(enlarged(inverse(map), 3), sentBy(map, spot)!), at(3 * spot.x, 3 * spot.y), 4);
    }),
  );
});

test("what lies in one line stays in one line", () => {
  fc.assert(
    fc.property(quads, shares, shares, shares, shares, shares, (quad, x0, y0, x1, y1, share) => {
      const map = rectangleTo(1, 1, quad);
      const between = at(x0 + (x1 - x0) * share, y0 + (y1 - y0) * share);
      const [a, b, c] = [sentBy(map, at(x0, y0))!, sentBy(map, between)!, sentBy(map, at(x1, y1))!];
      // Pixels off the line from a to c.
      expect(Math.abs(turn(a, b, c))).toBeLessThanOrEqual(1e-6 * (1 + size(minus(c, a))));
    }),
  );
});

test("the horizon and what lies beyond it is nowhere on the paper", () => {
  // A road of breadth 1: its sides, seen from (-2, 4) to (-1, 2) and from (2, 4) to (1, 2), meet at (0, 0), on the horizon y = 0.
  const map = rectangleTo(1, 1, [at(-1, 2), at(1, 2), at(2, 4), at(-2, 4)]);
  const back = inverse(map);
  expect(sentBy(back, at(0, 0))).toBeUndefined();
  expect(sentBy(back, at(5, 0))).toBeUndefined();
  expect(sentBy(back, at(0, -1))).toBeUndefined();
  // At y = 1 it is seen half as broad as at y = 2, so from twice as far off.
  near(sentBy(back, at(0.5, 1)), at(1, -2));
});
