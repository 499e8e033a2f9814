// A path is one open line made of straight spans and cubic spans that meet end to end.
// It knows its direction of travel and nothing of what it is drawn for.
import { spanLength } from "./arc-length.ts";
import type { Point } from "./point.ts";
import { cross, distance, minus, sameSpot, unit } from "./point.ts";
import { rootsOf } from "./roots.ts";
import { turnBetween } from "./trig.ts";

/** A straight stretch. */
export interface LineSpan {
  readonly kind: "line";
  readonly start: Point;
  readonly end: Point;
  /** The centre that this stretch swings about: set where a turn of the neighbouring part opened it. */
  readonly pivot?: Point;
}

/** One Bezier cubic. */
export interface CubicSpan {
  readonly kind: "cubic";
  readonly start: Point;
  readonly startHandle: Point;
  readonly endHandle: Point;
  readonly end: Point;
  /** As for a straight stretch: this cubic is (a piece of) an arc about the pivot. */
  readonly pivot?: Point;
}

export type Span = LineSpan | CubicSpan;

/** Spans in order of travel, at least one, each starting where the one before ends. */
export type Path = readonly Span[];

/** The straight span from a to b. */
export const line = (a: Point, b: Point): LineSpan => ({ kind: "line", start: a, end: b });

/** The cubic span with these four control points. */
export const cubic = (start: Point, startHandle: Point, endHandle: Point, end: Point): CubicSpan => ({
  kind: "cubic",
  start,
  startHandle,
  endHandle,
  end,
});

/** The path that is one straight line from a to b. */
export const straight = (a: Point, b: Point): Path => [line(a, b)];

/** The bent line through two points or more, in order. */
export const through = (points: readonly Point[]): Path => {
  if (points.length < 2) throw new RangeError("A bent line needs two points.");
  return points.slice(1).map((point, i) => line(points[i]!, point));
};

/** Where a path begins. */
export const startOf = (path: Path): Point => path[0]!.start;

/** Where a path ends. */
export const endOf = (path: Path): Point => path[path.length - 1]!.end;

/** The same path travelled the other way; pivots stay. */
export const reversed = (path: Path): Path => path.map(reversedSpan).reverse();

/** The vector of length 1 in which travel begins; of no length only if the whole path has none. */
export const startDirection = (path: Path): Point => {
  for (const span of path) {
    const direction = spanStartDirection(span);
    if (direction.x !== 0 || direction.y !== 0) return direction;
  }
  return { x: 0, y: 0 };
};

/** The vector of length 1 in which travel ends; of no length only if the whole path has none. */
export const endDirection = (path: Path): Point => {
  for (let index = path.length - 1; index >= 0; index -= 1) {
    const direction = spanEndDirection(path[index]!);
    if (direction.x !== 0 || direction.y !== 0) return direction;
  }
  return { x: 0, y: 0 };
};

/** The vector of length 1 in which a span begins, also where its first handle lies on its start. */
export const spanStartDirection = (span: Span): Point => {
  const others = span.kind === "line" ? [] : [span.startHandle, span.endHandle];
  return unit(minus(firstApart(span.start, others) ?? span.end, span.start));
};

/** The vector of length 1 in which a span ends, also where its last handle lies on its end. */
export const spanEndDirection = (span: Span): Point => {
  const others = span.kind === "line" ? [] : [span.endHandle, span.startHandle];
  return unit(minus(span.end, firstApart(span.end, others) ?? span.start));
};

/** The path with every point and every pivot moved by one rule, which should keep straight lines straight. */
export const mapped = (path: Path, move: (p: Point) => Point): Path =>
  path.map((span) => {
    const pivot = span.pivot && { pivot: move(span.pivot) };
    if (span.kind === "line") return { kind: "line", start: move(span.start), end: move(span.end), ...pivot };
    return {
      kind: "cubic",
      start: move(span.start),
      startHandle: move(span.startHandle),
      endHandle: move(span.endHandle),
      end: move(span.end),
      ...pivot,
    };
  });

/** Paths one after the other as one: a start on the same spot as the end before it moves onto it, a gap gets a line. */
export const joined = (paths: readonly Path[]): Path => {
  const spans: Span[] = [];
  for (const path of paths) {
    const last = spans[spans.length - 1];
    const [first, ...others] = path;
    if (first === undefined) continue;
    if (last === undefined || (last.end.x === first.start.x && last.end.y === first.start.y)) spans.push(first);
    else if (sameSpot(last.end, first.start)) spans.push({ ...first, start: last.end });
    else spans.push(line(last.end, first.start), first);
    spans.push(...others);
  }
  return spans;
};

/** A place inside a path where the direction jumps. */
export interface Corner {
  /** The corner lies between the span before this one and this one. */
  readonly index: number;
  /** Its arc length from the start of the path, mm. */
  readonly at: number;
  /** The turn there, radians, positive clockwise on the page. */
  readonly turn: number;
}

/** The corners inside a path that turn by more than an angle in radians, in order of travel. */
export const corners = (path: Path, over: number): Corner[] => {
  const found: Corner[] = [];
  let at = 0;
  let arriving: Point | undefined;
  path.forEach((span, index) => {
    const leaving = spanStartDirection(span);
    // A span of no length has no direction and makes no corner of its own.
    if (leaving.x === 0 && leaving.y === 0) return;
    const turn = arriving === undefined ? 0 : turnBetween(arriving, leaving);
    if (Math.abs(turn) > over) found.push({ index, at, turn });
    arriving = spanEndDirection(span);
    at += spanLength(span);
  });
  return found;
};

/** Whether a path keeps within a distance in mm of the straight line between its ends. */
export const isStraight = (path: Path, within: number): boolean => {
  const start = startOf(path);
  const along = unit(minus(endOf(path), start));
  const closed = along.x === 0 && along.y === 0;
  const off = (p: Point): number => (closed ? distance(p, start) : cross(along, minus(p, start)));
  return path.every((span) => {
    if (Math.abs(off(span.start)) > within || Math.abs(off(span.end)) > within) return false;
    if (span.kind === "line") return true;
    const [a, b, c, d] = [off(span.start), off(span.startHandle), off(span.endHandle), off(span.end)];
    if (closed) return b <= within && c <= within;
    // The curve is farthest off where the slope of its distance is nought.
    return rootsOf([b - a, c - b, d - c]).every((t) => {
      const u = 1 - t;
      return Math.abs(a * u * u * u + 3 * b * u * u * t + 3 * c * u * t * t + d * t * t * t) <= within;
    });
  });
};

const reversedSpan = (span: Span): Span =>
  span.kind === "line"
    ? { ...span, start: span.end, end: span.start }
    : { ...span, start: span.end, startHandle: span.endHandle, endHandle: span.startHandle, end: span.start };

// Nearer than this (mm) a handle lies on its end, and the difference of the two has no direction to speak of.
const handleOnEnd = 1e-9;

const firstApart = (from: Point, others: readonly Point[]): Point | undefined =>
  others.find((other) => distance(from, other) > handleOnEnd);
