// The filled tip of an arrow.
import { joined, type Path, straight } from "../geometry/path.ts";
import { minus, type Point, plus, quarterTurn, times } from "../geometry/point.ts";

/** A closed arrowhead with its tip at a place, pointing in a direction of length 1; size is its length in mm. */
export const arrowhead = (tip: Point, direction: Point, size: number): Path => {
  const back = minus(tip, times(direction, size));
  const side = times(quarterTurn(direction), size * slenderness);
  const [left, right] = [minus(back, side), plus(back, side)];
  return joined([straight(tip, right), straight(right, left), straight(left, tip)]);
};

// Half the breadth as a ratio of the length.
const slenderness = 0.3;
