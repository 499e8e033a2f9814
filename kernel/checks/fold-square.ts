// Whatever meets a fold meets it squarely.
import { defineCheck } from "../check.ts";
import { toDegrees } from "../geometry/trig.ts";
import { boundary, type Corner, cornersOf } from "../outline.ts";
import { angleInWords } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Judgement, Piece } from "../working.ts";

// Degrees; opened out, the line bends by twice as much (handbook of the trade 5.2, common practice).
const tolerance = 1;

// An angle just at the tolerance is within it, whatever its last digits.
const rounding = 1e-6;

export const foldSquare = defineCheck({
  name: "fold-square",
  since: "0.1",
  title: "An edge that meets a fold is square to it, within 1 degree.",
  why: "Opened out, a neckline or hem that leaves the fold at a slant has a point or a dip in the middle.",
  passes: `chalkline 1
recipe "Yoke on the fold"
units cm

piece yoke {
  point nape = (0, 0)
  point neck-point = (8 cm, -3 cm)
  point low-side = (20 cm, 10 cm)
  point low-center = nape down 10 cm
  curve neck = nape to neck-point handles nape right 5 cm, neck-point down 2 cm
  line shoulder = neck-point to low-side
  line lower = low-center to low-side
  line center = nape to low-center
  outline center, neck, shoulder, lower
  mark center as fold
}
`,
  fails: `chalkline 1
recipe "Yoke whose neck slants up from the fold"
units cm

piece yoke {
  point nape = (0, 0)
  point neck-point = (8 cm, -3 cm)
  point low-side = (20 cm, 10 cm)
  point low-center = nape down 10 cm
  line neck = nape to neck-point
  line shoulder = neck-point to low-side
  line lower = low-center to low-side
  line center = nape to low-center
  outline center, neck, shoulder, lower
  mark center as fold
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined) continue;
      for (const corner of cornersOf(piece)) {
        if (meetsAFold(corner)) yield square(piece, corner);
      }
    }
  },
});

// Where cloth is folded twice the two folds meet as the maker laid them.
const meetsAFold = ({ before, after }: Corner): boolean =>
  (before.edge.role === "fold") !== (after.edge.role === "fold");

const square = (piece: Piece, { before, after, interior }: Corner): Judgement => {
  const [fold, edge] = before.edge.role === "fold" ? [before.edge, after.edge] : [after.edge, before.edge];
  const found = toDegrees(interior);
  const about = {
    on: `${piece.name}.${edge.name} at ${piece.name}.${fold.name}`,
    found,
    wanted: 90,
    where: whereToMend(piece, edge),
    message: `The ${edge.name} of ${piece.name} meets the fold ${fold.name} at ${angleInWords(interior)}.`,
  };
  if (Math.abs(found - 90) <= tolerance + rounding) return { ...about, verdict: "pass" };
  return {
    ...about,
    verdict: "warning",
    hint: `Square it with \`true-seam ${edge.name}\`.`,
    related: [{ where: whereToMend(piece, fold), message: `${fold.name} is drawn here.` }],
  };
};
