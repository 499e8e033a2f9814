// Lengths as sewn: an edge is cut longer than it is sewn where darts close, pleats fold and gathers are drawn up.
import { pathLength } from "./geometry/arc-length.ts";
import { nearest } from "./geometry/nearest.ts";
import type { Path } from "./geometry/path.ts";
import { sameSpotTolerance } from "./geometry/point.ts";
import type { Piece, Taken } from "./working.ts";

/** What sewing takes up along an edge of a piece: the mouths of its darts, its pleats and gathers. */
export const takenAlong = (piece: Piece, edge: string): readonly Taken[] => {
  const path = piece.edges.get(edge)?.path;
  const mouths = [...piece.darts.values()].filter((dart) => dart.edge === edge);
  if (!path || (mouths.length === 0 && piece.takeUps.length === 0)) return none;
  return [
    ...mouths.map(({ first, second }) => ({
      from: first,
      to: second,
      amount: nearest(path, second).at - nearest(path, first).at,
    })),
    ...piece.takeUps.filter((takeUp) => takeUp.edge === edge),
  ];
};

/** The length in mm of a path once sewn; what lies off the path does not count. */
export const sewnLength = (path: Path, taken: readonly Taken[]): number => sewnUpTo(path, taken, pathLength(path));

/** How far along the sewn line, in mm, the spot lies that is `at` mm along the path as cut. */
export const sewnUpTo = (path: Path, taken: readonly Taken[], at: number): number =>
  taken.reduce((sewn, { from, to, amount }) => {
    const [start, end] = [nearest(path, from), nearest(path, to)];
    if (start.distance > sameSpotTolerance || end.distance > sameSpotTolerance) return sewn;
    const [low, high] = [Math.min(start.at, end.at), Math.max(start.at, end.at)];
    if (at <= low || high === low) return sewn;
    return sewn - amount * Math.min(1, (at - low) / (high - low));
  }, at);

/** The sewn length in mm of an edge of a piece. */
export const sewnLengthOf = (piece: Piece, edge: string): number => {
  const path = piece.edges.get(edge)?.path;
  return path ? sewnLength(path, takenAlong(piece, edge)) : 0;
};

const none: readonly Taken[] = [];
