// How far each stretch of the outline has turned once a part of the piece has been laid anew.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { type Point, sameSpot, sameSpotTolerance } from "../geometry/point.ts";
import type { Turned } from "../working.ts";
import { laidOut, movedWith, type Recut, turnOf } from "./recut.ts";
import { type TurnFrom, turnAlong, turnsOf, withoutRepeats } from "./turned.ts";
import type { Stretch } from "./two-parts.ts";

/** The entries of all outline edges, in outline order and each edge as drafted. */
export const turnedParts = (recut: Recut): Turned[] => recut.piece.outline.flatMap((_, index) => ofEdge(recut, index));

const ofEdge = (recut: Recut, index: number): Turned[] => {
  const { edge: name, turned } = recut.piece.outline[index]!;
  const laid = turned ? laidOut(recut, index).reverse() : laidOut(recut, index);
  const entries = laid.flatMap(({ path, was, fills }): Turned[] => {
    const from = turned ? endOf(path) : startOf(path);
    if (was) return ofStretch(recut, name, was, from);
    const angle = turnOfStaying(recut, fills!);
    return [{ edge: name, from, angle, here: angle }];
  });
  return withoutRepeats([...entries, ...atEnd(recut, index)]);
};

const ofStretch = (recut: Recut, edge: string, stretch: Stretch, from: Point): Turned[] => {
  const turn = turnOf(recut, stretch);
  const range = asDrafted(recut, stretch);
  const { path } = recut.piece.edges.get(edge)!;
  const turns = turnsOf(recut.piece, edge);
  const angle = turnAlong(turns, range.from + sameSpotTolerance) + turn;
  const here = shared(recut, from) ?? ownTurn(turns, range.from, turn) ?? angle;
  const inside = turns
    .filter(({ at }) => at > range.from + sameSpotTolerance && at < range.to - sameSpotTolerance)
    .map((entry): Turned => {
      const point = movedWith(recut, stretch, pointAt(path, entry.at));
      return { edge, from: point, angle: entry.angle + turn, here: entry.here + turn };
    });
  return [{ edge, from, angle, here }, ...inside];
};

// The end of an edge has an entry of its own only for what holds at the very spot.
const atEnd = (recut: Recut, index: number): Turned[] => {
  const { edge } = recut.piece.outline[index]!;
  const { path } = recut.piece.edges.get(edge)!;
  const length = pathLength(path);
  const last = recut.stretches.find((stretch) => stretch.index === index && asDrafted(recut, stretch).to === length);
  if (!last) return [];
  const turn = turnOf(recut, last);
  const turns = turnsOf(recut.piece, edge);
  const angle = turnAlong(turns, length - sameSpotTolerance) + turn;
  const from = movedWith(recut, last, endOf(path));
  const here = shared(recut, from) ?? ownTurn(turns, length, turn) ?? angle;
  return [{ edge, from, angle, here }];
};

const ownTurn = (turns: readonly TurnFrom[], at: number, turn: number): number | undefined => {
  const entry = turns.find((each) => Math.abs(each.at - at) <= sameSpotTolerance);
  return entry && entry.here + turn;
};

const asDrafted = ({ piece }: Recut, { index, from, to }: Stretch): { from: number; to: number } => {
  const { edge, turned } = piece.outline[index]!;
  const length = pathLength(piece.edges.get(edge)!.path);
  return turned ? { from: length - to, to: length - from } : { from, to };
};

const shared = (recut: Recut, point: Point): number | undefined =>
  sameSpot(point, recut.slash.hinge) || sameSpot(point, recut.slash.target) ? turnOfStaying(recut, point) : undefined;

/** How far the part that stays has turned at the hinge or at the target. */
const turnOfStaying = (recut: Recut, point: Point): number => {
  const { slash, stretches, moving, piece } = recut;
  const staying = stretches.filter(({ side }) => side !== moving);
  // The part ahead starts at the hinge, the part behind ends there.
  const first = sameSpot(point, slash.hinge) === (moving === "behind");
  const stretch = first ? staying[0]! : staying.at(-1)!;
  const { edge, turned } = piece.outline[stretch.index]!;
  const range = asDrafted(recut, stretch);
  const at = first !== turned ? range.from + 2 * sameSpotTolerance : range.to - 2 * sameSpotTolerance;
  return turnAlong(turnsOf(piece, edge), at);
};
