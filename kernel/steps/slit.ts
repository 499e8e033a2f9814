// slit: cuts into the piece from an edge, for a godet or a placket.
import { phrase } from "../../grammar/phrase.ts";
import { closedBoundary, spotsAt } from "../alter/outline-spot.ts";
import { withEdge } from "../drawn.ts";
import { contains } from "../geometry/area.ts";
import { crossings } from "../geometry/intersect.ts";
import { straight } from "../geometry/path.ts";
import { between, distance, sameSpot } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const slit = pieceStep({
  name: "slit",
  since: "0.2",
  summary: "Cuts a slit into the piece, from an edge to a place inside.",
  details: `A slit is a line inside the piece that is cut: its two sides can be sewn, each to an edge of a godet (\`seam godet.left with back.slit\`,
and the right one likewise). The seam allowance of the piece runs out to nothing at its end, so stitch round the end before you cut.`,
  example: `chalkline 1
units cm
piece panel {
  line waist = (0, 0) to (30 cm, 0)
  line side  = (30 cm, 0) to (30 cm, 60 cm)
  line hem   = (0, 60 cm) to (30 cm, 60 cm)
  line front = (0, 0) to (0, 60 cm)
  outline waist, side, hem, front
  slit vent = hem at 50% to (15 cm, 35 cm)
  mark hem as hem
}`,
  phrase: [
    phrase`slit ${slot.name("name", "what it is called")} = ${slot.place("from", "where on an edge it is cut in")}
      to ${slot.place("to", "the place inside where it ends")}`,
  ],
  work({ name, from, to }, piece, { where, units }) {
    const whole = closedBoundary(piece, units);
    if (spotsAt(piece, from).length === 0) {
      throw new Problem("slit-off-edge", "A slit is cut in from an edge, and its first place lies on none.", {
        hint: "Say where along an edge: `hem at 50%`.",
      });
    }
    const path = straight(from, to);
    const crosses = crossings(path, whole).some(({ point }) => !sameSpot(point, from));
    if (sameSpot(from, to) || crosses || !contains(whole, to) || !contains(whole, between(from, to, 0.5))) {
      throw new Problem(
        "slit-outside",
        `A slit ends inside the piece, and this one does not stay inside of ${piece.name}.`,
        {
          hint: "Let it end at a place inside, off the edges.",
        },
      );
    }
    return {
      now: withEdge(piece, { name, path, role: "opening", drawnBy: where }),
      words: `slit ${lengthIn(distance(from, to), units)}`,
    };
  },
});
