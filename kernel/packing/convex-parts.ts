// Cuts a shape into convex parts: triangles by clipping ears, then parts joined again wherever what comes of it stays convex
// (S. Hertel, K. Mehlhorn 1983, "Fast triangulation of simple polygons": at most four times as many parts as must be).
import type { Point } from "../geometry/point.ts";

/** Convex parts that together are the shape inside an outline; all run from x to y, as the outline must. */
export const convexParts = (outline: readonly Point[]): Point[][] => {
  const parts: number[][] = ears(outline);
  for (let first = 0; first < parts.length; first += 1) {
    for (let second = first + 1; second < parts.length; second += 1) {
      const joined = joinedParts(outline, parts[first]!, parts[second]!);
      if (!joined) continue;
      parts[first] = joined;
      parts.splice(second, 1);
      second = first;
    }
  }
  return parts.map((part) => part.map((index) => outline[index]!));
};

// Twice the area of the triangle a, b, c; positive where it turns from x to y.
const turning = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

const ears = (outline: readonly Point[]): number[][] => {
  const rest = outline.map((_, index) => index);
  const triangles: number[][] = [];
  while (rest.length > 3) {
    const at = earIn(outline, rest);
    const corners = [rest[(at + rest.length - 1) % rest.length]!, rest[at]!, rest[(at + 1) % rest.length]!];
    if (turning(outline[corners[0]!]!, outline[corners[1]!]!, outline[corners[2]!]!) > 0) triangles.push(corners);
    rest.splice(at, 1);
  }
  return [...triangles, rest];
};

/** The corner whose triangle may be cut off and is the best rounded one; the flattest where rounding leaves none. */
const earIn = (outline: readonly Point[], rest: readonly number[]): number => {
  let best = { at: 0, worth: Number.NEGATIVE_INFINITY };
  for (let at = 0; at < rest.length; at += 1) {
    const [a, b, c] = [at + rest.length - 1, at, at + 1].map((i) => outline[rest[i % rest.length]!]!) as [
      Point,
      Point,
      Point,
    ];
    const area = turning(a, b, c);
    const isEar = area >= 0 && !rest.some((index) => isInTriangle(outline[index]!, a, b, c));
    // A corner on a straight line is cut off first: it borders nothing.
    const longest = Math.max(squared(a, b), squared(b, c), squared(c, a));
    const worth = isEar ? (area === 0 ? Number.POSITIVE_INFINITY : area / longest) : -1e9 - Math.abs(area);
    if (worth > best.worth) best = { at, worth };
  }
  return best.at;
};

const squared = (a: Point, b: Point): number => (a.x - b.x) ** 2 + (a.y - b.y) ** 2;

/** Whether a corner other than the triangle's own lies in it, or on the side that cutting it off would leave. */
const isInTriangle = (p: Point, a: Point, b: Point, c: Point): boolean => {
  if (isSame(p, a) || isSame(p, b) || isSame(p, c)) return false;
  return turning(a, b, p) >= 0 && turning(b, c, p) >= 0 && turning(c, a, p) >= 0;
};

const isSame = (p: Point, q: Point): boolean => p.x === q.x && p.y === q.y;

/** Two parts joined across a side that they share; undefined where they share none or the joint would be hollow. */
const joinedParts = (
  outline: readonly Point[],
  first: readonly number[],
  second: readonly number[],
): number[] | undefined => {
  for (let i = 0; i < first.length; i += 1) {
    const [a, b] = [first[i]!, first[(i + 1) % first.length]!];
    const j = second.findIndex((index, k) => index === b && second[(k + 1) % second.length] === a);
    if (j < 0) continue;
    // Round the first part from b to a, then round the second from after a to before b.
    const own = [...first.slice(i + 1), ...first.slice(0, i + 1)];
    const other = Array.from({ length: second.length - 2 }, (_, k) => second[(j + 2 + k) % second.length]!);
    const ring = [...own, ...other];
    return isConvex(outline, ring) ? ring : undefined;
  }
  return undefined;
};

const isConvex = (outline: readonly Point[], ring: readonly number[]): boolean =>
  ring.every((index, i) => {
    const [next, after] = [ring[(i + 1) % ring.length]!, ring[(i + 2) % ring.length]!];
    return turning(outline[index]!, outline[next]!, outline[after]!) >= 0;
  });
