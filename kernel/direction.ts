// A direction as it was asked for becomes an angle at the place where it is used.
import { directionAt } from "./geometry/arc-length.ts";
import { nearest } from "./geometry/nearest.ts";
import { dot, minus, type Point, quarterTurn, times } from "./geometry/point.ts";
import { angleOf } from "./geometry/trig.ts";
import type { Direction } from "./value.ts";

/**
 * The angle of travel, in radians, that a direction means at a point. Along and square to an edge go by the edge's
 * direction at its nearest point; of the two square ones, that at the smaller angle to `ahead` counts.
 */
export const headingAt = (direction: Direction, at: Point, ahead: Point): number => {
  if ("angle" in direction) return direction.angle;
  if ("toward" in direction) return angleOf(minus(direction.toward, at));
  const path = "along" in direction ? direction.along : direction.squareTo;
  const travel = directionAt(path, nearest(path, at).at);
  if ("along" in direction) return angleOf(travel);
  const square = quarterTurn(travel);
  return angleOf(dot(square, ahead) >= 0 ? square : times(square, -1));
};
