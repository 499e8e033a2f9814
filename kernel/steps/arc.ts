// arc: part of a circle, about a place or with a radius.
import { optional, phrase } from "../../grammar/phrase.ts";
import { headingAt } from "../direction.ts";
import { withNewEdge } from "../drawn.ts";
import { arcAbout, arcBulging } from "../geometry/arc.ts";
import { between, distance, minus, type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

/** How near to half a turn an arc may come before its side has to be said, in radians. */
const halfTurnMargin = 1e-6;

export const arc = pieceStep({
  name: "arc",
  since: "0.1",
  summary: "Draws part of a circle from one place to another.",
  details:
    "`around` takes the shorter way round its middle, unless `clockwise` or `anticlockwise` says otherwise. With `radius` the arc is the shorter one, " +
    "bulging to the side that `bulging` says.",
  phrase: [
    phrase`arc ${slot.name("name", "what the edge is called")} = ${slot.place("start", "where it starts")} to ${slot.place("end", "where it ends")} around ${slot.place("middle", "the middle of the circle")} ${optional`clockwise`} ${optional`anticlockwise`}`,
    phrase`arc ${slot.name("name", "what the edge is called")} = ${slot.place("start", "where it starts")} to ${slot.place("end", "where it ends")} radius ${slot.length("radius", "of the circle")} bulging ${slot.direction("bulging", "the side it bulges to")}`,
  ],
  example: `chalkline 1
units cm
piece half-circle {
  line straight-side = (-20 cm, 0) to (20 cm, 0)
  arc round-side = (20 cm, 0) to (-20 cm, 0) around (0, 0) clockwise
  outline straight-side, round-side
}`,
  work(fill, piece, { where, units }) {
    const { name, start, end } = fill;
    if (sameSpot(start, end)) throw new Problem("arc-empty", "The arc starts and ends at the same spot.");
    if ("radius" in fill) {
      const { radius, bulging } = fill;
      const chord = distance(start, end);
      const side = bearing(headingAt(bulging, between(start, end, 0.5), minus(end, start)));
      const bent = arcBulging(start, end, radius, side);
      if (!bent) {
        throw new Problem(
          "arc-radius",
          `The two ends are ${lengthIn(chord, units)} apart, more than a circle of radius ${lengthIn(radius, units)} is wide.`,
          {
            slot: "radius",
            hint: `Make the radius at least ${lengthIn(chord / 2, units)}.`,
          },
        );
      }
      return { now: withNewEdge(piece, name, bent.path, where), words: "" };
    }
    const { middle } = fill;
    const ways = fill as typeof fill & { clockwise?: true; anticlockwise?: true };
    const turn = turnAbout(middle, start, end, ways, units);
    return { now: withNewEdge(piece, name, arcAbout(middle, start, end, turn), where), words: "" };
  },
});

const turnAbout = (
  middle: Point,
  start: Point,
  end: Point,
  { clockwise, anticlockwise }: { clockwise?: true; anticlockwise?: true },
  units: "in" | "cm" | "mm",
): number => {
  const [near, far] = [distance(middle, start), distance(middle, end)];
  if (near === 0 || Math.abs(near - far) > sameSpotTolerance) {
    throw new Problem(
      "arc-radii",
      `The two ends are ${lengthIn(near, units)} and ${lengthIn(far, units)} from the middle, so no circle about it goes through both.`,
      {
        hint: "Move an end, or say radius and bulging instead.",
      },
    );
  }
  if (clockwise && anticlockwise)
    throw new Problem("arc-way", "The arc goes clockwise or anticlockwise, not both.", { slot: "anticlockwise" });
  const turn = turnBetween(minus(start, middle), minus(end, middle));
  if (clockwise) return turn > 0 ? turn : turn + 2 * Math.PI;
  if (anticlockwise) return turn < 0 ? turn : turn - 2 * Math.PI;
  if (Math.PI - Math.abs(turn) < halfTurnMargin) {
    throw new Problem("arc-half", "The arc is exactly half a turn, and both ways round are as short.", {
      hint: "Add clockwise or anticlockwise.",
    });
  }
  return turn;
};
