// The two parts that a slash makes of a piece: which stretches of the outline belong to which, and where other points lie.
import { pathLength } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, type Path, reversed } from "../geometry/path.ts";
import { type Point, sameSpotTolerance } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { boundary, walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { type Spot, spotsAt } from "./outline-spot.ts";
import type { Slash } from "./slash.ts";

/** A part is named by where the outline meets it: ahead of the hinge, up to the target, or behind it. */
export type Side = "ahead" | "behind";

/** A stretch of an edge that belongs to one part, in arc length of the edge as the outline walks it. */
export interface Stretch {
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly path: Path;
  readonly side: Side;
}

export const otherSide = (side: Side): Side => (side === "ahead" ? "behind" : "ahead");

// A slash belongs to the one piece that it was found on, and every place of the piece asks for its parts.
const known = new WeakMap<Slash, { readonly stretches: readonly Stretch[]; readonly ahead: Path }>();

const partsOf = (piece: Piece, slash: Slash): { readonly stretches: readonly Stretch[]; readonly ahead: Path } => {
  const parts = known.get(slash);
  if (parts) return parts;
  const stretches = cutAtSlash(piece, slash);
  // Closed by the cut itself, which is not always straight.
  const found = { stretches, ahead: joined([outlineOf(stretches, "ahead"), reversed(slash.path)]) };
  known.set(slash, found);
  return found;
};

/** The stretches of the outline from the hinge on round to it again. */
export const stretchesOf = (piece: Piece, slash: Slash): readonly Stretch[] => partsOf(piece, slash).stretches;

const cutAtSlash = (piece: Piece, slash: Slash): Stretch[] => {
  const walk = walked(piece);
  const { hingeAt } = slash;
  const order = [...walk.keys()].map((step) => (hingeAt.index + step) % walk.length);
  const stretches = order.flatMap((index) => cutUp(piece, slash, index));
  const first = stretches.findIndex(({ index, from }) => index === hingeAt.index && from >= hingeAt.at);
  return [...stretches.slice(first), ...stretches.slice(0, first)];
};

const cutUp = (piece: Piece, slash: Slash, index: number): Stretch[] => {
  const { path } = walked(piece)[index]!;
  const length = pathLength(path);
  const cuts = [slash.hingeAt, ...slash.targetsAt]
    .filter((spot) => spot.index === index && spot.at > 0 && spot.at < length)
    .map(({ at }) => at)
    .sort((a, b) => a - b);
  const ends = [0, ...cuts, length];
  return ends.slice(1).map((to, step) => {
    const from = ends[step]!;
    const whole = from === 0 && to === length;
    const side = sideOfSpot(piece, slash, { index, at: (from + to) / 2 });
    return { index, from, to, path: whole ? path : part(path, from, to), side };
  });
};

/** The part that a spot of the outline belongs to; hinge and target themselves belong to both. */
export const sideOfSpot = (piece: Piece, slash: Slash, spot: Spot): Side => {
  const walk = walked(piece);
  const turnsFrom = (other: Spot): number => {
    const turn = other.index + other.at / pathLength(walk[other.index]!.path);
    const start = slash.hingeAt.index + slash.hingeAt.at / pathLength(walk[slash.hingeAt.index]!.path);
    return (turn - start + walk.length) % walk.length;
  };
  return turnsFrom(spot) < turnsFrom(slash.targetsAt[0]) ? "ahead" : "behind";
};

/** The part on whose cloth a slash along an edge borders; the edge itself is the other part. */
export const clothSide = (slash: Slash): Side | undefined => {
  if (slash.along === undefined) return undefined;
  return slash.alongAhead ? "behind" : "ahead";
};

/** The part that a point lies in: on the outline by its spot there, else by the cloth around it; undefined off the cloth. */
export const sideOfPoint = (piece: Piece, slash: Slash, point: Point): Side | undefined => {
  const [spot] = spotsAt(piece, point);
  if (spot) return sideOfSpot(piece, slash, spot);
  const whole = boundary(piece);
  if (whole === undefined || !contains(whole, point)) return undefined;
  const cloth = clothSide(slash);
  if (cloth !== undefined) return cloth;
  return contains(partsOf(piece, slash).ahead, point) ? "ahead" : "behind";
};

/** Whether a point lies on the cut, where neither part has more of it than the other. */
export const isOnSlash = (slash: Slash, point: Point): boolean =>
  nearest(slash.path, point).distance <= sameSpotTolerance;

/** The outline of one part, but for the cut. */
export const outlineOf = (stretches: readonly Stretch[], side: Side): Path =>
  joined(stretches.filter((stretch) => stretch.side === side).map(({ path }) => path));
