// The line a piece is cut along: every edge of the outline moved out by its allowance, and the corners between.
// Across the mouth of a dart the edge is its cap, and so the line is what the folded dart is cut to. Inner curves tighter than
// their allowance are not treated here, except right at a corner.
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { carriedOn, offsetPath } from "../../geometry/offset.ts";
import {
  endDirection,
  endOf,
  joined,
  line,
  type Path,
  reversed,
  type Span,
  startDirection,
  startOf,
} from "../../geometry/path.ts";
import { dot, minus, type Point, plus, sameSpot, times } from "../../geometry/point.ts";
import { part } from "../../geometry/split.ts";
import { boundary, type Corner, cornersOf, sense, type Walked, walked } from "../../outline.ts";
import type { Corners, Piece } from "../../working.ts";
import { cutCorner } from "./cut-corner.ts";
import type { Flank, Meeting } from "./flank.ts";
import { longestReach } from "./flank.ts";
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
  if (!boundary(piece)) return undefined;
  const bands = bandsOf(piece);
  const turns = cornersOf(piece).map((corner, index) =>
    turnAt(piece, corner, bands[index]!, bands[(index + 1) % bands.length]!),
  );
  const stretches = bands.map((band, index) => {
    const start = turns[(index + turns.length - 1) % turns.length]!;
    const end = turns[index]!;
    const own = part(band.cutting, band.carried + start.afterAt, band.carried + band.length - end.beforeAt);
    const path = joined([start.owner === "after" ? start.across : [], own, end.owner === "before" ? end.across : []]);
    return { edge: band.walked.edge.name, width: band.width, fold: band.walked.edge.role === "fold", path };
  });
  return { path: closed(joined(stretches.map(({ path }) => path))), stretches };
};

/** An edge with the band of cloth beyond it. */
interface Band {
  readonly walked: Walked;
  readonly width: number;
  readonly corners: Corners;
  /** The cutting line in outline order, carried on straight at both ends by `carried` mm. */
  readonly cutting: Path;
  readonly carried: number;
  /** Length of the cutting line between what was carried on, mm. */
  readonly length: number;
}

// A neighbour meets a fold at down to 5.7 degrees within ten times its width; all other corners need far less.
const carriedWidths = 4 * longestReach;

const bandsOf = (piece: Piece): Band[] => {
  const walk = walked(piece);
  const widest = Math.max(...walk.map((part) => allowanceWidth(piece, part)));
  const carried = carriedWidths * widest;
  return walk.map((part) => {
    const width = allowanceWidth(piece, part);
    const own = width === 0 ? part.path : facingOnward(offsetPath(part.path, width * sense(piece)), part.path);
    const cutting = carried === 0 ? own : carriedOnBothWays(own, part.path, carried);
    const corners = piece.allowances.get(part.edge.name)?.corners ?? "point";
    return { walked: part, width, corners, cutting, carried, length: pathLength(own) };
  });
};

/**
 * Where an edge is curved tighter than its allowance right up to its end, its offset folds back there and crosses nothing
 * that would cut the fold off. The stretches at either end that travel against the edge are left out.
 */
const facingOnward = (offset: Path, edge: Path): Path => {
  let [first, last] = [0, offset.length - 1];
  const against = (span: Span, direction: Point): boolean =>
    dot(endDirection([span]), direction) < 0 && dot(startDirection([span]), direction) < 0;
  while (first < last && against(offset[first]!, startDirection(edge))) first += 1;
  while (first < last && against(offset[last]!, endDirection(edge))) last -= 1;
  return offset.slice(first, last + 1);
};

/** The cutting line carried on straight as its edge would be: where a fold was left out it has no direction of its own. */
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

const turnAt = (piece: Piece, corner: Corner, before: Band, after: Band): Turn => {
  const [first, second] = [flankBefore(piece, corner, before), flankAfter(piece, corner, after)];
  const owner = ownerOf(before, after);
  const meeting =
    owner === "before" ? meet(first, second, before.corners, corner) : meet(second, first, after.corners, corner);
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

const meet = (own: Flank, other: Flank, corners: Corners, { interior }: Corner): Meeting => {
  const inner = interior > Math.PI + nearlyStraight;
  const plain = (): Meeting => pointCorner(own, other, inner);
  if (inner || own.fold || other.fold) return plain();
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

const flankBefore = (piece: Piece, { point, before }: Corner, band: Band): Flank => {
  const cutting = piece.outline.length > 1 ? band.cutting : secondHalf(band.cutting);
  return flankOf(point, before, reversed(before.path), band, reversed(cutting));
};

const flankAfter = (piece: Piece, { point, after }: Corner, band: Band): Flank => {
  const cutting = piece.outline.length > 1 ? band.cutting : firstHalf(band.cutting);
  return flankOf(point, after, after.path, band, cutting);
};

const flankOf = (corner: Point, { edge }: Walked, sewing: Path, { width, carried }: Band, cutting: Path): Flank => ({
  corner,
  away: startDirection(sewing),
  end: pointAt(cutting, carried),
  width,
  fold: edge.role === "fold",
  cutting,
  carried,
});

// An outline of one edge meets itself; each side of its corner sees only its own half, or all of it would be a crossing.
const firstHalf = (cutting: Path): Path => part(cutting, 0, pathLength(cutting) / 2);
const secondHalf = (cutting: Path): Path => part(cutting, pathLength(cutting) / 2, pathLength(cutting));

// The last joint moves onto the first start to the last bit, as all the others already did.
const closed = (path: Path): Path => {
  const last = path[path.length - 1]!;
  if (!sameSpot(last.end, startOf(path))) return [...path, line(last.end, startOf(path))];
  return [...path.slice(0, -1), { ...last, end: startOf(path) }];
};
