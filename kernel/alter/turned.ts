// How far the cloth along the outline has turned since it was drafted. A slash that starts later at a hinge runs along
// the down line of the part it lies in, and that line has turned with the part.
import { nearest } from "../geometry/nearest.ts";
import { type Point, sameSpot } from "../geometry/point.ts";
import type { Piece, Turned } from "../working.ts";

/** How far the cloth at a point of an edge has turned, radians; where two parts meet, that of the one which stayed. */
export const turnAt = (piece: Piece, edge: string, point: Point): number => {
  const all = piece.turned ?? [];
  const there = all.filter(({ from }) => sameSpot(from, point));
  const shared = there.find((turned) => turned.edge === edge) ?? there[0];
  if (shared) return shared.here;
  const { path } = piece.edges.get(edge)!;
  return turnAlong(turnsOf(piece, edge), nearest(path, point).at);
};

/** A change of turn along an edge, by arc length in mm as drafted. */
export interface TurnFrom {
  readonly at: number;
  readonly angle: number;
  readonly here: number;
}

/** The changes of turn along an edge, from its start. */
export const turnsOf = (piece: Piece, edge: string): TurnFrom[] => {
  const { path } = piece.edges.get(edge)!;
  return (piece.turned ?? [])
    .filter((turned) => turned.edge === edge)
    .map(({ from, angle, here }) => ({ at: nearest(path, from).at, angle, here }));
};

/** How far the cloth has turned at an arc length in mm. */
export const turnAlong = (turns: readonly TurnFrom[], at: number): number =>
  turns.reduce((angle, turn) => (turn.at <= at ? turn.angle : angle), 0);

/** The entries of an edge without those that say nothing. */
export const withoutRepeats = (turned: readonly Turned[]): Turned[] => {
  let before = 0;
  return turned.filter(({ angle, here }) => {
    const news = Math.abs(angle - before) > noTurn || Math.abs(here - angle) > noTurn;
    before = angle;
    return news;
  });
};

// Turns nearer than this, in radians, are one.
const noTurn = 1e-12;
