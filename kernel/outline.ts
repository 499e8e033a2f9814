// Reading a piece's outline: its edges in order, as walked, and the corners between them.

import { signedArea } from "./geometry/area.ts";
import {
  endDirection,
  endOf,
  joined,
  type Path,
  reversed,
  type Span,
  startDirection,
  startOf,
} from "./geometry/path.ts";
import { type Point, sameSpot, times } from "./geometry/point.ts";
import { turnBetween } from "./geometry/trig.ts";
import type { Edge, OutlinePart, Piece } from "./working.ts";

/** One edge as the outline walks it. */
export interface Walked {
  readonly edge: Edge;
  readonly turned: boolean;
  /** The edge's path in outline order. */
  readonly path: Path;
}

const walkedBy = new WeakMap<Piece, readonly Walked[]>();

/** The outline's edges in order; empty while the outline is not drawn. */
export const walked = (piece: Piece): readonly Walked[] => {
  const known = walkedBy.get(piece);
  if (known) return known;
  const walk = piece.outline.map((part) => walkedPart(piece, part));
  walkedBy.set(piece, walk);
  return walk;
};

const walkedPart = (piece: Piece, { edge: name, turned }: OutlinePart): Walked => {
  const edge = piece.edges.get(name);
  if (!edge) throw new Error(`the outline of ${piece.name} names ${name}, which is not an edge of it`);
  return { edge, turned, path: turned ? reversed(edge.path) : edge.path };
};

/** The whole boundary as one path, in outline order; undefined while it is not drawn or stands open. */
export const boundary = (piece: Piece): Path | undefined => {
  if (!boundaries.has(piece)) boundaries.set(piece, boundaryOf(piece));
  return boundaries.get(piece);
};

const boundaries = new WeakMap<Piece, Path | undefined>();

const boundaryOf = (piece: Piece): Path | undefined => {
  const walk = walked(piece);
  if (walk.length === 0 || gaps(piece).length > 0) return undefined;
  return joined(walk.map(({ path }) => path));
};

/** Where consecutive outline edges do not meet: the two edges and their ends. */
export const gaps = (piece: Piece): { before: Walked; after: Walked; from: Point; to: Point }[] => {
  const walk = walked(piece);
  return walk.flatMap((before, index) => {
    const after = walk[(index + 1) % walk.length]!;
    const from = endOf(before.path);
    const to = startOf(after.path);
    return sameSpot(from, to) ? [] : [{ before, after, from, to }];
  });
};

/** +1 when the outline runs clockwise on the page, -1 when anticlockwise. */
export const sense = (piece: Piece): 1 | -1 => {
  const known = senses.get(piece) ?? senseOf(piece);
  senses.set(piece, known);
  return known;
};

const senses = new WeakMap<Piece, 1 | -1>();

const senseOf = (piece: Piece): 1 | -1 => {
  const spans: Span[] = walked(piece).flatMap(({ path }) => [...path]);
  return spans.length > 0 && signedArea(spans) < 0 ? -1 : 1;
};

/** A corner of the outline, between an edge and the next. */
export interface Corner {
  readonly before: Walked;
  readonly after: Walked;
  readonly point: Point;
  /** Interior angle in radians, 0 to 2 pi. */
  readonly interior: number;
}

/** All corners between neighbouring edges, in outline order, each with its interior angle. */
export const cornersOf = (piece: Piece): Corner[] => {
  const walk = walked(piece);
  const clockwise = sense(piece);
  return walk.map((before, index) => {
    const after = walk[(index + 1) % walk.length]!;
    const turn = turnBetween(endDirection(before.path), startDirection(after.path)) * clockwise;
    return { before, after, point: endOf(before.path), interior: Math.PI - turn };
  });
};

/** The direction that points out of the piece, square to a direction of travel along the outline. */
export const outward = (piece: Piece, travel: Point): Point => times({ x: travel.y, y: -travel.x }, sense(piece));
