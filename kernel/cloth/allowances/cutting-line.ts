// The line a piece is cut along: every edge of the outline moved out by its allowance, and the corners between. Across the
// mouth of a dart the edge is its cap, and so the line is what the folded dart is cut to. Where an inner curve is tighter
// than its allowance, or two allowances lie on one another, the line follows the outer rim of both.
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { selfCrossingsOfLoop } from "../../geometry/intersect.ts";
import { carriedOn, offsetUntrimmed } from "../../geometry/offset.ts";
import {
  corners as cornersIn,
  endDirection,
  endOf,
  joined,
  line,
  type Path,
  reversed,
  startDirection,
  startOf,
} from "../../geometry/path.ts";
import { dot, minus, type Point, plus, sameSpot, times } from "../../geometry/point.ts";
import { part } from "../../geometry/split.ts";
import { asin, turnBetween } from "../../geometry/trig.ts";
import { boundary, sense, type Walked, walked } from "../../outline.ts";
import type { Corners, Piece } from "../../working.ts";
import { cutCorner } from "./cut-corner.ts";
import type { Flank, Meeting } from "./flank.ts";
import { longestReach } from "./flank.ts";
import { closedLoop, outerStretches } from "./outer-stretches.ts";
import { pointCorner } from "./point-corner.ts";
import { squareCorner } from "./square-corner.ts";
import { turnedCorner } from "./turned-corner.ts";

/** The part of the cutting line that belongs to one edge. */
export interface CuttingStretch {
  readonly edge: string;
  /** Width of the allowance, mm; 0 where there is none and along a fold. */
  readonly width: number;
  readonly fold: boolean;
  /** In outline order; a corner that this edge decided is its own. */
  readonly path: Path;
}

export interface CuttingLine {
  /** The closed line in outline order. */
  readonly path: Path;
  /** One stretch for each edge of the outline, in its order; each begins where the one before ends. */
  readonly stretches: readonly CuttingStretch[];
}

/** The cutting line of a piece; undefined while its outline is not drawn or stands open. */
export const cuttingLine = (piece: Piece): CuttingLine | undefined => {
  if (!made.has(piece)) made.set(piece, cuttingLineOf(piece));
  return made.get(piece);
};

/** The allowance of an edge as it is cut, mm: none along a fold, none where none was said. */
export const allowanceWidth = (piece: Piece, { edge }: Walked): number =>
  edge.role === "fold" ? 0 : (piece.allowances.get(edge.name)?.width ?? 0);

// A piece never changes, so its cutting line is worked out once.
const made = new WeakMap<Piece, CuttingLine | undefined>();

const cuttingLineOf = (piece: Piece): CuttingLine | undefined => {
  const outline = boundary(piece);
  if (!outline) return undefined;
  const untrimmed = untrimmedStretches(piece);
  const outer = outerStretches(untrimmed, sense(piece));
  // An outline that crosses itself has no outer side to trim to: its line is shown with all its crossings.
  const isKnotted = outer !== untrimmed && selfCrossingsOfLoop(outline).length > 0;
  const stretches = isKnotted ? untrimmed : outer;
  return { path: closedLoop(stretches.map(({ path }) => path)), stretches };
};

/** The stretches as their allowances and corners make them, one for each edge; they may run over one another. */
const untrimmedStretches = (piece: Piece): CuttingStretch[] => {
  const bands = bandsOf(piece);
  const turns = bands.map((band, index) => turnAt(piece, band, bands[(index + 1) % bands.length]!));
  const paths = bands.map((band, index) => {
    const start = turns[(index + turns.length - 1) % turns.length]!;
    const end = turns[index]!;
    const own = part(band.cutting, band.carried + start.afterAt, band.carried + band.length - end.beforeAt);
    return joined([start.owner === "after" ? start.across : [], own, end.owner === "before" ? end.across : []]);
  });
  return walked(piece).map((whole, at) => ({
    edge: whole.edge.name,
    width: allowanceWidth(piece, whole),
    fold: whole.edge.role === "fold",
    path: joined(paths.filter((_, index) => bands[index]!.at === at)),
  }));
};

/** An edge, or a part of it up to a sharp point that it makes, with the band of cloth beyond it. */
interface Band {
  /** Which edge of the outline it belongs to, by its place in the outline. */
  readonly at: number;
  readonly walked: Walked;
  readonly width: number;
  readonly corners: Corners;
  /** The cutting line in outline order, carried on straight at both ends by `carried` mm. */
  readonly cutting: Path;
  readonly carried: number;
  /** Length of the cutting line between what was carried on, mm. */
  readonly length: number;
  /** Whether the cutting line runs back on itself somewhere. */
  readonly folds: boolean;
}

// A neighbour meets a fold at down to 5.7 degrees within ten times its width; all other corners need far less.
const carriedWidths = 4 * longestReach;

