// The piece as it was before it was altered: a quiet line under the new one.
import type { Path, Span } from "../geometry/path.ts";
import { distance, type Point } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import type { Stroke } from "./drawing.ts";

/** The sewing lines of the piece this one was copied from, where they ran otherwise. */
export const beforeLines = ({ source, edges }: Piece): Stroke[] =>
  (source ? walked(source) : [])
    .filter(({ edge }) => !runsAs(edge.path, edges.get(edge.name)?.path))
    .map(({ edge }) => ({ kind: "before", path: edge.path, where: edge.drawnBy }));

// Unmoved within this, in mm, a line need not be drawn twice.
const unmoved = 0.01;

const runsAs = (before: Path, now: Path | undefined): boolean => {
  if (!now || now === before) return now !== undefined;
  const same = (a: Span, b: Span): boolean => {
    const [p, q] = [controls(a), controls(b)];
    return p.length === q.length && p.every((point, i) => distance(point, q[i]!) <= unmoved);
  };
  return before.length === now.length && before.every((span, i) => same(span, now[i]!));
};

const controls = (span: Span): Point[] =>
  span.kind === "line" ? [span.start, span.end] : [span.start, span.startHandle, span.endHandle, span.end];
