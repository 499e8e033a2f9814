// Where a line turns, as against where it only bends.
import { corners, endOf, type Path, startOf } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** The ends of a path and its corners, in order of travel. */
export const turnsOf = (path: Path): Point[] => [
  startOf(path),
  ...corners(path, kink).map(({ index }) => path[index]!.start),
  endOf(path),
];

// No curve of a pattern has a kink of more than one degree (handbook of the trade, 5.3), so what turns more is a corner.
const kink = Math.PI / 180;
