// How wide a piece is across the cloth.
import type { Point } from "../../geometry/point.ts";
import { turnedOutline } from "../../packing/strip.ts";

/** The width, in mm, across the cloth of a piece with this rim when turned by an angle. */
export const widthAcross = (rim: readonly Point[], turn: number): number => {
  const ys = turnedOutline(rim, turn).map(({ y }) => y);
  return Math.max(...ys) - Math.min(...ys);
};

/** By how much, in mm, pieces may be wider than the cloth: rims stand out by a hair, and a piece just as wide as it fits. */
export const give = 0.1;
