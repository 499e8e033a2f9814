// Where on the unrolled body the edges that hold a piece lie: as on the piece it was made of, turned back as they were drafted,
// or along a level line.
import { turnAlong, turnsOf } from "../../alter/turned.ts";
import { pathLength, pointAt } from "../../geometry/arc-length.ts";
import { flattened } from "../../geometry/area.ts";
import { nearest } from "../../geometry/nearest.ts";
import { endOf, startOf } from "../../geometry/path.ts";
import { between, minus, type Point, plus } from "../../geometry/point.ts";
import { rotated } from "../../geometry/rotate.ts";
import type { Walked } from "../../outline.ts";
import { sewnUpTo, takenAlong } from "../../sewn.ts";
import type { Edge, Piece } from "../../working.ts";

/** Where on the body the spot of an edge lies that is so many mm along it as drafted. */
export type BodyPlaces = (edge: Edge, at: number) => Point;

/** The first piece in its line that has all these edges, as long as they are now: there they lie as the body has them. */
export const rootOf = (piece: Piece, parts: readonly Walked[]): Piece | undefined => {
  const isLike = ({ edges }: Piece): boolean =>
    parts.every(({ edge }) => {
      const was = edges.get(edge.name);
      return was !== undefined && Math.abs(pathLength(was.path) - pathLength(edge.path)) < alike;
    });
  let root = piece.kept && isLike(piece.kept) ? piece.kept : undefined;
  for (let each = piece.source; each && isLike(each); each = each.source) root = each;
  // One that slashes have turned already is not as the body has it; turning its edges back says more.
  return root?.turned?.length ? undefined : root;
};

// Truing changes a shoulder's length by less than this, mm.
const alike = 1.5;

/** By arc length on the same edge of a piece, y down. */
export const placesOn =
  ({ edges }: Piece): BodyPlaces =>
  (edge, at) => {
    const { path } = edges.get(edge.name)!;
    return pointAt(path, (at / pathLength(edge.path)) * pathLength(path));
  };

/** A spot that stays while edges are turned back: the start or the end of one of them, in outline order. */
export interface Still {
  readonly part: Walked;
  readonly isAtEnd: boolean;
}

/**
 * Where reshaped edges that follow one another in the outline lay before slashes turned them: every bit of them turned back
 * by as much as its cloth has turned, from one spot on that stays.
 */
export const turnedBack = (piece: Piece, run: readonly Walked[], { part, isAtEnd }: Still): BodyPlaces => {
  let at: Point = { x: 0, y: 0 };
  let still = at;
  const tables = run.map((each) => {
    const { edge, turned } = each;
    const turns = turnsOf(piece, edge.name);
    const drafted = flattened(edge.path, flatness).map((point) => nearest(edge.path, point).at);
    const bends = [...new Set([...drafted, ...turns.map((turn) => turn.at)])].sort((a, b) => a - b);
    const stations = turned ? bends.reverse() : bends;
    if (each === part && !isAtEnd) still = at;
    const spots = stations.map((station, index) => {
      const before = stations[index - 1];
      if (before === undefined) return { station, spot: at };
      const chord = minus(pointAt(edge.path, station), pointAt(edge.path, before));
      at = plus(at, rotated(chord, origin, -turnAlong(turns, (station + before) / 2)));
      return { station, spot: at };
    });
    if (each === part && isAtEnd) still = at;
    return [edge.name, turned ? spots.reverse() : spots] as const;
  });
  const shift = minus(isAtEnd ? endOf(part.path) : startOf(part.path), still);
  const byEdge = new Map(tables);
  return (edge, wanted) => {
    const spots = byEdge.get(edge.name)!;
    const index = Math.max(
      1,
      spots.findIndex(({ station }) => station >= wanted),
    );
    const [from, to] = [spots[index - 1]!, spots[index]!];
    return plus(shift, between(from.spot, to.spot, (wanted - from.station) / (to.station - from.station)));
  };
};

const origin: Point = { x: 0, y: 0 };

/** On a level line as long as an edge is once sewn, from where the leftmost of its ends lies on the piece that it comes from. */
export const levelPlaces = (piece: Piece, { edge: only }: Walked, root: Piece): BodyPlaces => {
  const taken = takenAlong(piece, only.name);
  const whole = sewnUpTo(only.path, taken, pathLength(only.path));
  const lay = root.edges.get(only.name)!.path;
  const isRightward = endOf(lay).x >= startOf(lay).x;
  const left = Math.min(startOf(lay).x, endOf(lay).x);
  return (edge, at) => {
    const along = sewnUpTo(edge.path, taken, at);
    return { x: left + (isRightward ? along : whole - along), y: 0 };
  };
};

/** How far a bent line may lie off the curve it stands for, mm. */
export const flatness = 0.2;
