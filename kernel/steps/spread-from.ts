// spread-from: slashes a piece from a hinge and opens the slash, or folds cloth away along it.
import { optional, phrase } from "../../grammar/phrase.ts";
import { spread } from "../alter/spread.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const spreadFrom = pieceStep({
  name: "spread-from",
  since: "0.1",
  summary: "Slashes the piece from a hinge to another edge and opens the slash there, like a fan.",
  details: `The slash runs from the hinge to a place on another edge, or down from the hinge to an edge; down turns with the part that
the hinge lies in, and where the line down misses the edge, the slash divides it in the ratio in which the hinge divides its own.
The part with the fold stays, else the part with the grain line, else the one that holds the start of the first edge of
the outline; \`moving\` names an edge of the part that is to turn instead. The other part turns about the hinge as one stiff piece with
all that is on it, until the two sides of the slash are the length apart, measured straight across, or by the angle. Every edge but
the one that opens keeps its length. The opening is bridged straight; \`true-seam\` makes a smooth edge of it.

A negative amount folds cloth away: the wedge beside the slash, on the side that moves, is taken out, and the part turns in.
What an earlier slash from the same hinge opened there is taken out first.

\`along\` slashes on an edge itself, from one of its ends or from a place on it: along a fold or an opening all else turns away from it, along a seam
the edge turns outward.`,
  example: `chalkline 1
units cm
piece panel {
  line waist = (0, 0) to (30 cm, 0)
  line side  = (30 cm, 0) to (30 cm, 100 cm)
  line hem   = (0, 100 cm) to (30 cm, 100 cm)
  line center = (0, 0) to (0, 100 cm)
  outline waist, side, hem, center
  mark hem as hem
  grain (5 cm, 20 cm) to (5 cm, 80 cm)
  spread-from waist at 50% to hem by 20 cm
  true-seam hem, waist
  allow waist, side, center by 1.5 cm
  allow hem by 2 cm corners turned
}`,
  phrase: [
    phrase`spread-from ${slot.placeOnPiece("hinge", "the place on the outline that the slash is hinged at")}
      to ${slot.ownEdgeOrPlace("target", "the edge that opens, or a place on it")}
      by ${slot.lengthOrAngle("opening", "how far the slash opens; negative folds cloth away")}
      ${optional`along ${slot.ownEdge("along", "the edge that the slash runs on")}`}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that turns")}`}`,
  ],
  work({ hinge, target, opening, along, moving }, piece, line) {
    return spread(piece, { hinge, target, opening, along, moving }, line);
  },
});
