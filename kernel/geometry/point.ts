// Points and free vectors on the flat table: x to the right, y down, millimetres.
// A vector is a Point too; which of the two is meant is said by the name.

/** A place on the table, or a free vector; millimetres, y down. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Within this distance, in mm, two places count as the same spot ("on an edge", "meeting"). */
export const sameSpotTolerance = 0.01;

export const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });
export const minus = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });
export const times = (v: Point, factor: number): Point => ({ x: v.x * factor, y: v.y * factor });

/** The point `ratio` of the way from a to b; 0 gives a, 1 gives b exactly. */
export const between = (a: Point, b: Point, ratio: number): Point => ({
  x: a.x * (1 - ratio) + b.x * ratio,
  y: a.y * (1 - ratio) + b.y * ratio,
});

export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Positive when b lies clockwise of a as seen on the page (y down). */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const size = (v: Point): number => Math.sqrt(v.x * v.x + v.y * v.y);
export const distance = (a: Point, b: Point): number => size(minus(a, b));
export const sameSpot = (a: Point, b: Point, within = sameSpotTolerance): boolean => distance(a, b) <= within;

/** The vector of length 1 in the direction of v; a vector of no length stays as it is. */
export const unit = (v: Point): Point => {
  const length = size(v);
  return length === 0 ? v : times(v, 1 / length);
};

/** v turned a quarter turn clockwise on the page: right becomes down. */
export const quarterTurn = (v: Point): Point => ({ x: -v.y, y: v.x });
