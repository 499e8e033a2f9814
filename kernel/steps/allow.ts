// allow: gives edges their seam or hem allowance, outside the sewing line.
import { optional, phrase } from "../../grammar/phrase.ts";
import { turnInOutline } from "../alter/outline-spot.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { Allowance } from "../working.ts";

export const allow = pieceStep({
  name: "allow",
  since: "0.1",
  summary: "Adds a seam or hem allowance outside edges.",
  details: `\`corners\` says how the cutting lines meet at the ends: \`point\` where nothing is said (both carried on until they meet), \`square\`,
\`turned\` (mirrored, for a hem that is turned up) or \`cut\`. A later \`allow\` replaces an earlier one.
\`by 0\` says on purpose that there is none, as at a bound edge.`,
  example: `chalkline 1
units cm
piece pocket {
  line top    = (0, 0) to (14 cm, 0)
  line front  = (14 cm, 0) to (14 cm, 16 cm)
  line bottom = (14 cm, 16 cm) to (0, 16 cm)
  line back   = (0, 16 cm) to (0, 0)
  outline top, front, bottom, back
  mark top as hem
  allow front, bottom, back by 1 cm
  allow top by 3 cm corners turned
}`,
  phrase: [
    phrase`allow ${slot.ownEdges("edges", "the edges that get it")} by ${slot.length("width", "how wide; 0 for none on purpose")} ${optional`corners ${slot.corners("corners")}`}`,
  ],
  work({ edges, width, corners }, piece, { where, units }) {
    if (width < 0) {
      throw new Problem(
        "allowance-negative",
        `An allowance lies outside the sewing line, and ${lengthIn(width, units)} would lie inside.`,
        {
          hint: "Take the minus away, or use `strip` to take an allowance off.",
        },
      );
    }
    for (const edge of edges) turnInOutline(piece, edge);
    const fold = edges.find((edge) => width > 0 && piece.edges.get(edge)!.role === "fold");
    if (fold !== undefined) {
      throw new Problem("fold-allowance", `${fold} is a fold: the cloth goes on there, so it has no allowance.`, {
        hint: `Leave ${fold} out.`,
      });
    }
    const allowance: Allowance = { width, corners: corners ?? "point", drawnBy: where };
    const allowances = new Map([...piece.allowances, ...edges.map((edge) => [edge, allowance] as const)]);
    const words =
      width === 0 ? `no allowance at ${edges.join(", ")}` : `allowed ${lengthIn(width, units)} at ${edges.join(", ")}`;
    return { now: { ...piece, allowances }, words };
  },
});
