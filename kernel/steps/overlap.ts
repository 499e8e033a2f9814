// overlap: folds fullness away again along a slash.
import { optional, phrase } from "../../grammar/phrase.ts";
import { spread } from "../alter/spread.ts";
import { spreadApart } from "../alter/spread-apart.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

export const overlap = pieceStep({
  name: "overlap",
  since: "0.2",
  summary:
    "Takes fullness out again: laps the two sides of a slash over each other, from nothing at the hinge to the full amount at the edge.",
  details: `It undoes \`spread-from\`, place for place and amount for amount: the piece comes out as it was. What an earlier slash from the same
hinge opened there is taken out first. On a piece that was never spread it takes a wedge out, beside the slash on the side that moves;
if the edge is straight, a small step is left in it, so \`true-seam\` it.

With \`near\` and \`far\` it laps over at both ends, and undoes \`spread-apart\`: start at the place that stayed, or where the other side
of the gap came to lie.`,
  example: `chalkline 1
units cm
piece panel {
  line waist  = (0, 0) to (30 cm, 0)
  line side   = (30 cm, 0) to (34 cm, 60 cm)
  arc hem     = (0, 61 cm) to (34 cm, 60 cm) radius 400 cm bulging down
  line center = (0, 0) to (0, 61 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
  overlap waist at 50% to hem by 3 cm
  true-seam hem, waist
  allow waist, side by 1.5 cm
  allow hem by 2 cm
}`,
  phrase: [
    phrase`overlap ${slot.placeOnPiece("hinge", "the place on the outline that the slash is hinged at")}
      to ${slot.ownEdgeOrPlace("target", "the edge that loses fullness, or a place on it")}
      by ${slot.lengthOrAngle("amount", "how much is lapped over there")}
      ${optional`along ${slot.ownEdge("along", "the edge that the slash runs on")}`}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that turns")}`}`,
    phrase`overlap ${slot.placeOnPiece("hinge", "the place on the outline where the slash starts")}
      to ${slot.ownEdgeOrPlace("target", "the edge that the slash runs to, or a place on it")}
      near ${slot.length("near", "how much is lapped over where it starts")}
      far ${slot.length("far", "how much is lapped over at its other end")}
      ${optional`moving ${slot.ownEdge("moving", "an edge of the part that moves")}`}`,
  ],
  work(fill, piece, line) {
    const { hinge, target, moving } = fill;
    if ("near" in fill) {
      refuseNegative(Math.min(fill.near, fill.far));
      return spreadApart(piece, { hinge, target, near: -fill.near, far: -fill.far, moving }, line);
    }
    const { amount } = fill;
    refuseNegative("length" in amount ? amount.length : amount.angle);
    const opening = "length" in amount ? { length: -amount.length } : { angle: -amount.angle };
    return spread(piece, { hinge, target, opening, along: fill.along, moving }, line);
  },
});

const refuseNegative = (amount: number): void => {
  if (amount >= 0) return;
  throw new Problem("overlap-negative", "A negative overlap would open the slash.", {
    hint: "Use `spread-from` or `spread-apart` to open it.",
  });
};
