// A hem that is smooth and square still has to hang level: it is held against the piece that it was made from.
import { defineCheck } from "../check.ts";
import { type Dip, dipOf } from "../cloth/hang/dip.ts";
import { hangOf } from "../cloth/hang/hanger.ts";
import { type HungHem, hungBefore, hungHem } from "../cloth/hang/hung-hem.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { corners } from "../geometry/path.ts";
import { toDegrees, toRadians } from "../geometry/trig.ts";
import { boundary, cornersOf, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Garment, Judgement, Piece } from "../working.ts";

// mm. A hem is levelled on the stand to about a centimeter, and what is less is lost in walking (common practice, no source).
const tolerance = 10;

// A hem that hangs further off than this, in mm, is meant to: a tail, a cascade.
const onPurpose = 80;

// Degrees: a hem with a kink in it, or with an end further off the square, is still to be trued, and other checks say so.
const kink = 1;
const slant = 3;

const skirt = (alteration: string): string => `chalkline 1
recipe "Usher's skirt, lengthened at the side"
units cm

piece block {
  point corner = (24 cm, 60 cm)
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to corner
  line hem    = (0, 60 cm) to corner
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
}

piece panel = block {
  ${alteration}
  true-seam hem
}
`;

export const hemDips = defineCheck({
  name: "hem-dips",
  since: "0.2",
  title: "An altered hem hangs as level as the one it was made from, within 1 cm.",
  why: "Square ends and a smooth line make a hem that can be sewn; one that hangs longer in one place than in another still dips there.",
  passes: skirt("extend-hem hem by 2.5 cm"),
  fails: skirt("move corner to corner down 2.5 cm"),

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      if (piece.doubtful || boundary(piece) === undefined || !piece.source) continue;
      const judgement = judged(piece, garment);
      if (judgement) yield judgement;
    }
  },
});

const judged = (piece: Piece, garment: Garment): Judgement | undefined => {
  const hems = walked(piece).filter(({ edge }) => edge.role === "hem");
  if (measuresAsBefore(piece) || hems.some(({ path }) => corners(path, toRadians(kink)).length > 0) || slants(piece))
    return undefined;
  const hang = hangOf(piece, garment);
  const now = hungHem(piece, hang);
  const before = now && hungBefore(now, hang);
  if (!now || !before) return undefined;
  const dip = dipOf(now, before);
  // One that is level now hangs well, however the older one did.
  const found = Math.min(dip.most, dipOf(now).most);
  if (found > onPurpose) return undefined;
  const { edge } = now.holding.hem;
  const inWords = lengthIn(dip.most, garment.units);
  const about = { on: `${piece.name}.${edge.name}`, found, wanted: tolerance, where: piece.drawnBy };
  if (found <= tolerance) {
    const message = `The ${edge.name} of ${piece.name} hangs as level as that of ${piece.from ?? "the piece it was made from"}, within ${lengthIn(tolerance, garment.units)}.`;
    return { ...about, verdict: "pass", message };
  }
  const end = endBeside(now, dip);
  return {
    ...about,
    verdict: "warning",
    message: `The ${edge.name} of ${piece.name} will dip: ${
      end ? `at the ${end}` : `${lengthIn(dip.lowest.at, garment.units)} from its start`
    } it hangs ${inWords} lower, for where it is, than at its shortest.`,
    hint: end
      ? `Raise it there by ${inWords}: \`move\` the corner up, and \`true-seam ${edge.name}\`.`
      : `Raise it there by ${inWords}: draw it anew that much higher with \`curve\`, and \`replace\` it.`,
  };
};

/** A piece that was only turned over or laid elsewhere hangs as it did; how is asked of others. */
const measuresAsBefore = ({ source, edges, outline }: Piece): boolean =>
  outline.every(({ edge }) => {
    const [now, was] = [edges.get(edge)!, source?.edges.get(edge)];
    return was && (now.path === was.path || Math.abs(pathLength(now.path) - pathLength(was.path)) < unchanged);
  });

// A length that changed by less, in mm, did not change.
const unchanged = 0.1;

/** Whether an end of a hem is neither square nor runs on into its neighbour. */
const slants = (piece: Piece): boolean =>
  cornersOf(piece).some(({ before, after, interior }) => {
    const isAtHem = (before.edge.role === "hem") !== (after.edge.role === "hem");
    return isAtHem && Math.abs(toDegrees(interior) - 90) > slant;
  });

/** The edge beside the end of the hem that dips; undefined where it dips further inside. */
const endBeside = ({ piece, holding: { hem } }: HungHem, { raises, lowest }: Dip): string | undefined => {
  const index = raises.indexOf(lowest);
  const [isAtStart, isAtEnd] = [index < raises.length * endPart, index >= raises.length * (1 - endPart)];
  if (!isAtStart && !isAtEnd) return undefined;
  const walk = walked(piece);
  const at = walk.findIndex(({ edge }) => edge.name === hem.edge.name);
  return walk[(at + (isAtStart ? walk.length - 1 : 1)) % walk.length]!.edge.name;
};

// So much of a hem is told by the edge beside it.
const endPart = 0.15;
