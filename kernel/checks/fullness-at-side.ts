// Fullness that was added to a piece does not all hang at its side seams.
import { defineCheck } from "../check.ts";
import { hangOf } from "../cloth/hang/hanger.ts";
import { hungBefore, hungHem } from "../cloth/hang/hung-hem.ts";
import { slackAtSeams } from "../cloth/hang/slack-between.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { hemsOf } from "../hem-turning.ts";
import { boundary } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Garment, Judgement, Piece } from "../working.ts";

// Common practice, no source: more than 40 to 60 mm at one seam looks winged; the upper end is where a warning is sure.
const mostAtSeam = 60;

// Up to half of the fullness at the seams hangs well enough with the other half inside.
const mostShare = 0.5;

// A hem that grew by less, or gained less slack, in mm, was not made fuller.
const fuller = 20;

export const fullnessAtSide = defineCheck({
  name: "fullness-at-side",
  since: "0.2",
  title: "Fullness added to a piece hangs all over it, and not only at the seams beside its hem.",
  why: "Cloth added at a side seam hangs at the side: front and back stay flat, and the garment wings out.",
  passes: `chalkline 1
recipe "Usher's skirt, flared inside"
units cm

piece block {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
}

piece panel = block {
  spread-from waist at 50% to hem by 6 cm
  flare-side side to hem by 4 cm
  true-seam hem, waist
}
`,
  fails: `chalkline 1
recipe "Usher's skirt, flared at the side alone"
units cm

piece block {
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to (24 cm, 60 cm)
  line hem    = (0, 60 cm) to (24 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
}

piece panel = block {
  flare-side side to hem by 10 cm
  true-seam hem
}
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined || !hasGrown(piece)) continue;
      const judgement = hangs(piece, garment);
      if (judgement) yield judgement;
    }
  },
});

/** Whether a hem is longer than it was; how a piece hangs is asked only then. */
const hasGrown = (piece: Piece): boolean =>
  hemsOf(piece).some(({ edge }) => {
    const was = piece.source?.edges.get(edge.name);
    return was !== undefined && pathLength(edge.path) - pathLength(was.path) >= fuller;
  });

const hangs = (piece: Piece, garment: Garment): Judgement | undefined => {
  const hang = hangOf(piece, garment);
  const now = hungHem(piece, hang);
  const before = now && hungBefore(now, hang);
  const added = now ? now.hem.slack - (before?.hem.slack ?? 0) : 0;
  if (!now || added < fuller) return undefined;
  const stood = new Map(before && slackAtSeams(before).map(({ edge, slack }) => [edge, slack]));
  const seams = slackAtSeams(now)
    .map(({ edge, slack }) => ({ edge, amount: slack - (stood.get(edge) ?? 0) }))
    .filter(({ amount }) => amount > 0)
    .sort((a, b) => b.amount - a.amount);
  const [widest] = seams;
  const share = Math.min(1, seams.reduce((sum, { amount }) => sum + amount, 0) / added);
  const percent = `${Math.round(share * 100)} %`;
  const { name } = now.holding.hem.edge;
  const about = {
    on: `${piece.name}.${name}`,
    found: Math.round(share * 100),
    wanted: `at most ${mostShare * 100} % at the seams, or ${lengthIn(mostAtSeam, "mm")} at each`,
    where: piece.drawnBy,
  };
  const told = `Of the ${lengthIn(added, garment.units)} of fullness that the ${name} of ${piece.name} has gained ${percent} hang at its seams`;
  if (!widest || share <= mostShare || widest.amount <= mostAtSeam) {
    return { ...about, verdict: "pass", message: `${told}.` };
  }
  return {
    ...about,
    verdict: "warning",
    message: `${told}: ${lengthIn(widest.amount, garment.units)} at the ${widest.edge}.`,
    hint: "Move half of it or more inside the piece, with slashes that run down from the edge above: `spread-evenly`, `spread-several`.",
  };
};
