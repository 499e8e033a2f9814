// What is laid on a cloth: its pieces with their allowances, turned so that the grain runs along it, opened on their folds or
// with the fold against the folded cloth, and how many of each, with their mirror images.
import { mirroredIn } from "../../geometry/mirror.ts";
import { endOf, mapped, type Path, reversed, startOf } from "../../geometry/path.ts";
import { cross, dot, type Point, times } from "../../geometry/point.ts";
import { alongEdge, foldOf, grainDirection } from "../../grain-direction.ts";
import type { Edge, Garment, Piece } from "../../working.ts";
import { cuttingLine } from "../allowances/cutting-line.ts";
import { rimOf } from "./outer-polygon.ts";

/** How the cloth lies on the table: one layer, folded along the grain, or knitted as a tube. */
export type Spread = "flat" | "folded" | "tubular";

/** A piece as it is laid, x along the grain and y across it, mm. */
export interface ClothPiece {
  readonly piece: string;
  /** How often it is laid, and whether as its mirror image. */
  readonly count: number;
  readonly mirrored: boolean;
  /** Whether its fold lies on that of the cloth, at y = 0. */
  readonly onFold: boolean;
  /** Its outer rim, clockwise on the page; never smaller than the piece. */
  readonly rim: readonly Point[];
}

/** What cannot be laid, and why, in a sentence. */
export interface NotLaid {
  readonly piece: string;
  readonly because: string;
}

/** The pieces that the recipe cuts from a cloth, and those that it says too little of. */
export const clothPieces = (
  garment: Garment,
  fabric: string,
  spread: Spread,
): { readonly pieces: readonly ClothPiece[]; readonly notLaid: readonly NotLaid[] } => {
  const cuts = garment.cuts.filter((cut) => cut.fabric === fabric);
  const laid = cuts.map(({ piece: name, count }) => {
    const piece = garment.pieces.get(name);
    return piece ? asLaid(piece, count, spread) : { piece: name, because: `${name} is not drawn.` };
  });
  return {
    pieces: laid.flatMap((each) => ("because" in each ? [] : each)),
    notLaid: laid.flatMap((each) => ("because" in each ? [each] : [])),
  };
};

const asLaid = (piece: Piece, count: number, spread: Spread): ClothPiece[] | NotLaid => {
  const { name } = piece;
  if (piece.doubtful)
    return { piece: name, because: `A line of ${name} does not work, so that it is not known how large it is.` };
  const cutting = cuttingLine(piece);
  if (!cutting) return { piece: name, because: `The outline of ${name} is not drawn or stands open.` };
  const fold = foldOf(piece);
  if (fold)
    return [spread === "flat" ? opened(piece, cutting.path, fold, count) : folded(piece, cutting.path, fold, count)];
  const rim = rimOf([mapped(cutting.path, alongCloth(grainOf(piece)))]);
  const plain = { piece: name, onFold: false, rim, mirrored: false };
  // Two layers give a pair at one cut.
  if (spread !== "flat") return [{ ...plain, count: Math.ceil(count / 2) }];
  const pairs = Math.floor(count / 2);
  const image = { ...plain, rim: mirrorImage(rim), mirrored: true, count: pairs };
  return [{ ...plain, count: count - pairs }, ...(pairs > 0 ? [image] : [])];
};

const opened = (piece: Piece, cutting: Path, fold: Edge, count: number): ClothPiece => {
  const half = mapped(cutting, alongCloth(grainOf(piece)));
  const [start, end] = [startOf(fold.path), endOf(fold.path)].map(alongCloth(grainOf(piece)));
  const other = mapped(half, (p) => mirroredIn(p, start!, end!));
  // Run the other way round, or the one would take away what the other adds.
  const rim = rimOf([half, reversed(other)]);
  return { piece: piece.name, onFold: false, rim, mirrored: false, count };
};

/** The half of a piece with its fold on y = 0 and all else on the side of the cloth. */
const folded = (piece: Piece, cutting: Path, fold: Edge, count: number): ClothPiece => {
  const toCloth = alongCloth(downward(alongEdge(fold) ?? grainOf(piece)));
  const level = toCloth(startOf(fold.path)).y;
  const rim = rimOf([mapped(cutting, toCloth)]).map(({ x, y }) => ({ x, y: y - level }));
  const isAbove = rim.reduce((sum, { y }) => sum + y, 0) < 0;
  const below = isAbove ? mirrorImage(rim) : rim;
  // The fine line stands out a hair over the fold, where there is no cloth.
  return {
    piece: piece.name,
    onFold: true,
    rim: below.map(({ x, y }) => ({ x, y: Math.max(0, y) })),
    mirrored: false,
    count,
  };
};

const mirrorImage = (rim: readonly Point[]): Point[] => rim.map(({ x, y }) => ({ x, y: -y })).reverse();

/** Which way the grain of a piece runs, from its top as drawn downward; a piece that says none lies as it is drawn. */
const grainOf = (piece: Piece): Point => downward(grainDirection(piece) ?? { x: 0, y: 1 });

// A grain line has two ends and may be drawn from either. Pieces are drawn with their hems down, and on cloth with a nap all
// have to lie the same way up (common practice, no source).
const downward = (grain: Point): Point => (grain.y < 0 || (grain.y === 0 && grain.x < 0) ? times(grain, -1) : grain);

/** Turned so that the grain runs along the cloth, to the right. */
const alongCloth =
  (grain: Point) =>
  (p: Point): Point => ({ x: dot(p, grain), y: cross(grain, p) });
