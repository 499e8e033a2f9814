// extend-hem: moves an edge out, and its neighbours follow along their own direction.
import { phrase } from "../../grammar/phrase.ts";
import { movedEdge } from "../alter/moved-edge.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const extendHem = pieceStep({
  name: "extend-hem",
  since: "0.1",
  summary: "Lengthens the piece: every point of an edge moves out by a length, square to the edge.",
  details: `The two neighbouring edges are carried on along their own direction to meet it. A straight bridge that a slash left in the edge
is carried on about its hinge, so lengthening and then trueing comes to the same as trueing and then lengthening.
A negative length shortens, and the neighbours are trimmed.`,
  example: `chalkline 1
units cm
piece skirt {
  line waist  = (0, 0) to (18 cm, 0)
  line side   = (18 cm, 0) to (24 cm, 55 cm)
  line hem    = (0, 55 cm) to (24 cm, 55 cm)
  line center = (0, 0) to (0, 55 cm)
  outline waist, side, hem, center
  mark center as fold
  extend-hem hem by 8 cm
  mark hem as hem
  true-seam hem
  allow waist, side by 1.5 cm
  allow hem by 1.5 cm corners turned
}`,
  phrase: [
    phrase`extend-hem ${slot.ownEdge("edge", "the edge that moves out")} by ${slot.length("length", "how far; negative shortens")}`,
  ],
  work({ edge, length }, piece, { units }) {
    closedBoundary(piece, units);
    if (length === 0) return { now: piece, words: "" };
    const did = length > 0 ? "lengthened" : "shortened";
    return { now: movedEdge(piece, edge, length), words: `${did} ${lengthIn(Math.abs(length), units)} at the ${edge}` };
  },
});
