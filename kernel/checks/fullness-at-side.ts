// Fullness that was added to a piece does not all sit at its side seams.
import { turnAlong, turnsOf } from "../alter/turned.ts";
import { defineCheck } from "../check.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { endOf, type Path, reversed, startOf } from "../geometry/path.ts";
import { distance, dot, minus, type Point, unit } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { hemsOf } from "../hem-turning.ts";
import { boundary, outward, type Walked, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Edge, Garment, Judgement, Piece } from "../working.ts";

// Common practice, no source: more than 40 to 60 mm at one seam looks winged; the upper end is where a warning is sure.
const mostAtSeam = 60;

// Up to half of the fullness at the seams hangs well enough with the other half inside.
const mostShare = 0.5;

// A hem that grew by less, in mm, was not made fuller.
const fuller = 20;

export const fullnessAtSide = defineCheck({
  name: "fullness-at-side",
  since: "0.2",
  title: "Fullness added to a piece is spread over it, and not all at the seams beside its hem.",
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
      if (piece.doubtful || boundary(piece) === undefined || !piece.source || !boundary(piece.source)) continue;
      for (const hem of hemsOf(piece)) {
        const judgement = hangs(piece, piece.source, hem, garment);
        if (judgement) yield judgement;
      }
    }
  },
});

const hangs = (piece: Piece, source: Piece, hem: Walked, { units }: Garment): Judgement | undefined => {
  const before = walked(source).find(({ edge }) => edge.name === hem.edge.name);
  const added = before ? pathLength(hem.path) - pathLength(before.path) : 0;
  if (added < fuller) return undefined;
  const seams = besideHem(piece, source, hem).filter(({ amount }) => amount > 0);
  const atSeams = seams.reduce((sum, { amount }) => sum + amount, 0);
  const share = Math.min(1, atSeams / added);
  const [widest] = [...seams].sort((a, b) => b.amount - a.amount);
  const about = {
    on: `${piece.name}.${hem.edge.name}`,
    found: Math.round(share * 100),
    wanted: `at most ${mostShare * 100} % at the seams, or ${lengthIn(mostAtSeam, "mm")} at each`,
    where: piece.drawnBy,
  };
  const told = `${Math.round(share * 100)} % of the ${lengthIn(added, units)} that the ${hem.edge.name} of ${piece.name} has grown by`;
  if (!widest || share <= mostShare || widest.amount <= mostAtSeam) {
    return { ...about, verdict: "pass", message: `${told} sit at its seams.` };
  }
  return {
    ...about,
    verdict: "warning",
    message: `${told} sit at its seams: ${lengthIn(widest.amount, units)} at the ${widest.edge.name}.`,
    hint: "Move half of it or more inside the piece, with slashes that run down from the edge above: `spread-evenly`, `spread-several`.",
  };
};

/** How much, mm, the hem gained by each seam at its ends swinging out from the cloth beside it. */
const besideHem = (piece: Piece, source: Piece, hem: Walked): { edge: Edge; amount: number }[] => {
  const walk = walked(piece);
  const index = walk.indexOf(hem);
  const neighbours = [
    { next: walk[(index + walk.length - 1) % walk.length]!, atStart: true },
    { next: walk[(index + 1) % walk.length]!, atStart: false },
  ];
  return neighbours.flatMap(({ next, atStart }) => {
    const was = walked(source).find(({ edge }) => edge.name === next.edge.name);
    if (next.edge.role !== "seam" || !was) return [];
    const toHem = (path: Path): Path => (atStart ? path : reversed(path));
    const way = (path: Path): Point => unit(minus(endOf(toHem(path)), startOf(toHem(path))));
    const cloth = turnAtEnd(piece, hem, atStart) - turnAtEnd(source, hem, atStart);
    const stiff = rotated(way(was.path), origin, cloth);
    const out = outward(piece, unit(minus(endOf(next.path), startOf(next.path))));
    const length = distance(startOf(next.path), endOf(next.path));
    return [{ edge: next.edge, amount: dot(minus(way(next.path), stiff), out) * length }];
  });
};

const origin: Point = { x: 0, y: 0 };

/** How far the cloth at an end of a hem has turned since it was drafted, radians. */
const turnAtEnd = (piece: Piece, { edge: { name } }: Walked, atStart: boolean): number => {
  const part = walked(piece).find(({ edge }) => edge.name === name);
  if (!part) return 0;
  const isAtDraftedStart = atStart !== part.turned;
  const length = pathLength(part.path);
  return turnAlong(turnsOf(piece, name), isAtDraftedStart ? inside : length - inside);
};

// So far from its end, mm, the cloth is the hem's own.
const inside = 0.02;
