// mark: says which part an edge plays.
import { phrase } from "../../grammar/phrase.ts";
import { withEdge } from "../drawn.ts";
import { isStraight } from "../geometry/path.ts";
import { Problem } from "../problem.ts";
import * as slot from "../slots.ts";
import { pieceStep } from "../step.ts";

/** Cloth folds along a straight line only; this much bow, in mm, still folds flat. */
const foldBow = 0.5;

export const mark = pieceStep({
  name: "mark",
  since: "0.1",
  summary: "Says which part an edge plays: seam, hem, fold or opening.",
  details:
    "An edge is a seam where nothing is said. A fold is straight within 0.5 mm, has no allowance, and the piece's other half lies beyond it. " +
    "Cloth is folded along its lengthwise threads: the grain goes along the fold from here on, unless a `grain` line below says otherwise.",
  phrase: [phrase`mark ${slot.ownEdge("edge", "the edge")} as ${slot.role("role")}`],
  example: `chalkline 1
units cm
piece apron {
  line center = (0, 0) to (0, 50 cm)
  line top    = (0, 0) to (18 cm, 0)
  line side   = (18 cm, 0) to (18 cm, 50 cm)
  line hem    = (0, 50 cm) to (18 cm, 50 cm)
  outline center, top, side, hem
  mark center as fold
  mark hem as hem
}`,
  work({ edge: name, role }, piece, { where }) {
    const edge = piece.edges.get(name)!;
    if (role === "fold" && !isStraight(edge.path, foldBow)) {
      throw new Problem("fold-bent", `${name} is not straight, and cloth folds along a straight line only.`, {
        slot: "edge",
        hint: "Mark a straight edge, or keep it a seam.",
      });
    }
    if (role === "fold" && (piece.allowances.get(name)?.width ?? 0) > 0) {
      throw new Problem("fold-allowance", `${name} has an allowance, and there is none at a fold.`, {
        slot: "edge",
        hint: `Write strip ${name} first, or allow ${name} by 0.`,
      });
    }
    const marked = withEdge(piece, { ...edge, role });
    // Cloth is folded along its lengthwise threads, so the fold settles the grain; a `grain` line below may say otherwise.
    const now = role === "fold" ? { ...marked, grain: { kind: "along" as const, edge: name, drawnBy: where } } : marked;
    return { now, words: "" };
  },
});
