// spread-apart: opens a slash at both of its ends, by different amounts or level.
import { optional, phrase } from "../../grammar/phrase.ts";
import { spreadApart as laidApart } from "../alter/spread-apart.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const spreadApart = pieceStep({
  name: "spread-apart",
  since: "0.2",
  summary: "Slashes the piece right through and lays the two parts apart, by one amount near and another far.",
  details: `Both amounts are measured straight across the gap; \`near\` is the gap at the place named first, \`far\` the one at the other end. Where they
are equal the part moves level and does not turn. Where they differ the two sides of the slash meet at a point beyond it, at
near x length / (far - near), and the part turns about that point by twice the angle whose sine is (far - near) / (2 x length).
The part that stays is the one that stays at \`spread-from\`. Both gaps are bridged straight: \`true-seam\` makes arcs of them. Gather,
pleat or ease the near edge afterwards, or it no longer fits its seam.

A negative amount takes cloth out at that end: \`near -1 cm far 8 cm\` closes a dart into flare.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (30 cm, 60 cm)
  line hem    = (0, 60 cm) to (30 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark center as fold
  spread-apart waist at 50% to hem near 5 cm far 15 cm
  mark hem as hem
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`spread-apart ${slot.placeOnPiece("hinge", "the place on the outline where the slash starts")}
      to ${slot.ownEdgeOrPlace("target", "the edge that the slash runs to, or a place on it")}
      near ${slot.length("near", "how far it opens where it starts; negative folds cloth away")}
      far ${slot.length("far", "how far it opens at its other end; negative folds cloth away")}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that moves")}`}`,
  ],
  work({ hinge, target, near, far, moving }, piece, line) {
    return laidApart(piece, { hinge, target, near, far, moving }, line);
  },
});
