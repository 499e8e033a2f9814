// The no-fit polygon of two shapes: where the second may not lie, seen from the first. It is the Minkowski sum of the first and
// the second turned about a point, put together from the sums of their convex parts (J. A. Bennell, J. F. Oliveira 2008, "The
// geometry of nesting problems", section 3). How deep a place lies in it is how far the second must move to be free.
import { Clipper, EndType, FillRule, JoinType } from "clipper2-ts";
import { dot, minus, type Point, plus, times, unit } from "../geometry/point.ts";

/** A region of forbidden places in flat arrays, for the search asks it a million times a second. */
export interface NoFit {
  /** Whether it is one convex polygon; then `sides` holds a, b, c of each side, and inside is a x + b y < c. */
  readonly isConvex: boolean;
  /** Otherwise x, y of the start of each side, then x, y of its end, then 1 / its squared length; of all rings together. */
  readonly sides: Float64Array;
  /** Of a convex one x, y of the corners of its border, one after another; another has them in its sides. */
  readonly corners: Float64Array;
}

/** Every side of the border of a region, from its start to its end; a place on the border is free. */
export const eachSide = (
  { isConvex, sides, corners }: NoFit,
  take: (x0: number, y0: number, x1: number, y1: number) => void,
): void => {
  if (isConvex) {
    for (let i = 0; i < corners.length; i += 2) {
      const next = (i + 2) % corners.length;
      take(corners[i]!, corners[i + 1]!, corners[next]!, corners[next + 1]!);
    }
  } else {
    for (let i = 0; i < sides.length; i += 5) take(sides[i]!, sides[i + 1]!, sides[i + 2]!, sides[i + 3]!);
  }
};

/** Where a shape may not lie because of another that lies at (0, 0), both given by convex parts; no nearer than `gap`. */
export const noFit = (fixed: readonly Point[][], moving: readonly Point[][], gap: number): NoFit => {
  const sums = fixed.flatMap((a) => moving.map((b) => convexSum(a, b)));
  return sums.length === 1 ? convexNoFit(sums[0]!, gap) : unitedNoFit(sums, gap);
};

/** The region for the two shapes with their parts exchanged, which is the same turned by half a turn. */
export const exchanged = ({ isConvex, sides, corners }: NoFit): NoFit => ({
  isConvex,
  sides: sides.map((value, i) => ((isConvex ? i % 3 === 2 : i % 5 === 4) ? value : -value)),
  corners: corners.map((value) => -value),
});

/** The region moved by a vector. */
export const movedRegion = ({ isConvex, sides, corners }: NoFit, by: Point): NoFit => ({
  isConvex,
  sides: isConvex
    ? sides.map((value, i) => (i % 3 === 2 ? value + sides[i - 2]! * by.x + sides[i - 1]! * by.y : value))
    : sides.map((value, i) => (i % 5 === 4 ? value : value + ((i % 5) % 2 === 0 ? by.x : by.y))),
  corners: corners.map((value, i) => value + (i % 2 === 0 ? by.x : by.y)),
});

/** How far a place lies inside the region: 0 outside, else the distance to its border. */
export const depthIn = ({ isConvex, sides }: NoFit, x: number, y: number): number =>
  isConvex ? depthInConvex(sides, x, y) : depthInRings(sides, x, y);

const depthInConvex = (sides: Float64Array, x: number, y: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < sides.length; i += 3) {
    const depth = sides[i + 2]! - sides[i]! * x - sides[i + 1]! * y;
    // Most places asked about are outside, and one side is enough to know it.
    if (depth <= 0) return 0;
    if (depth < least) least = depth;
  }
  return least;
};

const depthInRings = (sides: Float64Array, x: number, y: number): number => {
  let isInside = false;
  for (let i = 0; i < sides.length; i += 5) {
    const y0 = sides[i + 1]!;
    const y1 = sides[i + 3]!;
    if (y0 > y === y1 > y) continue;
    const x0 = sides[i]!;
    if (x < x0 + ((y - y0) / (y1 - y0)) * (sides[i + 2]! - x0)) isInside = !isInside;
  }
  if (!isInside) return 0;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < sides.length; i += 5) {
    const px = x - sides[i]!;
    const py = y - sides[i + 1]!;
    const dx = sides[i + 2]! - sides[i]!;
    const dy = sides[i + 3]! - sides[i + 1]!;
    const t = Math.min(1, Math.max(0, (px * dx + py * dy) * sides[i + 4]!));
    const away = (px - t * dx) ** 2 + (py - t * dy) ** 2;
    if (away < least) least = away;
  }
  return Math.sqrt(least);
};

