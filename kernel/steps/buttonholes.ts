// buttonholes: a row of holes to match a row of buttons.
import { optional, phrase } from "../../grammar/phrase.ts";
import { evenly } from "../alter/evenly.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { buttonholeNumber } from "../buttonhole-number.ts";
import { withNewEdge } from "../drawn.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { type Path, straight } from "../geometry/path.ts";
import {
  distance,
  minus,
  type Point,
  plus,
  quarterTurn,
  sameSpot,
  sameSpotTolerance,
  times,
  unit,
} from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

/** How far, in mm, a hole that lies across goes beyond its button toward the edge: the shank of the button takes it up (common practice, no source). */
const beyond = 3;

export const buttonholes = pieceStep({
  name: "buttonholes",
  since: "0.2",
  summary: "Marks a row of buttonholes to match a row of buttons between the same places.",
  details: `Each is a line inside the piece, called buttonhole-1 and so on. It lies square to the row, begins 3 mm beyond the button toward the edge that the row
as a whole is nearer to, and runs into the piece; \`lengthwise\` lays it along the row instead, its middle on the button. By custom a hole is as long as the button is wide and thick.`,
  phrase: [
    phrase`buttonholes ${slot.number("count", "how many")} from ${slot.place("first", "where the first button is")} to ${slot.place("last", "where the last button is")}
      long ${slot.length("length", "how long each hole is")} ${optional`lengthwise`}`,
  ],
  example: `chalkline 1
units cm
piece front {
  line opening = (-2 cm, 0) to (-2 cm, 60 cm)
  line top     = (-2 cm, 0) to (30 cm, 0)
  line side    = (30 cm, 0) to (30 cm, 60 cm)
  line hem     = (-2 cm, 60 cm) to (30 cm, 60 cm)
  outline opening, top, side, hem
  buttonholes 5 from (0, 2 cm) to (0, 42 cm) long 2.4 cm
}`,
  work(fill, piece, { where, units }) {
    const { count, first, last, length } = fill;
    if (length <= 0)
      throw new Problem("buttonhole-length", "A buttonhole has some length.", { hint: "Write a length above 0." });
    if (sameSpot(first, last)) {
      throw new Problem("buttonholes-row", "The row starts and ends on one spot, so it has no direction.", {
        hint: "Name two places; of a single hole the first is where it lies.",
      });
    }
    const whole = closedBoundary(piece, units);
    const along = unit(minus(last, first));
    const points = evenly(count, first, last);
    const toEdge = nearerSide(whole, points, quarterTurn(along));
    const hole = (button: Point): [Point, Point] => {
      if ("lengthwise" in fill)
        return [minus(button, times(along, length / 2)), plus(button, times(along, length / 2))];
      const start = plus(button, times(toEdge, beyond));
      return [start, minus(start, times(toEdge, length))];
    };
    const highest = Math.max(0, ...[...piece.edges.keys()].map((name) => buttonholeNumber(name) ?? 0));
    const now = points.reduce(
      (drawn, button, index) =>
        withNewEdge(drawn, `buttonhole-${highest + index + 1}`, straight(...hole(button)), where),
      piece,
    );
    const apart = points.length > 1 ? `, ${lengthIn(distance(points[0]!, points[1]!), units)} apart` : "";
    return { now, words: `${points.length} buttonholes of ${lengthIn(length, units)}${apart}` };
  },
});

/**
 * The direction, square to the row, in which the outline is nearer to the row as a whole. One side for all holes: the
 * first and the last may well lie nearest to the neck or the hem.
 */
const nearerSide = (whole: Path, row: readonly Point[], square: Point): Point => {
  const back = times(square, -1);
  const farther = reachOf(whole, row, square) - reachOf(whole, row, back);
  return farther > sameSpotTolerance ? back : square;
};

/** How far it is from all of the row together to the outline in a direction, mm; from a place off the piece there is no way to go. */
const reachOf = (whole: Path, row: readonly Point[], direction: Point): number =>
  row
    .map((place) => crossingsWithRay(whole, place, direction).flatMap(({ ahead }) => (ahead >= 0 ? [ahead] : [])))
    .reduce((sum, ahead) => sum + (ahead.length === 0 ? 0 : Math.min(...ahead)), 0);
