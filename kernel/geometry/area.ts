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
export const contains = (loop: Path, p: Point): boolean => windingAbout(loop, p) !== 0;

/** How many times a closed path runs round a point, clockwise on the page positive; on the path itself either of two. */
export const windingAbout = (loop: Path, p: Point): number => {
  // Counts, with sign, how often the loop passes the level line to the right of p.
  let winding = closingPassage(loop, p);
  for (const span of loop) winding += passages(span, p);
  return winding;
};

const closingPassage = (loop: Path, p: Point): number => passages(line(endOf(loop), startOf(loop)), p);

const passages = (span: Span, p: Point): number => {
  const { start, end } = span;
  const [b, c] = span.kind === "line" ? [start, end] : [span.startHandle, span.endHandle];
  if (Math.max(start.x, b.x, c.x, end.x) < p.x) return 0;
  const [startsAbove, endsAbove] = [start.y <= p.y, end.y <= p.y];
  // A span that keeps above or below passes nothing; of one wholly to the right only its two ends count.
  if (Math.min(start.y, b.y, c.y, end.y) > p.y || Math.max(start.y, b.y, c.y, end.y) < p.y) return 0;
  if (Math.min(start.x, b.x, c.x, end.x) > p.x) return Number(startsAbove) - Number(endsAbove);
  let passed = 0;
  const turns = [0, ...levelParameters(span), 1];
  for (let i = 1; i < turns.length; i += 1) {
    const [low, high] = [turns[i - 1]!, turns[i]!];
    const lowAbove = pointOn(span, low).y <= p.y;
    const highAbove = pointOn(span, high).y <= p.y;
    if (lowAbove === highAbove) continue;
    if (pointOn(span, passingLevel(span, low, high, p.y)).x > p.x) passed += lowAbove ? 1 : -1;
  }
  return passed;
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
