// Whether an edge lies where the cloth is folded.
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, type Path, startOf } from "../../kernel/geometry/path.ts";
import { between, cross, minus, type Point, unit } from "../../kernel/geometry/point.ts";
import { endsMeetWithin } from "./chained.ts";

/** Whether a straight line lies along a fold line. */
export const liesOnFold = (from: Point, to: Point, folds: readonly Path[]): boolean =>
  folds.some((path) => {
    const [a, b] = [startOf(path), endOf(path)];
    const along = unit(minus(b, a));
    const off = (p: Point): number => Math.abs(cross(along, minus(p, a)));
    return (
      off(from) <= endsMeetWithin &&
      off(to) <= endsMeetWithin &&
      nearest(path, between(from, to, 0.5)).distance <= endsMeetWithin
    );
  });
