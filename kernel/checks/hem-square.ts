// A hem leaves its neighbours squarely.
import { defineCheck } from "../check.ts";
import { toDegrees } from "../geometry/trig.ts";
import { boundary, type Corner, cornersOf } from "../outline.ts";
import { angleInWords } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Judgement, Piece } from "../working.ts";

// Degrees. The handbook of the trade (5.2) has a corner in the joined hem seen from 3 degrees on.
const tolerance = 3;

// An angle just at the tolerance is within it, whatever its last digits.
const rounding = 1e-6;

export const hemSquare = defineCheck({
  name: "hem-square",
  since: "0.1",
  title: "A hem is square to the edges it meets, within 3 degrees.",
  why: "A slanting end gives the finished hem a point or a dip, and turned up it is wider or narrower than the cloth above it.",
  passes: `chalkline 1
recipe "Skirt panel"
units cm

piece panel {
  point A = (0, 0)
  point B = A right 30 cm
  point C = B down 50 cm
  point D = A down 50 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
  mark hem as hem
}
`,
  fails: `chalkline 1
recipe "Skirt panel, flared at the side, its hem not squared"
units cm

piece panel {
  point A = (0, 0)
  point B = A right 30 cm
  point C = (35 cm, 50 cm)
  point D = A down 50 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
  mark hem as hem
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined) continue;
      for (const corner of cornersOf(piece)) {
        if (endsAHem(corner)) yield square(piece, corner);
      }
    }
  },
});

// At a fold fold-square is stricter. A hem that runs on into its neighbour without a corner is rounded on purpose.
const endsAHem = ({ before, after, interior }: Corner): boolean => {
  const roles = [before.edge.role, after.edge.role];
  const oneHem = roles.filter((role) => role === "hem").length === 1;
  return oneHem && !roles.includes("fold") && Math.abs(toDegrees(interior) - 180) > tolerance;
};

const square = (piece: Piece, { before, after, interior }: Corner): Judgement => {
  const [hem, neighbour] = before.edge.role === "hem" ? [before.edge, after.edge] : [after.edge, before.edge];
  const found = toDegrees(interior);
  const about = {
    on: `${piece.name}.${hem.name} at ${piece.name}.${neighbour.name}`,
    found,
    wanted: 90,
    where: whereToMend(piece, hem),
    message: `The ${hem.name} of ${piece.name} meets its ${neighbour.name} at ${angleInWords(interior)}.`,
  };
  if (Math.abs(found - 90) <= tolerance + rounding) return { ...about, verdict: "pass" };
  return {
    ...about,
    verdict: "warning",
    hint: `Square it with \`true-seam ${hem.name}\`.`,
    related: [{ where: whereToMend(piece, neighbour), message: `${neighbour.name} is drawn here.` }],
  };
};
