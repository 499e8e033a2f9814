// How a piece is laid over the piece it was before, so that what did not change lies on what it was. As they lie on the table,
// unless the piece was moved, turned or turned over as a whole.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { middleOfArea } from "../geometry/middle-of-area.ts";
import { endOf, startOf } from "../geometry/path.ts";
import { distance, minus, type Point, plus, times } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { turnBetween } from "../geometry/trig.ts";
import { alongEdge, foldOf, grainDirection } from "../grain-direction.ts";
import { boundary, walked } from "../outline.ts";
import type { Edge, Piece } from "../working.ts";
import { tellableLength } from "./rounding.ts";

/** Lays `from` onto `to`, turned over first where it says so, then turned by an angle in radians, clockwise. */
export interface Laying {
  readonly from: Point;
  readonly to: Point;
  readonly angle: number;
  readonly over: boolean;
}

/** By what two pieces are laid on one another in a picture. */
export type LaidBy =
  | { readonly by: "table" | "fold" | "grain" | "fit" }
  | { readonly by: "place"; readonly place: string };

export const asItLies: Laying = { from: { x: 0, y: 0 }, to: { x: 0, y: 0 }, angle: 0, over: false };

/** A spot of the later piece, on the table of the earlier one. */
export const laid = (p: Point, { from, to, angle, over }: Laying): Point => {
  const off = minus(p, from);
  return plus(to, rotated(over ? { x: -off.x, y: off.y } : off, { x: 0, y: 0 }, angle));
};

/** A direction of the later piece, on the table of the earlier one. */
export const laidDirection = (v: Point, laying: Laying): Point => minus(laid(v, laying), laid({ x: 0, y: 0 }, laying));

/**
 * As one that was moved, turned or turned over whole, where that brings most of it to where it was and more than lies there
 * anyway; else as they lie, where anything named stayed; else along the fold; else as they lie.
 */
export const laidOver = (before: Piece, after: Piece): Laying => {
  const spots = sharedSpots(before, after);
  const unmoved = (laying: Laying): number => unmovedSpots(spots, laying);
  const still = unmoved(asItLies);
  if (still >= spots.length / 2) return asItLies;
  // Of several that are as good, the first by the names of edges: the same whichever piece is called the earlier.
  const [first] = layings(before, after)
    .map((laying) => ({ laying, count: unmoved(laying) }))
    .filter(({ count }) => count > spots.length / 2)
    .sort((a, b) => b.count - a.count);
  if (first) return first.laying;
  return (still > 0 ? undefined : alongFold(before, after)) ?? asItLies;
};

/** Along the fold that one of them has, if that edge is as straight and of the same name in the other. */
const alongFold = (before: Piece, after: Piece): Laying | undefined => {
  const fold = (foldOf(after) ?? foldOf(before))?.name ?? "";
  const [was, is] = [before.edges.get(fold), after.edges.get(fold)];
  return was && is && alongBoth(was, is);
};

/** The laying asked for; undefined where one of the pieces has no such fold, grain or place. */
export const laidAsAsked = (before: Piece, after: Piece, asked: LaidBy): Laying | undefined => {
  switch (asked.by) {
    case "table":
      return laidOver(before, after);
    case "fold": {
      const [was, is] = [foldOf(before), foldOf(after)];
      return was && is && alongBoth(was, is);
    }
    case "grain": {
      const [was, is] = [grainDirection(before), grainDirection(after)];
      const [from, to] = [middleOf(after), middleOf(before)];
      return was && is && from && to && { from, to, angle: undirectedTurn(is, was), over: false };
    }
    case "place": {
      const [was, is] = [before.places.get(asked.place), after.places.get(asked.place)];
      return was && is && { from: is.point, to: was.point, angle: 0, over: false };
    }
    case "fit":
      return bestFit(before, after);
  }
};

interface Spots {
  readonly before: Point;
  readonly after: Point;
}

/** Ends and middles of outline edges, and named places, that both pieces have; spots that coincide count once. */
const sharedSpots = (before: Piece, after: Piece): Spots[] => {
  const edges = walked(after).flatMap(({ edge }): Spots[] => {
    const was = before.edges.get(edge.name);
    if (!was) return [];
    const [wasMiddle, isMiddle] = [was, edge].map(({ path }) => pointAt(path, pathLength(path) / 2)) as [Point, Point];
    return [
      { before: startOf(was.path), after: startOf(edge.path) },
      { before: wasMiddle, after: isMiddle },
      { before: endOf(was.path), after: endOf(edge.path) },
    ];
  });
  const places = [...after.places.values()].flatMap(({ name, point }): Spots[] => {
    const was = before.places.get(name);
    return was ? [{ before: was.point, after: point }] : [];
  });
  const all = [...edges, ...places];
  return all.filter((spot, index) => all.findIndex((other) => isSame(other, spot)) === index);
};

const isSame = (one: Spots, other: Spots): boolean =>
  distance(one.before, other.before) < tellableLength && distance(one.after, other.after) < tellableLength;

const unmovedSpots = (spots: readonly Spots[], laying: Laying): number =>
  spots.filter(({ before, after }) => distance(before, laid(after, laying)) < tellableLength).length;

/** Every laying that brings an edge as long as before onto what it was, by the edges' names; turned over last. */
const layings = (before: Piece, after: Piece): Laying[] => {
  const alike = walked(after)
    .flatMap(({ edge }): [Edge, Edge][] => {
      const was = before.edges.get(edge.name);
      return was && Math.abs(pathLength(was.path) - pathLength(edge.path)) < tellableLength ? [[was, edge]] : [];
    })
    .sort(([, one], [, other]) => (one.name < other.name ? -1 : 1));
  return [false, true].flatMap((over) => alike.flatMap(([was, is]) => alongBoth(was, is, over) ?? []));
};

const alongBoth = (was: Edge, is: Edge, over = false): Laying | undefined => {
  const [wasAlong, isAlong] = [alongEdge(was), alongEdge(is)];
  if (!wasAlong || !isAlong) return undefined;
  const turned = over ? { x: -isAlong.x, y: isAlong.y } : isAlong;
  return { from: startOf(is.path), to: startOf(was.path), angle: turnBetween(turned, wasAlong), over };
};

// A grain line has no way up: the smaller of the two turns.
const undirectedTurn = (from: Point, to: Point): number => {
  const turn = turnBetween(from, to);
  return Math.abs(turn) > Math.PI / 2 ? turnBetween(times(from, -1), to) : turn;
};

const middleOf = (piece: Piece): Point | undefined => {
  const loop = boundary(piece);
  return loop && middleOfArea(loop);
};

/** Least squares over the shared spots (rotation in the plane, as in Kabsch's method). */
const bestFit = (before: Piece, after: Piece): Laying | undefined => {
  const spots = sharedSpots(before, after);
  if (spots.length < 2) return undefined;
  const mean = (points: readonly Point[]): Point =>
    times(
      points.reduce((sum, p) => plus(sum, p), { x: 0, y: 0 }),
      1 / points.length,
    );
  const [to, from] = [mean(spots.map((spot) => spot.before)), mean(spots.map((spot) => spot.after))];
  // The best turn is that of the sum of all (after)* (before), taken as complex numbers about the two means.
  const sum = spots.reduce(
    (total, spot) => {
      const [a, b] = [minus(spot.after, from), minus(spot.before, to)];
      return plus(total, { x: a.x * b.x + a.y * b.y, y: a.x * b.y - a.y * b.x });
    },
    { x: 0, y: 0 },
  );
  return { from, to, angle: turnBetween({ x: 1, y: 0 }, sum), over: false };
};