/** The sum of a convex polygon and another turned by half a turn: the sides of both in the order of their directions. */
const convexSum = (fixed: readonly Point[], moving: readonly Point[]): Point[] => {
  const one = startingLowest(fixed);
  const other = startingLowest(moving.map(({ x, y }) => ({ x: -x, y: -y })));
  const sum: Point[] = [];
  let [i, j] = [0, 0];
  while (i < one.length || j < other.length) {
    const [p, q] = [one[i % one.length]!, other[j % other.length]!];
    sum.push({ x: p.x + q.x, y: p.y + q.y });
    const [nextP, nextQ] = [one[(i + 1) % one.length]!, other[(j + 1) % other.length]!];
    const turn = (nextP.x - p.x) * (nextQ.y - q.y) - (nextP.y - p.y) * (nextQ.x - q.x);
    const [isOneDone, isOtherDone] = [i >= one.length, j >= other.length];
    // Sides in one direction go together, so that the sum has no corner on a straight line.
    if (!isOneDone && (isOtherDone || turn >= 0)) i += 1;
    if (!isOtherDone && (isOneDone || turn <= 0)) j += 1;
  }
  return sum;
};

const startingLowest = (ring: readonly Point[]): Point[] => {
  const isLower = (p: Point, q: Point): boolean => p.y < q.y || (p.y === q.y && p.x < q.x);
  const lowest = ring.reduce((best, p, i) => (isLower(p, ring[best]!) ? i : best), 0);
  return [...ring.slice(lowest), ...ring.slice(0, lowest)];
};

// A corner of the border is put out by this much more than its sides, so that rounding never has it inside.
const clear = 1 + 1e-6;

const convexNoFit = (sum: readonly Point[], gap: number): NoFit => {
  const ring = sum.filter((p, i) => squaredAway(p, sum[(i + 1) % sum.length]!) > 0);
  const ways = ring.map((p, i) => wayOut(p, ring[(i + 1) % ring.length]!));
  return {
    isConvex: true,
    sides: Float64Array.from(ring.flatMap((p, i) => [ways[i]!.x, ways[i]!.y, dot(ways[i]!, p) + gap])),
    corners: Float64Array.from(
      ring.flatMap((p, i) => {
        const both = plus(ways[(i + ring.length - 1) % ring.length]!, ways[i]!);
        const { x, y } = plus(p, times(both, (2 * gap * clear) / dot(both, both)));
        return [x, y];
      }),
    ),
  };
};

const squaredAway = (p: Point, q: Point): number => dot(minus(q, p), minus(q, p));

/** Square to a side, away from what the ring goes round: it runs from x to y, so that this is to its right. */
const wayOut = (p: Point, q: Point): Point => unit({ x: q.y - p.y, y: p.x - q.x });

const unitedNoFit = (sums: readonly Point[][], gap: number): NoFit => {
  // Clipper reckons with whole numbers; below 2 to the 26 their products are exact.
  const largest = Math.max(...sums.flat().map(({ x, y }) => Math.max(Math.abs(x), Math.abs(y))));
  const steps = 2 ** 25 / largest;
  const whole = sums.map((ring) => ring.map(({ x, y }) => ({ x: Math.round(x * steps), y: Math.round(y * steps) })));
  const united = Clipper.union(whole, FillRule.NonZero);
  // Two steps more than the gap, for a corner may be rounded by one in either direction.
  const moved = Clipper.inflatePaths(united, gap * steps + 2, JoinType.Miter, EndType.Polygon);
  const rings = moved.map((ring) => ring.map(({ x, y }) => ({ x: x / steps, y: y / steps })));
  return { isConvex: false, sides: Float64Array.from(rings.flatMap(sidesOf)), corners: noCorners };
};

const noCorners = new Float64Array(0);

const sidesOf = (ring: readonly Point[]): number[] =>
  ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    return [p.x, p.y, q.x, q.y, 1 / squaredAway(p, q)];
  });
