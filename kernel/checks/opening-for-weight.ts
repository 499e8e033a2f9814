// A garment is flared no further than the weight of its cloth carries well.
import { defineCheck } from "../check.ts";
import { hemsOf, turningOf } from "../hem-turning.ts";
import { boundary, walked } from "../outline.ts";
import { timesInGarment } from "../record.ts";
import { plainNumber } from "../units.ts";
import { whereToMend } from "../where-to-mend.ts";
import type { Garment, Judgement, Piece, Run, Seam } from "../working.ts";

// Up to how many g/m2, and how many circles such cloth carries well. Common practice, no source; the classes of weight and
// the figures are those of the handbook of the trade, 7.1 and 7.4.
const carries: readonly { readonly upTo: number; readonly called: string; readonly circles: number }[] = [
  { upTo: 70, called: "sheer", circles: 2 },
  { upTo: 130, called: "light", circles: 1.5 },
  { upTo: 220, called: "medium", circles: 1 },
  { upTo: 330, called: "medium-heavy", circles: 0.5 },
  { upTo: Number.POSITIVE_INFINITY, called: "heavy", circles: 0.25 },
];

// Circles are rough figures: a hundredth more is not too much.
const tolerance = 0.01;

export const openingForWeight = defineCheck({
  name: "opening-for-weight",
  since: "0.2",
  title: "A garment opens out no further than the weight of its cloth carries well.",
  why: "Heavy cloth in wide flare drags at the seams it hangs from and sinks into a few thick folds instead of swinging.",
  passes: `chalkline 1
recipe "Skirt in coating, a quarter circle"
units cm

fabric shell "coating" width 150 cm weight 400 gsm

piece skirt {
  point middle-point = (0, 0)
  arc waist   = middle-point bearing 45 deg for 44 cm to middle-point bearing 90 deg for 44 cm around middle-point
  arc hem     = middle-point bearing 45 deg for 90 cm to middle-point bearing 90 deg for 90 cm around middle-point
  line side   = waist.start to hem.start
  line center = waist.end to hem.end
  outline waist, center, hem, side
  mark hem as hem
  mark center as fold
  allow waist, side by 1.5 cm
  allow hem by 1 cm
}

cut skirt 1 from shell
`,
  fails: `chalkline 1
recipe "Skirt in coating, half a circle"
units cm

fabric shell "coating" width 150 cm weight 400 gsm

piece skirt {
  point middle-point = (0, 0)
  arc waist   = middle-point bearing 45 deg for 22 cm to middle-point bearing 90 deg for 22 cm around middle-point
  arc hem     = middle-point bearing 45 deg for 68 cm to middle-point bearing 90 deg for 68 cm around middle-point
  line side   = waist.start to hem.start
  line center = waist.end to hem.end
  outline waist, center, hem, side
  mark hem as hem
  mark center as fold
  allow waist, side by 1.5 cm
  allow hem by 1 cm
}

cut skirt 2 from shell
seam skirt.side with skirt.side
`,

  *judge(garment) {
    const cut = [...garment.pieces.values()].filter(
      (piece) =>
        !piece.doubtful &&
        boundary(piece) !== undefined &&
        hemsOf(piece).length > 0 &&
        garment.cuts.some((each) => each.piece === piece.name),
    );
    for (const ring of ringsOf(cut, garment)) {
      const judgement = carried(ring, garment);
      if (judgement) yield judgement;
    }
  },
});

/** Pieces that are sewn together beside their hems, so that the hems run on round the body or the arm. */
type Ring = readonly Piece[];

const ringsOf = (pieces: readonly Piece[], garment: Garment): Ring[] =>
  pieces.reduce<Ring[]>((rings, piece) => {
    const joined = rings.filter((ring) => ring.some((other) => sewnBesideHems(piece, other, garment)));
    return [...rings.filter((ring) => !joined.includes(ring)), [...joined.flat(), piece]];
  }, []);

const sewnBesideHems = (one: Piece, other: Piece, { seams }: Garment): boolean =>
  seams.some(({ first, second }) => {
    const isOf = (runs: readonly Run[], piece: Piece): boolean =>
      runs.some((run) => run.piece === piece.name && isBesideHem(piece, run.edge));
    return (isOf(first, one) && isOf(second, other)) || (isOf(first, other) && isOf(second, one));
  });

const isBesideHem = (piece: Piece, edge: string): boolean => {
  const walk = walked(piece);
  const index = walk.findIndex((each) => each.edge.name === edge);
  if (index < 0 || walk[index]!.edge.role === "hem") return false;
  return [index + 1, index + walk.length - 1].some((at) => walk[at % walk.length]!.edge.role === "hem");
};

// Sleeves hang in pairs from a body that has a hem of its own; a skirt hangs from its band, or from nothing, as one.
const ringsAlike = (ring: Ring, garment: Garment): number => {
  const isOfRing = ({ piece }: Run): boolean => ring.some(({ name }) => name === piece);
  const hangsFromBody = garment.seams.some((seam) =>
    partnersOf(seam, isOfRing).some((run) => {
      const partner = garment.pieces.get(run.piece);
      return partner !== undefined && !isOfRing(run) && hemsOf(partner).length > 0;
    }),
  );
  return hangsFromBody ? Math.min(...ring.map(({ name }) => timesInGarment(name, garment))) : 1;
};

const partnersOf = ({ first, second }: Seam, isOfRing: (run: Run) => boolean): readonly Run[] => {
  if (first.every(isOfRing)) return second;
  return second.every(isOfRing) ? first : [];
};

const carried = (ring: Ring, garment: Garment): Judgement | undefined => {
  const turnings = ring.map((piece) => ({
    piece,
    turning:
      hemsOf(piece).reduce((sum, { path }) => sum + turningOf(piece, path), 0) * timesInGarment(piece.name, garment),
  }));
  const circles = turnings.reduce((sum, { turning }) => sum + turning, 0) / (2 * Math.PI * ringsAlike(ring, garment));
  const [fullest] = [...turnings].sort((a, b) => b.turning - a.turning);
  const { piece } = fullest!;
  const cut = garment.cuts.find((each) => each.piece === piece.name)!;
  const fabric = garment.fabrics.get(cut.fabric);
  if (fabric?.weight === undefined) return undefined;
  const { weight } = fabric;
  const kind = carries.find(({ upTo }) => weight <= upTo)!;
  const names = ring.map(({ name }) => name).join(", ");
  const about = {
    on: piece.name,
    found: Number(Math.max(0, circles).toFixed(3)),
    wanted: `at most ${kind.circles} circles`,
    where: whereToMend(piece, hemsOf(piece)[0]!.edge),
    message: `Together the hems of ${names} open out by ${inCircles(circles)}; ${fabric.name} is ${kind.called} cloth, ${plainNumber(weight, 0)} g/m2, and carries ${inCircles(kind.circles)} well.`,
  };
  if (circles <= kind.circles + tolerance) return { ...about, verdict: "pass" };
  return {
    ...about,
    verdict: "warning",
    hint: "Open it less far, or choose a lighter cloth.",
    related: [{ where: fabric.drawnBy, message: `${fabric.name} is described here.` }],
  };
};

const inCircles = (circles: number): string => `${plainNumber(Math.max(0, circles), 2)} of a circle`;
