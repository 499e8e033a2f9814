// As few points of a line as will do, when each can only be measured in whole steps of a tape and the points are joined by a ruler.

import { pathLength, pointOn, spanLength } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import { distance, dot, minus, type Point, plus, times } from "../geometry/point.ts";

export interface Ruled {
  /** The points from one end to the other, as they can be measured. */
  readonly points: readonly Point[];
  /** For each ruled line between two of them, how far it and its part of the true line are apart at most, mm. */
  readonly off: readonly number[];
}

/**
 * The fewest points whose ruled lines stay within `bound` mm of the path, among spots a few mm apart, and of several ways the
 * one that strays least; `measured` says where a spot comes to lie when it is measured. Neighbouring spots are joined in any
 * case, so a path bent more sharply than the tape can tell is followed as well as can be, and `off` says how well.
 */
export const fewestPoints = (path: Path, measured: (p: Point) => Point, bound: number): Ruled => {
  const { line, spots } = finely(path);
  const places = spots.map((index) => measured(line[index]!));
  const ways: Way[] = [{ count: 0, worst: 0, before: -1, off: 0 }];
  for (let end = 1; end < spots.length; end += 1) {
    let best: Way | undefined;
    for (let start = end - 1; start >= 0; start -= 1) {
      const so = ways[start]!;
      if (best && so.count + 1 > best.count) continue;
      const within = start === end - 1 ? Number.POSITIVE_INFINITY : bound;
      const off = strays(line, spots[start]!, spots[end]!, places[start]!, places[end]!, within);
      if (off === undefined) continue;
      const way = { count: so.count + 1, worst: Math.max(so.worst, off), before: start, off };
      if (!best || way.count < best.count || way.worst < best.worst) best = way;
    }
    ways.push(best!);
  }
  const points: Point[] = [];
  const off: number[] = [];
  for (let at = spots.length - 1; at >= 0; at = ways[at]!.before) {
    points.unshift(places[at]!);
    if (at > 0) off.unshift(ways[at]!.off);
  }
  return { points, off };
};

/** The best way to a spot: how many ruled lines, how far the worst and the last of them stray, and where the last one begins. */
interface Way {
  readonly count: number;
  readonly worst: number;
  readonly before: number;
  readonly off: number;
}

// The bent line that stands for the true one keeps this near to it, mm; it is added to every distance that is told.
const followedWithin = 0.01;

// Spots to choose from lie this far apart, mm, and there are no more than so many of them on a long line.
const apart = 4;
const mostSpots = 300;

/** The path as a finely bent line, and which of its points may be chosen: the ends of every span among them. */
const finely = (path: Path): { readonly line: readonly Point[]; readonly spots: readonly number[] } => {
  const step = Math.max(apart, pathLength(path) / mostSpots);
  const line: Point[] = [path[0]!.start];
  const spots = [0];
  for (const span of path) {
    if (span.kind === "line") {
      line.push(span.end);
      spots.push(line.length - 1);
      continue;
    }
    const shares = Math.max(1, Math.ceil(spanLength(span) / step));
    const each = Math.ceil((flattened([span], followedWithin).length - 1) / shares);
    for (let i = 1; i <= shares * each; i += 1) {
      line.push(pointOn(span, i / (shares * each)));
      if (i % each === 0) spots.push(line.length - 1);
    }
  }
  return { line, spots };
};

/**
 * How far the line from a to b is from a stretch of the bent line, mm; undefined where that is more than `bound`. The distance
 * from a straight line is greatest at a corner of the bent one, so only these are looked at. No spot of the ruled line is further
 * from the stretch than that either: the stretch runs past all of it from end to end, and beyond them its ends are as near.
 */
const strays = (
  line: readonly Point[],
  from: number,
  to: number,
  a: Point,
  b: Point,
  bound: number,
): number | undefined => {
  let worst = 0;
  // A line that is too long is found out in its middle first.
  const middle = (from + to) >> 1;
  for (let i = 0; i <= to - from; i += 1) {
    const index = middle + i <= to ? middle + i : middle - (i - (to - middle));
    worst = Math.max(worst, distanceToLine(line[index]!, a, b) + followedWithin);
    if (worst > bound) return undefined;
  }
  return worst;
};

const distanceToLine = (p: Point, a: Point, b: Point): number => {
  const along = minus(b, a);
  const square = dot(along, along);
  const share = square === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, a), along) / square));
  return distance(p, plus(a, times(along, share)));
};
