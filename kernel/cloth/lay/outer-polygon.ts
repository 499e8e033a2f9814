// A bent line of few corners round closed paths, which nowhere cuts into them: what is laid on cloth in place of the curves, so
// that no piece comes out smaller than it is. Its corners are taken away one by one, always outward.
import { Clipper, EndType, FillRule, JoinType } from "clipper2-ts";
import { flattened } from "../../geometry/area.ts";
import type { Path } from "../../geometry/path.ts";
import { cross, distance, dot, minus, type Point, plus, times } from "../../geometry/point.ts";

/** The outer rim of all that some closed paths go round, holes filled in, as a fine bent line that is nowhere inside it. */
export const rimOf = (loops: readonly Path[]): Point[] => {
  const rings = loops.map((loop) =>
    flattened(loop, fine).map(({ x, y }) => ({ x: Math.round(x * steps), y: Math.round(y * steps) })),
  );
  const united = Clipper.union(rings, FillRule.NonZero);
  const moved = Clipper.inflatePaths(united, out * steps, JoinType.Miter, EndType.Polygon);
  // Moved out, parts that meet along a line are one; a path that crosses itself may leave crumbs beside the piece.
  const largest = moved.reduce<Point[]>(
    (best, ring) => (Math.abs(Clipper.area(ring)) > Math.abs(Clipper.area(best)) ? ring : best),
    [],
  );
  return apart(largest.map(({ x, y }) => ({ x: x / steps, y: y / steps })));
};

// Moving out leaves two or three corners in one spot wherever the line is hollow; of those nearer than this, mm, one stays. It
// is less than what the line was moved out by.
const oneSpot = 0.004;

const apart = (ring: readonly Point[]): Point[] =>
  ring.filter((p, i) => distance(p, ring[(i + ring.length - 1) % ring.length]!) > oneSpot);

// How near, in mm, the fine line follows the curves; moved out by that and by what rounding takes, it leaves nothing of them
// outside.
const fine = 0.005;
const out = 0.006;

// Clipper reckons with whole numbers; this many steps to a mm.
const steps = 1000;

/**
 * A closed bent line with as few corners as may be that holds the given one, which runs clockwise on the page. No corner taken
 * away moves the line by more than so many mm.
 */
export const outerPolygon = (ring: readonly Point[], within: number): Point[] => {
  const corners = ring.filter((p, i) => distance(p, ring[(i + 1) % ring.length]!) > 0);
  // The slightest changes first, so that the corners that are left stand where the line bends most.
  for (let halving = 4; halving >= 0; halving -= 1) while (sweep(corners, within / 2 ** halving));
  return corners;
};

const fewestCorners = 4;

/** Takes away every corner that may go at so little a change; whether there was one. */
const sweep = (corners: Point[], within: number): boolean => {
  let isChanged = false;
  for (let at = 0; at < corners.length && corners.length > fewestCorners; at += 1) {
    const change = changeAt(corners, at);
    if (!change || change.by > within) continue;
    isChanged = true;
    if (change.put === undefined) corners.splice(at, 1);
    else {
      corners[at] = change.put;
      corners.splice((at + 1) % corners.length, 1);
    }
  }
  return isChanged;
};

/** A corner to leave out, or to put in place of itself and the next one, and how far outward that goes, mm. */
interface Change {
  readonly put?: Point;
  readonly by: number;
}

/** A hollow corner is left out; a side between two that stand out gives way to its neighbours carried on until they meet. */
const changeAt = (corners: readonly Point[], at: number): Change | undefined => {
  const [before, own, next, after] = [-1, 0, 1, 2].map((step) => cornerAt(corners, at + step)) as [
    Point,
    Point,
    Point,
    Point,
  ];
  const [arriving, side, leaving] = [minus(own, before), minus(next, own), minus(after, next)];
  const turn = cross(arriving, side);
  if (turn <= 0) {
    const chord = minus(next, before);
    // A hair of a spike, or what turns back on itself, is left to the neighbours.
    if (dot(arriving, side) < 0) return undefined;
    return { by: Math.abs(cross(chord, arriving)) / Math.max(distance(before, next), 1e-9) };
  }
  const bend = cross(arriving, leaving);
  if (cross(side, leaving) <= 0 || bend <= 0) return undefined;
  const put = plus(own, times(arriving, cross(side, leaving) / bend));
  return { put, by: Math.abs(cross(side, minus(put, own))) / distance(own, next) };
};

const cornerAt = (corners: readonly Point[], at: number): Point => corners[(at + corners.length) % corners.length]!;
