// Places in a row at even distances, as buttons stand.
import { between, type Point } from "../geometry/point.ts";
import { Problem } from "../problem.ts";

/** More than this many in one row is a slip of the finger. */
const most = 200;

/** So many places from one to another, both counted; a single one stands at the first. */
export const evenly = (count: number, first: Point, last: Point): Point[] => {
  if (!Number.isInteger(count) || count < 1 || count > most) {
    throw new Problem("row-count", `A row has a whole number of places, from 1 to ${most}.`);
  }
  return Array.from({ length: count }, (_, index) => (count === 1 ? first : between(first, last, index / (count - 1))));
};
