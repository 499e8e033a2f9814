// Every piece has a boundary, and it closes.
import { defineCheck } from "../check.ts";
import { distance } from "../geometry/point.ts";
import { gaps } from "../outline.ts";
import { lengthIn } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Judgement, Piece, Units } from "../working.ts";

export const outlineClosed = defineCheck({
  name: "outline-closed",
  since: "0.1",
  title: "Every piece has an outline, and its edges meet all the way round.",
  why: "A piece that stands open cannot be cut out, and neither its area nor its cutting line can be told.",
  passes: `chalkline 1
recipe "Pocket flap"
units cm

piece flap {
  point fold-back = (0, 0)
  point fold-front = fold-back right 16 cm
  point low-front = fold-front down 6 cm
  point low-back = fold-back down 6 cm
  line mouth = fold-back to fold-front
  line front-end = fold-front to low-front
  line lower = low-front to low-back
  line back-end = low-back to fold-back
  outline mouth, front-end, lower, back-end
}
`,
  fails: `chalkline 1
recipe "Pocket flap, not yet outlined"
units cm

piece flap {
  point fold-back = (0, 0)
  point fold-front = fold-back right 16 cm
  point low-front = fold-front down 6 cm
  point low-back = fold-back down 6 cm
  line mouth = fold-back to fold-front
  line front-end = fold-front to low-front
  line lower = low-front to low-back
  line back-end = low-back to fold-back
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (!piece.doubtful) yield* closedOrNot(piece, garment.units);
    }
  },
});

function* closedOrNot(piece: Piece, units: Units): Iterable<Judgement> {
  const about = { on: piece.name, wanted: "closed", where: piece.drawnBy };
  if (piece.outline.length === 0) {
    yield {
      ...about,
      verdict: "error",
      found: "not drawn",
      message: `${piece.name} has no outline.`,
      hint: "Add an `outline` line to the piece that names its edges in order, all the way round.",
    };
    return;
  }
  const open = gaps(piece);
  if (open.length === 0) {
    yield { ...about, verdict: "pass", found: "closed", message: `The outline of ${piece.name} is closed.` };
  }
  for (const { before, after, from, to } of open) {
    yield {
      on: `${piece.name}.${before.edge.name} at ${piece.name}.${after.edge.name}`,
      verdict: "error",
      found: distance(from, to),
      wanted: 0,
      where: whereToMend(piece, after.edge),
      message: `The outline of ${piece.name} stands open by ${lengthIn(distance(from, to), units)} between ${before.edge.name} and ${after.edge.name}.`,
      hint: "Draw the two edges to the same place, or put another edge in with `replace`.",
      related: [{ where: whereToMend(piece, before.edge), message: `${before.edge.name} is drawn here.` }],
    };
  }
}
