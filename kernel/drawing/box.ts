// A turned rectangle on the paper, and how much room it has among lines.
import type { Point } from "../geometry/point.ts";
import { cos, sin } from "../geometry/trig.ts";

export interface Box {
  readonly center: Point;
  /** How far its long side is turned from level, radians, clockwise. */
  readonly turn: number;
  /** Half its width and height, mm. */
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/** A bent line as the points it goes through. */
export type Line = readonly Point[];

/** The point that lies so far right and down from a place, as seen by one whose page is turned about it. */
export const inTurned = (about: Point, turn: number, { x, y }: Point): Point => ({
  x: about.x + x * cos(turn) - y * sin(turn),
  y: about.y + x * sin(turn) + y * cos(turn),
});

/** The four corners of a box and the first again. */
export const rim = ({ center, turn, halfWidth: w, halfHeight: h }: Box): Line =>
  [
    { x: -w, y: -h },
    { x: w, y: -h },
    { x: w, y: h },
    { x: -w, y: h },
    { x: -w, y: -h },
  ].map((corner) => inTurned(center, turn, corner));

/** Whether a spot lies inside a bent line, whose last point counts as joined to its first. */
export const isInside = (p: Point, line: Line): boolean => {
  let inside = false;
  for (let i = 0; i < line.length; i += 1) {
    const a = line[i]!;
    const b = line[(i + 1) % line.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
  }
  return inside;
};

/** By what factor a box could grow about its middle before it touches a line; under 1 it lies over one. */
export const room = (box: Box, lines: readonly Line[]): number => {
  const seen = asSeenBy(box);
  const reach = Math.sqrt(box.halfWidth * box.halfWidth + box.halfHeight * box.halfHeight);
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    for (const run of runsOf(line)) {
      // A spot that many times as far off as the corners is out of the box that has grown as many times.
      if (farness(run, box.center) > (least + rounding) * reach) continue;
      let a = seen(line[run.first]!);
      for (let i = run.first + 1; i <= run.last; i += 1) {
        const b = seen(line[i]!);
        least = Math.min(least, squareDistance(a, b));
        a = b;
      }
    }
  }
  return least;
};

// Far below anything that is drawn, and far above what rounding can do.
const rounding = 1e-6;

/** A stretch of a line from one of its points to another, and the upright box around it. */
interface Run {
  readonly first: number;
  readonly last: number;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** A line cut into short stretches, so that those far off need no closer look. */
export const runsOf = (line: Line): readonly Run[] => {
  const known = runsBefore.get(line);
  if (known) return known;
  const runs: Run[] = [];
  for (let first = 0; first < line.length - 1; first += runLength) {
    const last = Math.min(first + runLength, line.length - 1);
    let { x: left, y: top } = line[first]!;
    let [right, bottom] = [left, top];
    for (let i = first + 1; i <= last; i += 1) {
      const { x, y } = line[i]!;
      if (x < left) left = x;
      if (x > right) right = x;
      if (y < top) top = y;
      if (y > bottom) bottom = y;
    }
    runs.push({ first, last, left, top, right, bottom });
  }
  runsBefore.set(line, runs);
  return runs;
};

const runLength = 8;
const runsBefore = new WeakMap<Line, readonly Run[]>();

/** How far a place lies from the box around a stretch; 0 inside. */
const farness = ({ left, top, right, bottom }: Run, { x, y }: Point): number => {
  const [dx, dy] = [Math.max(left - x, x - right, 0), Math.max(top - y, y - bottom, 0)];
  return Math.sqrt(dx * dx + dy * dy);
};

/** A question that is asked of many places: by what factor a unit square about the place could grow before it touches a line. */
export const squareRoom = (lines: readonly Line[]): ((place: Point) => number) => {
  const runs = lines.flatMap((line) =>
    runsOf(line).map((run) => ({ ...run, points: line.slice(run.first, run.last + 1) })),
  );
  // Rows of plain numbers, as this is asked tens of thousands of times for one label.
  const boxes = Float64Array.from(runs.flatMap(({ left, top, right, bottom }) => [left, top, right, bottom]));
  const spots = runs.map(({ points }) => Float64Array.from(points.flatMap(({ x, y }) => [x, y])));
  // Places asked about one after another lie near each other: what was nearest to the last rules out most of the others.
  let nearest = 0;
  return ({ x, y }) => {
    const start = nearest;
    let least = Number.POSITIVE_INFINITY;
    for (let turn = -1; turn < spots.length; turn += 1) {
      if (turn === start) continue;
      const index = turn < 0 ? start : turn;
      const row = spots[index];
      const box = 4 * index;
      const across = Math.max(boxes[box]! - x, x - boxes[box + 2]!);
      const down = Math.max(boxes[box + 1]! - y, y - boxes[box + 3]!);
      if (row === undefined || across > least + rounding || down > least + rounding) continue;
      let ax = row[0]! - x;
      let ay = row[1]! - y;
      for (let i = 2; i < row.length; i += 2) {
        const bx = row[i]! - x;
        const by = row[i + 1]! - y;
        const distance = squareDistanceOf(ax, ay, bx, by);
        if (distance < least) {
          least = distance;
          nearest = index;
        }
        ax = bx;
        ay = by;
      }
    }
    return least;
  };
};

/** Points as a box sees them: from its middle, along its sides, in half widths and half heights. */
export const asSeenBy = ({ center, turn, halfWidth, halfHeight }: Box): ((p: Point) => Point) => {
  const [c, s] = [cos(turn), sin(turn)];
  return (p) => {
    const [x, y] = [p.x - center.x, p.y - center.y];
    return { x: (x * c + y * s) / halfWidth, y: (y * c - x * s) / halfHeight };
  };
};

/** Half the side of the greatest level square about (0, 0) that the stretch from a to b stays out of. */
export const squareDistance = (a: Point, b: Point): number => squareDistanceOf(a.x, a.y, b.x, b.y);

// Plain numbers and no points: the search for the place of a label asks this a hundred thousand times.
const squareDistanceOf = (ax: number, ay: number, bx: number, by: number): number => {
  let least = Math.min(larger(ax, ay), larger(bx, by));
  // The larger of |x| and |y| along a straight line bends only where x, y, or their sum or difference is nought,
  // and it is least at one of these places or at an end.
  if (ax > 0 !== bx > 0) least = Math.min(least, along(ax, ay, bx, by, ax / (ax - bx)));
  if (ay > 0 !== by > 0) least = Math.min(least, along(ax, ay, bx, by, ay / (ay - by)));
  const lessA = ax - ay;
  const lessB = bx - by;
  if (lessA > 0 !== lessB > 0) least = Math.min(least, along(ax, ay, bx, by, lessA / (lessA - lessB)));
  const sumA = ax + ay;
  const sumB = bx + by;
  if (sumA > 0 !== sumB > 0) least = Math.min(least, along(ax, ay, bx, by, sumA / (sumA - sumB)));
  return least;
};

const along = (ax: number, ay: number, bx: number, by: number, t: number): number =>
  larger(ax + (bx - ax) * t, ay + (by - ay) * t);

const larger = (x: number, y: number): number => Math.max(Math.abs(x), Math.abs(y));
