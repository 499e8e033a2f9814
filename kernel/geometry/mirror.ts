// The mirror image of a point.
import type { Point } from "./point.ts";
import { dot, minus, plus, times } from "./point.ts";

/** p mirrored in the straight line through a and b; in the point a where a and b are one. */
export const mirroredIn = (p: Point, a: Point, b: Point): Point => {
  const along = minus(b, a);
  const square = dot(along, along);
  const foot = square === 0 ? a : plus(a, times(along, dot(minus(p, a), along) / square));
  return { x: 2 * foot.x - p.x, y: 2 * foot.y - p.y };
};
