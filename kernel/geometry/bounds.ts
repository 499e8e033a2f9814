// The upright box around paths, by the curves themselves and not by their handles.
import { pointOn } from "./arc-length.ts";
import type { Path, Span } from "./path.ts";
import type { Point } from "./point.ts";
import { rootsOf } from "./roots.ts";

/** An upright box; millimetres, y down, so top is the smaller y. */
export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** The smallest upright box that holds all the paths; without any path it is inside out, from infinity down. */
export const bounds = (paths: readonly Path[]): Bounds => {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const path of paths) {
    for (const span of path) {
      for (const p of outermost(span)) {
        left = Math.min(left, p.x);
        top = Math.min(top, p.y);
        right = Math.max(right, p.x);
        bottom = Math.max(bottom, p.y);
      }
    }
  }
  return { left, top, right, bottom };
};

const outermost = (span: Span): Point[] => {
  const ends = [span.start, span.end];
  if (span.kind === "line") return ends;
  const { start, startHandle, endHandle, end } = span;
  const upright = rootsOf([startHandle.x - start.x, endHandle.x - startHandle.x, end.x - endHandle.x]);
  const level = rootsOf([startHandle.y - start.y, endHandle.y - startHandle.y, end.y - endHandle.y]);
  return [...ends, ...[...upright, ...level].map((t) => pointOn(span, t))];
};
