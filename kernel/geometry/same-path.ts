// Whether two paths run alike.
import type { Path, Span } from "./path.ts";
import { distance, type Point } from "./point.ts";

/** Whether two paths are made of the same spans, no end or handle being further off than this many mm. */
export const samePath = (one: Path, other: Path, within: number): boolean => {
  if (one === other) return true;
  return one.length === other.length && one.every((span, index) => sameSpan(span, other[index]!, within));
};

const sameSpan = (one: Span, other: Span, within: number): boolean => {
  const [points, others] = [controls(one), controls(other)];
  return points.length === others.length && points.every((point, index) => distance(point, others[index]!) <= within);
};

const controls = (span: Span): readonly Point[] =>
  span.kind === "line" ? [span.start, span.end] : [span.start, span.startHandle, span.endHandle, span.end];
