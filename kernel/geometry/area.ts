// What a closed path holds: its area and whether a point is inside. A gap between end and start counts as a straight line.
import { pointOn } from "./arc-length.ts";
import type { Path, Span } from "./path.ts";
import { endOf, line, startOf } from "./path.ts";
import type { Point } from "./point.ts";
import { cross, minus, size } from "./point.ts";
import { rootsOf } from "./roots.ts";

/** The area inside a closed path, square mm, positive when it runs clockwise on the page. */
export const signedArea = (loop: Path): number => {
  const origin = startOf(loop);
  // Half the integral of (x dy - y dx), which Green's theorem makes the area; exact for cubics.
  let twice = 0;
  for (const span of loop) {
    const a = minus(span.start, origin);
    const d = minus(span.end, origin);
    if (span.kind === "line") {
      twice += cross(a, d);
      continue;
    }
    const b = minus(span.startHandle, origin);
    const c = minus(span.endHandle, origin);
    twice +=
      (6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d)) / 10;
  }
  return twice / 2;
};

/** Whether a closed path runs round a point; a point on the path itself may count either way. */
export const contains = (loop: Path, p: Point): boolean => {
  // Counts, with sign, how often the loop passes the level line to the right of p.
  let winding = 0;
  for (const span of [...loop, line(endOf(loop), startOf(loop))]) {
    const turns = [0, ...levelParameters(span), 1];
    for (let i = 1; i < turns.length; i += 1) {
      const [low, high] = [turns[i - 1]!, turns[i]!];
      const startsAbove = pointOn(span, low).y <= p.y;
      const endsAbove = pointOn(span, high).y <= p.y;
      if (startsAbove === endsAbove) continue;
      if (pointOn(span, passingLevel(span, low, high, p.y)).x > p.x) winding += startsAbove ? 1 : -1;
    }
  }
  return winding !== 0;
};

/** Points along a path, its start and end among them, whose bent line keeps within a distance in mm of it. */
export const flattened = (path: Path, within: number): Point[] => {
  const points: Point[] = [startOf(path)];
  for (const span of path) {
    const count = span.kind === "line" ? 1 : pieceCount(span, within);
    for (let i = 1; i <= count; i += 1) points.push(pointOn(span, i / count));
  }
  return points;
};

// Where a cubic runs level, so that between two of these it only rises or only falls.
const levelParameters = (span: Span): number[] => {
  if (span.kind === "line") return [];
  const { start, startHandle, endHandle, end } = span;
  return rootsOf([startHandle.y - start.y, endHandle.y - startHandle.y, end.y - endHandle.y]).filter(
    (t) => t > 0 && t < 1,
  );
};

const passingLevel = (span: Span, from: number, to: number, y: number): number => {
  if (span.kind === "line") return (y - span.start.y) / (span.end.y - span.start.y);
  const falls = pointOn(span, from).y <= y;
  let [low, high] = [from, to];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (pointOn(span, middle).y <= y === falls) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
};

// Wang's bound: n equal steps of t keep a cubic within 6/8 of its largest second difference over n squared.
const pieceCount = (span: Extract<Span, { kind: "cubic" }>, within: number): number => {
  const bend = (a: Point, b: Point, c: Point): number => size({ x: a.x - 2 * b.x + c.x, y: a.y - 2 * b.y + c.y });
  const largest = Math.max(
    bend(span.start, span.startHandle, span.endHandle),
    bend(span.startHandle, span.endHandle, span.end),
  );
  return Math.max(1, Math.ceil(Math.sqrt((0.75 * largest) / within)));
};
