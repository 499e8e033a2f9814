// Writing that runs beside a line: which way up it goes, and where its baseline lies.
import { type Point, plus, times } from "../geometry/point.ts";
import { cos, sin } from "../geometry/trig.ts";
import { ascent, descent } from "./lettering.ts";

/** The direction of a line as one reads along it, radians: from the left, or upward where it is upright. */
export const readable = (angle: number): number => {
  if (angle >= Math.PI / 2 - nearlyUpright) return angle - Math.PI;
  if (angle < -Math.PI / 2 - nearlyUpright) return angle + Math.PI;
  return angle;
};

/** The baseline place of a text that stands a gap in mm off a line, on the side that a direction of length 1 points to. */
export const baselineBeside = (on: Point, side: Point, turn: number, size: number, gap: number): Point => {
  // A text above its line sits on its descenders, one below it hangs from its capitals.
  const below = cos(turn) * side.y - sin(turn) * side.x > 0;
  return plus(on, times(side, gap + (below ? ascent : descent) * size));
};

// Rounding must not turn an upright text over.
const nearlyUpright = 1e-6;
