// The two edges of the outline that lie level with a place inside the piece, and which of them is the center. A fold or an
// opening is; of two seams, what is known of a bodice has to tell, and each alteration asks that for itself.
import { directionAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { dot, type Point, quarterTurn, sameSpotTolerance, times } from "../geometry/point.ts";
import { cos } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import type { Edge, Piece } from "../working.ts";
import { rayEnd } from "./swing-part.ts";

/** An edge that lies level with a place. */
export interface LevelEdge {
  readonly edge: Edge;
  /** Where it does. */
  readonly point: Point;
  /** How far down the cloth its upper and its lower end lie, mm. */
  readonly top: number;
  readonly bottom: number;
}

/** The nearest edges level with a place inside the piece, on the one side and on the other. */
export const levelWith = (piece: Piece, whole: Path, from: Point, down: Point): readonly [LevelEdge, LevelEdge] => {
  const found = (way: Point): LevelEdge => {
    const point = rayEnd(whole, from, way);
    const { edge } = walked(piece).find(({ path }) => nearest(path, point).distance <= sameSpotTolerance)!;
    const ends = [startOf(edge.path), endOf(edge.path)].map((end) => dot(end, down));
    return { edge, point, top: Math.min(...ends), bottom: Math.max(...ends) };
  };
  const square = quarterTurn(down);
  return [found(square), found(times(square, -1))];
};

/** True of an edge that can be the center only: no armhole and no side lies on a fold, or is left open. */
export const isMarkedCenter = ({ role }: Edge): boolean => role === "fold" || role === "opening";

/** The edges that the outline climbs over from one edge, over its upper end, up to another. */
export const climbed = (piece: Piece, from: Edge, to: Edge, down: Point): Edge[] => {
  const walk = walked(piece);
  const start = walk.findIndex(({ edge }) => edge === from);
  const { path } = walk[start]!;
  const step = dot(endOf(path), down) < dot(startOf(path), down) ? 1 : walk.length - 1;
  const round = walk.map((_, index) => walk[(start + index * step) % walk.length]!.edge);
  return round.slice(0, round.indexOf(to));
};

/** How far along the way down the highest place of an outline lies, mm. */
export const highest = (whole: Path, down: Point): number =>
  Math.min(...whole.flatMap((span) => [dot(span.start, down), dot(span.end, down)]));

/** True where an edge runs down the cloth at a place of it, so that what lies on it can be moved up or down along it. */
export const runsUpright = ({ path }: Edge, at: Point, down: Point): boolean => {
  const way = directionAt(path, nearest(path, at).at);
  return Math.abs(dot(way, down)) >= upright;
};

// Leaning by no more than 15 degrees: a shaped center seam leans by less, a neck or a hem by far more.
const upright = cos(Math.PI / 12);
