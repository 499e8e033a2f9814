// strip: takes an allowance that was drawn in off again.
import { phrase } from "../../grammar/phrase.ts";
import { movedEdge } from "../alter/moved-edge.ts";
import { closedBoundary } from "../alter/outline-spot.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";

export const strip = pieceStep({
  name: "strip",
  since: "0.1",
  summary: "Takes an allowance that was drawn in off again: the edge moves in to the sewing line.",
  details: `Its neighbours are trimmed to it. Places and notches on the edge move in with it, and a place at a trimmed corner goes to the new
corner. A \`keep\` below holds edges to what they measure after the strip.`,
  example: `chalkline 1
units cm
piece block {
  line neck   = (0, 0) to (10 cm, 0)
  line side   = (10 cm, 0) to (12 cm, 40 cm)
  line hem    = (0, 40 cm) to (12 cm, 40 cm)
  line center = (0, 0) to (0, 40 cm)
  outline neck, side, hem, center
}
piece back = block {
  strip center by 1.5 cm
  mark center as fold
  keep neck, side
}`,
  phrase: [
    phrase`strip ${slot.ownEdges("edges", "the edges that have an allowance drawn in")} by ${slot.length("width", "the width of that allowance")}`,
  ],
  work({ edges, width }, piece, { units }) {
    closedBoundary(piece, units);
    if (width < 0) {
      throw new Problem("strip-negative", `An allowance of ${lengthIn(width, units)} cannot be taken off.`, {
        hint: "Use extend-hem to move an edge out.",
      });
    }
    const stripped = width === 0 ? piece : edges.reduce((now, edge) => movedEdge(now, edge, -width), piece);
    const words = width === 0 ? "" : `took ${lengthIn(width, units)} of allowance off ${edges.join(", ")}`;
    return { now: { ...stripped, kept: stripped }, words };
  },
});
