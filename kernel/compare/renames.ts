// What goes by another name and is the same by its shape: edges and places of a piece, and pieces of a garment.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { signedArea } from "../geometry/area.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { distance, type Point } from "../geometry/point.ts";
import { isHidden } from "../hidden-names.ts";
import { boundary, walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Edge, Piece } from "../working.ts";
import type { Renamed } from "./comparison.ts";
import { type Laying, laid } from "./laid-over.ts";
import { tellableLength } from "./rounding.ts";

/** Edges and places that only their names tell apart, each paired once. */
export const renamedWithin = (before: Piece, after: Piece, laying: Laying): Renamed[] => [
  ...pairs(lone(before.edges, after.edges), lone(after.edges, before.edges), (was, is) =>
    runAlike(was, is, laying),
  ).map(([was, is]): Renamed => ({ kind: "edge", before: was.name, after: is.name })),
  ...pairs(lone(before.places, after.places), lone(after.places, before.places), (was, is) =>
    lieAlike(was.point, is.point, laying),
  ).map(([was, is]): Renamed => ({ kind: "place", before: was.name, after: is.name })),
];

/** How far apart, mm, an edge and what it was run, among spots at the same share of their lengths; whichever way each was drafted. */
export const apart = (before: Path, after: Path, laying: Laying): number => {
  const [was, is] = [spotsAlong(before), spotsAlong(after).map((spot) => laid(spot, laying))];
  const widest = (others: readonly Point[]): number => Math.max(...was.map((spot, i) => distance(spot, others[i]!)));
  return Math.min(widest(is), widest([...is].reverse()));
};

/** Pieces that are called otherwise, by their names before and after; what both garments have keeps its name. */
export const renamedPieces = (
  before: ReadonlyMap<string, Piece>,
  after: ReadonlyMap<string, Piece>,
): ReadonlyMap<string, string> => {
  const [gone, come] = [lone(before, after), lone(after, before)];
  const rated = gone
    .flatMap((was) => come.map((is) => ({ was, is, worth: likeness(was, is) })))
    .filter(({ worth }) => worth >= leastLikeness)
    .sort((a, b) => b.worth - a.worth || (pairName(a) < pairName(b) ? -1 : 1));
  const found = new Map<string, string>();
  const taken = new Set<string>();
  for (const { was, is } of rated) {
    if (found.has(was.name) || taken.has(is.name)) continue;
    found.set(was.name, is.name);
    taken.add(is.name);
  }
  return found;
};

// A piece that was renamed and altered at once keeps at least this share of its edges as long as they were.
const leastLikeness = 0.6;

const pairName = ({ was, is }: { was: Piece; is: Piece }): string => [was.name, is.name].sort().join(" ");

/** The share of outline edges that are as long and have the same name, or, where none has, as long in the same order; 0 to 1. */
const likeness = (was: Piece, is: Piece): number => {
  const [one, other] = [lengthsOf(was), lengthsOf(is)];
  const most = Math.max(one.length, other.length);
  if (most === 0) return 0;
  const named = one.filter(({ name, length }) =>
    other.some((each) => each.name === name && Math.abs(each.length - length) < tellableLength),
  ).length;
  if (named > 0) return named / most;
  return isSameShape(was, is) ? 1 : 0;
};

const lengthsOf = (piece: Piece): { name: string; length: number }[] =>
  walked(piece).map(({ edge }) => ({ name: edge.name, length: sewnLengthOf(piece, edge.name) }));

const isSameShape = (was: Piece, is: Piece): boolean => {
  const [one, other] = [boundary(was), boundary(is)];
  if (!one || !other) return false;
  const sorted = (piece: Piece): number[] =>
    lengthsOf(piece)
      .map(({ length }) => length)
      .sort((a, b) => a - b);
  const [lengths, others] = [sorted(was), sorted(is)];
  const around = pathLength(one);
  return (
    lengths.length === others.length &&
    lengths.every((length, i) => Math.abs(length - others[i]!) < tellableLength) &&
    Math.abs(Math.abs(signedArea(one)) - Math.abs(signedArea(other))) < around * tellableLength
  );
};

const lone = <T extends { readonly name: string }>(
  own: ReadonlyMap<string, T>,
  others: ReadonlyMap<string, unknown>,
): T[] => [...own.values()].filter(({ name }) => !others.has(name) && !isHidden(name));

/** Each of the first with the one of the second that it is like, where there is just one such on either side. */
const pairs = <T>(first: readonly T[], second: readonly T[], alike: (one: T, other: T) => boolean): [T, T][] =>
  first.flatMap((one): [T, T][] => {
    const [match, another] = second.filter((other) => alike(one, other));
    const isOnly =
      match !== undefined && another === undefined && first.filter((each) => alike(each, match)).length === 1;
    return isOnly ? [[one, match]] : [];
  });

const lieAlike = (was: Point, is: Point, laying: Laying): boolean => distance(was, laid(is, laying)) < tellableLength;

const runAlike = (was: Edge, is: Edge, laying: Laying): boolean => {
  const [start, end] = [laid(startOf(is.path), laying), laid(endOf(is.path), laying)];
  const meet = (a: Point, b: Point): boolean =>
    distance(startOf(was.path), a) < tellableLength && distance(endOf(was.path), b) < tellableLength;
  return (meet(start, end) || meet(end, start)) && apart(was.path, is.path, laying) < tellableLength;
};

// Spots looked at along an edge, its ends among them.
const spotsLookedAt = 9;

const spotsAlong = (path: Path): readonly Point[] => {
  const known = spotsBefore.get(path);
  if (known) return known;
  const length = pathLength(path);
  const spots = Array.from({ length: spotsLookedAt }, (_, i) => pointAt(path, (length * i) / (spotsLookedAt - 1)));
  spotsBefore.set(path, spots);
  return spots;
};

// A path never changes, and is looked at against several others.
const spotsBefore = new WeakMap<Path, readonly Point[]>();
