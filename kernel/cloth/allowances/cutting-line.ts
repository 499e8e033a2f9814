// The line a piece is cut along: every edge of the outline moved out by its allowance, and the corners between.
// Inner curves tighter than their allowance and the mouths of darts are not treated here.
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { carriedOn, offsetPath } from "../../geometry/offset.ts";
import { joined, line, type Path, reversed, startDirection, startOf } from "../../geometry/path.ts";
import { type Point, sameSpot } from "../../geometry/point.ts";
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
    const own = width === 0 ? part.path : offsetPath(part.path, width * sense(piece));
    const cutting = carried === 0 ? own : carriedOn(carriedOn(own, "start", carried), "end", carried);
    const corners = piece.allowances.get(part.edge.name)?.corners ?? "point";
    return { walked: part, width, corners, cutting, carried, length: pathLength(own) };
  });
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
