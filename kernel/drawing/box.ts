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

/** By what factor a box could grow about its middle before it touches a line; under 1 it lies over one. */
export const room = (box: Box, lines: readonly Line[]): number => {
  const seen = asSeenBy(box);
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    const points = line.map(seen);
    for (let i = 1; i < points.length; i += 1) least = Math.min(least, squareDistance(points[i - 1]!, points[i]!));
  }
  return least;
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
export const squareDistance = (a: Point, b: Point): number => {
  let least = Math.min(larger(a), larger(b));
  // The larger of |x| and |y| along a straight line bends only where x, y, or their sum or difference is nought,
  // and it is least at one of these places or at an end.
  const tryWhereNought = (atA: number, atB: number): void => {
    if (atA > 0 === atB > 0) return;
    const t = atA / (atA - atB);
    least = Math.min(least, larger({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }));
  };
  tryWhereNought(a.x, b.x);
  tryWhereNought(a.y, b.y);
  tryWhereNought(a.x - a.y, b.x - b.y);
  tryWhereNought(a.x + a.y, b.x + b.y);
  return least;
};

const larger = ({ x, y }: Point): number => Math.max(Math.abs(x), Math.abs(y));
