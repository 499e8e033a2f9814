// A fold stays a fold only while it is straight.
import { isStraight } from "../geometry/path.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import type { Piece } from "../working.ts";

/** The piece as it is now; a Problem where a fold of its outline, straight before, has been bent. */
export const withStraightFolds = (now: Piece, before: Piece): Piece => {
  const bent = walked(now).find(({ edge }) => {
    if (edge.role !== "fold" || isStraight(edge.path, foldBow)) return false;
    const was = before.edges.get(edge.name);
    return was === undefined || was.role !== "fold" || isStraight(was.path, foldBow);
  });
  if (!bent) return now;
  throw new Problem("fold-bent", `This bends ${bent.edge.name}, and cloth folds along a straight line only.`, {
    hint: `Leave ${bent.edge.name} whole, or mark it as seam first.`,
  });
};

// Cloth folds along a straight line only; this much bow, in mm, still folds flat.
const foldBow = 0.5;
