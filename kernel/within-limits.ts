// No step may leave a piece with points off the end of the table, or with more curves than any garment has.
import { limits } from "../grammar/limits.ts";
import type { Path } from "./geometry/path.ts";
import type { Point } from "./geometry/point.ts";
import { LimitReached, Problem } from "./problem.ts";
import type { Piece } from "./working.ts";

/** Looks at what a step changed; a Problem where a point lies beyond the table or is no number at all. */
export const withinLimits = (now: Piece, before: Piece): void => {
  let spans = 0;
  for (const [name, edge] of now.edges) {
    spans += edge.path.length;
    if (before.edges.get(name)?.path !== edge.path) checkPath(edge.path);
  }
  if (spans > limits.curveSpans) {
    throw new LimitReached("limit-spans", `${now.name} has more than ${limits.curveSpans} lines and curves.`);
  }
  for (const [name, place] of now.places) {
    if (before.places.get(name) !== place) checkPoint(place.point);
  }
};

const checkPath = (path: Path): void => {
  for (const span of path) {
    checkPoint(span.start);
    checkPoint(span.end);
    if (span.kind === "cubic") {
      checkPoint(span.startHandle);
      checkPoint(span.endHandle);
    }
  }
};

const checkPoint = ({ x, y }: Point): void => {
  if (Math.abs(x) <= limits.coordinate && Math.abs(y) <= limits.coordinate) return;
  throw new Problem(
    "limit-table",
    `This reaches further than ${limits.coordinate / 1000} m from the middle of the table.`,
  );
};
