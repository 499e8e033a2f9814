// Cutting spans and paths. The two sides of a cut share its point to the last bit, so outlines stay closed.
import { pathLength, pointAt, pointOn, positionAt } from "./arc-length.ts";
import type { Path, Span } from "./path.ts";
import { reversed, straight } from "./path.ts";
import type { Point } from "./point.ts";
import { between } from "./point.ts";

/** A span cut at t, strictly between 0 and 1; both parts keep the pivot. */
export const splitSpan = (span: Span, t: number): [Span, Span] => [stretch(span, 0, t), stretch(span, t, 1)];

/** A path cut at an arc length in mm; a side is missing where the cut lies within 1e-9 mm of that end. */
export const splitAt = (path: Path, s: number): [Path | undefined, Path | undefined] => {
  const length = pathLength(path);
  if (s <= endTolerance) return [undefined, path];
  if (s >= length - endTolerance) return [path, undefined];
  return [part(path, 0, s), part(path, s, length)];
};

/** The stretch of a span from one t to a greater one; it keeps the pivot. */
export const stretch = (span: Span, low: number, high: number): Span => {
  if (low === 0 && high === 1) return span;
  // Cut points come from pointOn alone; the halving below would round them differently on the two sides.
  const start = pointOn(span, low);
  const end = pointOn(span, high);
  if (span.kind === "line") return { ...span, start, end };
  const { startHandle, endHandle } = handlesUpTo(span.start, span.startHandle, span.endHandle, span.end, low, high);
  return { ...span, start, startHandle, endHandle, end };
};

/**
 * The part of a path between two arc lengths in mm, travelled from the first to the second, so the other way when the
 * first is greater; a line of no length where they agree.
 */
export const part = (path: Path, from: number, to: number): Path => {
  if (from > to) return reversed(part(path, to, from));
  const first = positionAt(path, from);
  const last = positionAt(path, to);
  const spans: Span[] = [];
  for (let index = first.index; index <= last.index; index += 1) {
    const low = index === first.index ? first.t : 0;
    const high = index === last.index ? last.t : 1;
    if (low < high) spans.push(stretch(path[index]!, low, high));
  }
  return spans.length > 0 ? spans : straight(pointAt(path, from), pointAt(path, to));
};

const endTolerance = 1e-9;

// De Casteljau's scheme with a t of its own in each round (the cubic's polar form): the handle at the start uses the
// lower t twice and the higher once, the one at the end the other way about.
const handlesUpTo = (
  a: Point,
  b: Point,
  c: Point,
  d: Point,
  low: number,
  high: number,
): { startHandle: Point; endHandle: Point } => {
  const polar = (t: number, u: number, v: number): Point => {
    const [ab, bc, cd] = [between(a, b, t), between(b, c, t), between(c, d, t)];
    return between(between(ab, bc, u), between(bc, cd, u), v);
  };
  return { startHandle: polar(low, low, high), endHandle: polar(low, high, high) };
};
