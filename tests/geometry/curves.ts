// Arbitrary cubics and the conversion to bezier-js, for the property tests of this folder.
import { Bezier } from "bezier-js";
import fc from "fast-check";
import type { CubicSpan } from "../../kernel/geometry/path.ts";
import { cubic } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { distance } from "../../kernel/geometry/point.ts";

// The same curves on every run: what fails for one person fails for all.
fc.configureGlobal({ seed: 1986 });

const coordinate = fc.integer({ min: -3000, max: 3000 }).map((tenths) => tenths / 10);

export const anyPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });

/** Cubics of all shapes, loops and near-cusps among them, with their ends apart. */
export const anyCubic: fc.Arbitrary<CubicSpan> = fc
  .tuple(anyPoint, anyPoint, anyPoint, anyPoint)
  .filter(([a, b, c, d]) => new Set([a, b, c, d].map((p) => `${p.x} ${p.y}`)).size === 4)
  .map(([a, b, c, d]) => cubic(a, b, c, d));

/** Cubics with all control points well apart; bezier-js loses its way on very small and on folded ones. */
export const largeCubic: fc.Arbitrary<CubicSpan> = anyCubic.filter(({ start, startHandle, endHandle, end }) => {
  const points = [start, startHandle, endHandle, end];
  return points.every((a, i) => points.every((b, j) => i === j || distance(a, b) > 40));
});

/** Cubics that bend to one side or gently to both, as drawn edges do. */
export const mildCubic: fc.Arbitrary<CubicSpan> = fc
  .record({
    length: fc.integer({ min: 50, max: 500 }),
    first: fc.integer({ min: -40, max: 40 }),
    second: fc.integer({ min: -40, max: 40 }),
    reach: fc.integer({ min: 25, max: 40 }),
  })
  .map(({ length, first, second, reach }) =>
    cubic(
      { x: 0, y: 0 },
      { x: (length * reach) / 100, y: (length * first) / 100 },
      { x: length - (length * reach) / 100, y: (length * second) / 100 },
      { x: length, y: 0 },
    ),
  );

export const asBezier = (span: CubicSpan): Bezier =>
  new Bezier([span.start, span.startHandle, span.endHandle, span.end].map(({ x, y }) => ({ x, y })));
