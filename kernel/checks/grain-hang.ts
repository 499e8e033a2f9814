// The grain runs the way the piece hangs, or stands off it as far as bias and crosswise cloth do.
import { defineCheck } from "../check.ts";
import { endOf, isStraight, type Path, reversed, startOf } from "../geometry/path.ts";
import { dot, minus, type Point, plus, size, unit } from "../geometry/point.ts";
import { acos, toDegrees } from "../geometry/trig.ts";
import { grainDirection } from "../grain-direction.ts";
import { type Walked, walked } from "../outline.ts";
import { plainNumber } from "../units.ts";
import type { Garment, Judgement, Piece, Run } from "../working.ts";

// More than this many degrees off the line that hangs is no slip of the pencil, and shows in the folds (common practice, no
// source); half as near to the bias (45) or to the cross (90) it is meant.
const tolerance = 10;
const meant = 5;

// A front edge or a fold this straight, in mm, is a line that the eye follows down the garment.
const straightEnough = 5;

export const grainHang = defineCheck({
  name: "grain-hang",
  since: "0.2",
  title: "The grain of a piece with a hem runs the way the piece hangs, or on the bias, or across it.",
  why: "Cloth falls along its threads: a panel whose grain leans a little swings to one side, and its seams twist.",
  passes: `chalkline 1
recipe "Gore with its grain down the middle"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece gore {
  line waist = (-8 cm, 0) to (8 cm, 0)
  line right-seam = (8 cm, 0) to (20 cm, 60 cm)
  line left-seam = (-8 cm, 0) to (-20 cm, 60 cm)
  curve hem = (-20 cm, 60 cm) to (20 cm, 60 cm) leaving square-to left-seam arriving square-to right-seam
  outline waist, right-seam, hem, left-seam
  mark hem as hem
  grain (0, 10 cm) to (0, 50 cm)
  allow waist, right-seam, left-seam by 1.5 cm
  allow hem by 1 cm
}

cut gore 6 from shell
`,
  fails: `chalkline 1
recipe "Gore with its grain leaning"
units cm

fabric shell "gabardine" width 150 cm weight 260 gsm

piece gore {
  line waist = (-8 cm, 0) to (8 cm, 0)
  line right-seam = (8 cm, 0) to (20 cm, 60 cm)
  line left-seam = (-8 cm, 0) to (-20 cm, 60 cm)
  curve hem = (-20 cm, 60 cm) to (20 cm, 60 cm) leaving square-to left-seam arriving square-to right-seam
  outline waist, right-seam, hem, left-seam
  mark hem as hem
  grain (-6 cm, 10 cm) to (6 cm, 50 cm)
  allow waist, right-seam, left-seam by 1.5 cm
  allow hem by 1 cm
}

cut gore 6 from shell
`,

  *judge(garment) {
    for (const piece of garment.pieces.values()) {
      const judgement = piece.doubtful ? undefined : hangs(piece, garment);
      if (judgement) yield judgement;
    }
  },
});

const hangs = (piece: Piece, garment: Garment): Judgement | undefined => {
  const grain = grainDirection(piece);
  const offs = grain
    ? linesThatHang(piece, garment).map(({ direction, inWords }) => ({ off: angleBetween(grain, direction), inWords }))
    : [];
  const [nearest] = offs.sort((a, b) => a.off - b.off);
  if (!nearest) return undefined;
  const { off: found, inWords } = nearest;
  const about = {
    on: piece.name,
    found,
    wanted: 0,
    where: piece.grain?.drawnBy ?? piece.drawnBy,
    message: `The grain of ${piece.name} lies ${plainNumber(found, 1)} deg off ${inWords}, the line it hangs by.`,
  };
  const isMeant = [45, 90].some((angle) => Math.abs(found - angle) <= meant);
  if (found <= tolerance || isMeant) return { ...about, verdict: "pass" };
  return {
    ...about,
    verdict: "warning",
    hint: `Turn the grain line by ${plainNumber(found, 1)} deg onto it, or by ${plainNumber(Math.abs(found - 45), 1)} deg onto the bias.`,
  };
};

/** Degrees between two lines, whichever way they point: 0 to 90. */
const angleBetween = (a: Point, b: Point): number => toDegrees(acos(Math.min(1, Math.abs(dot(a, b)))));

interface Hanging {
  /** Down the piece, length 1. */
  readonly direction: Point;
  readonly inWords: string;
}

/** The fold that comes down to the hem; else a straight front edge or center seam that does, and the middle between both sides. */
const linesThatHang = (piece: Piece, garment: Garment): Hanging[] => {
  const sides = besideHem(piece);
  if (!sides) return [];
  const along = ({ edge, path }: Walked): Hanging => ({ direction: down(path), inWords: `its ${edge.name}` });
  const straight = sides.filter(({ path }) => isStraight(path, straightEnough));
  const fold = straight.find(({ edge }) => edge.role === "fold");
  if (fold) return [along(fold)];
  const centers = straight.filter(({ edge }) => edge.role === "opening" || isCenterSeam(piece, edge.name, garment));
  const between = plus(down(sides[0].path), down(sides[1].path));
  const middle: Hanging = {
    direction: unit(between),
    inWords: `the middle between its ${sides[0].edge.name} and its ${sides[1].edge.name}`,
  };
  return [...centers.map(along), ...(size(between) < least ? [] : [middle])];
};

// Left and right are sewn together there: to the piece itself, or to one that is drawn with the same edges.
const isCenterSeam = (piece: Piece, edge: string, { seams, pieces }: Garment): boolean =>
  seams.some(({ first, second }) => {
    const own = (run: Run): boolean => run.piece === piece.name && run.edge === edge;
    const others = first.some(own) ? second : second.some(own) ? first : [];
    return others.some((run) => run.edge === edge && isDrawnLike(pieces.get(run.piece), piece));
  });

const isDrawnLike = (other: Piece | undefined, piece: Piece): boolean =>
  other !== undefined &&
  other.outline.length === piece.outline.length &&
  other.outline.every(({ edge }, index) => edge === piece.outline[index]!.edge);

// Sides that point against each other have no middle.
const least = 0.1;

const down = (path: Path): Point => unit(minus(endOf(path), startOf(path)));

/** The two edges beside the hem, each walked down to it; undefined where there is not one hem, or nothing beside it. */
const besideHem = (piece: Piece): readonly [Walked, Walked] | undefined => {
  const walk = walked(piece);
  const isHem = (index: number): boolean => walk[(index + walk.length) % walk.length]!.edge.role === "hem";
  const starts = [...walk.keys()].filter((index) => isHem(index) && !isHem(index - 1));
  const [start] = starts;
  if (start === undefined || starts.length > 1) return undefined;
  let end = start;
  while (isHem(end)) end += 1;
  const before = walk[(start + walk.length - 1) % walk.length]!;
  const after = walk[end % walk.length]!;
  return before === after ? undefined : [before, { ...after, path: reversed(after.path) }];
};