const bandsOf = (piece: Piece): Band[] => {
  const walk = walked(piece);
  const carried = carriedWidths * Math.max(...walk.map((part) => allowanceWidth(piece, part)));
  return walk.flatMap((whole, at) => {
    const width = allowanceWidth(piece, whole);
    const corners = piece.allowances.get(whole.edge.name)?.corners ?? "point";
    const runs = width === 0 ? [whole.path] : withoutSharpPoints(whole.path, sense(piece));
    return runs.map((path): Band => {
      const { path: own, folds } = offsetUntrimmed(path, width * sense(piece));
      const cutting = carried === 0 ? own : carriedOnBothWays(own, path, carried);
      return { at, walked: { ...whole, path }, width, corners, cutting, carried, length: pathLength(own), folds };
    });
  });
};

// An outer corner that turns further than this, in radians, would reach beyond the limit of a plain point.
const sharpTurn = Math.PI - 2 * asin(1 / longestReach);

/** A path parted where it makes an outer corner so sharp that its point has to be cut off. */
const withoutSharpPoints = (path: Path, clockwise: 1 | -1): Path[] => {
  const sharp = cornersIn(path, sharpTurn).filter(({ turn }) => turn * clockwise > 0);
  const cuts = [0, ...sharp.map(({ index }) => index), path.length];
  return cuts.slice(1).map((to, i) => path.slice(cuts[i]!, to));
};

/** The cutting line carried on straight as its edge would be, also where it runs against its edge at an end. */
const carriedOnBothWays = (own: Path, edge: Path, by: number): Path => {
  const [start, end] = [startOf(own), endOf(own)];
  const [leaving, arriving] = [startDirection(edge), endDirection(edge)];
  const ahead =
    dot(endDirection(own), arriving) > 0
      ? carriedOn(own, "end", by)
      : [...own, line(end, plus(end, times(arriving, by)))];
  return dot(startDirection(own), leaving) > 0
    ? carriedOn(ahead, "start", by)
    : [line(minus(start, times(leaving, by)), start), ...ahead];
};

/** A corner in outline order: where the cutting lines before and after it stop, mm from the corner, and the way across. */
interface Turn {
  readonly beforeAt: number;
  readonly afterAt: number;
  readonly across: Path;
  readonly owner: "before" | "after";
}

const turnAt = (piece: Piece, before: Band, after: Band): Turn => {
  const [first, second] = [flankBefore(before), flankAfter(after)];
  const turn = turnBetween(endDirection(before.walked.path), startDirection(after.walked.path)) * sense(piece);
  const isWithin = before.at === after.at && before !== after;
  const owner = isWithin ? "before" : ownerOf(before, after);
  const corners = isWithin ? "point" : (owner === "before" ? before : after).corners;
  const meeting = owner === "before" ? meet(first, second, corners, turn) : meet(second, first, corners, turn);
  return owner === "before"
    ? { beforeAt: meeting.ownAt, afterAt: meeting.otherAt, across: meeting.across, owner }
    : { beforeAt: meeting.otherAt, afterAt: meeting.ownAt, across: reversed(meeting.across), owner };
};

/** The edge whose word counts at a corner: one that says other than `point`, of two such the hem, else the first in outline order. */
const ownerOf = (before: Band, after: Band): "before" | "after" => {
  const [first, second] = [before.corners !== "point", after.corners !== "point"];
  if (first !== second) return first ? "before" : "after";
  if (first && before.walked.edge.role !== "hem" && after.walked.edge.role === "hem") return "after";
  // Of two plain ones the wider owns the cloth across.
  return !first && after.width > before.width ? "after" : "before";
};

// Within this of a straight line, in radians, a corner is not taken for an inner one.
const nearlyStraight = 1e-6;

/** How two flanks meet at a corner that turns by so many radians, outward positive. */
const meet = (own: Flank, other: Flank, corners: Corners, turn: number): Meeting => {
  const inner = turn < -nearlyStraight;
  const atFold = own.fold || other.fold;
  const plain = (): Meeting => pointCorner(own, other, inner && !atFold);
  if (inner || atFold) return plain();
  switch (corners) {
    case "point":
      return plain();
    case "square":
      return squareCorner(own, other) ?? plain();
    case "turned":
      return turnedCorner(own, other) ?? plain();
    case "cut":
      return cutCorner(own, other);
  }
};

const flankBefore = (band: Band): Flank =>
  flankOf(endOf(band.walked.path), reversed(band.walked.path), band, reversed(endHalf(band)));

const flankAfter = (band: Band): Flank => flankOf(startOf(band.walked.path), band.walked.path, band, startHalf(band));

const flankOf = (
  corner: Point,
  sewing: Path,
  { walked, width, carried, length, folds }: Band,
  cutting: Path,
): Flank => ({
  corner,
  away: startDirection(sewing),
  end: pointAt(cutting, carried),
  width,
  fold: walked.edge.role === "fold",
  cutting,
  carried,
  trimmable: folds ? 0 : length / 2,
});

// An outline of one edge meets itself; each side of its corner sees only its own half, or all of it would be a crossing.
const isLoop = ({ walked: { path } }: Band): boolean => sameSpot(startOf(path), endOf(path));
const startHalf = (band: Band): Path =>
  isLoop(band) ? part(band.cutting, 0, pathLength(band.cutting) / 2) : band.cutting;
const endHalf = (band: Band): Path =>
  isLoop(band) ? part(band.cutting, pathLength(band.cutting) / 2, pathLength(band.cutting)) : band.cutting;
