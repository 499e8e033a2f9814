// Curves as bent lines, for formats that know no curves.
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { number } from "./path-data.ts";

/** How near, in mm, a bent line keeps to its curve: half the breadth of a knife cut or a laser beam. */
export const drawnWithin = 0.05;

/** A path as the corners of a bent line, no two running the same once written; one that is closed does not come back to its first. */
export const bentLineOf = (path: Path): { readonly points: readonly Point[]; readonly closed: boolean } => {
  const points = flattened(path, drawnWithin).filter((p, index, all) => index === 0 || !isSame(p, all[index - 1]!));
  const closed = points.length > 3 && isSame(points[0]!, points[points.length - 1]!);
  return { points: closed ? points.slice(0, -1) : points, closed };
};

/** Whether two points are one once they are written. */
export const isSame = (a: Point, b: Point): boolean => number(a.x) === number(b.x) && number(a.y) === number(b.y);
