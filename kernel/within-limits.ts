// No step may leave a piece with points off the end of the table, or with more curves than any garment has.
import { limits } from "../grammar/limits.ts";
import type { Path } from "./geometry/path.ts";
import type { Point } from "./geometry/point.ts";
import { LimitReached, Problem } from "./problem.ts";
import type { Piece } from "./working.ts";

/** Looks at what a step changed; `spans` counts the lines and curves of the pieces made so far, and what comes back those of this one too. */
export const withinLimits = (now: Piece, before: Piece, spans: number): number => {
  for (const [name, edge] of now.edges) {
    if (before.edges.get(name)?.path !== edge.path) checkPath(edge.path);
  }
  for (const [name, place] of now.places) {
    if (before.places.get(name) !== place) checkPoint(place.point);
  }
  const withIt = spans + ownSpans(now);
  if (withIt > limits.curveSpans) {
    throw new LimitReached(
      "limit-spans",
      `This recipe draws more than ${limits.curveSpans} lines and curves, and working it stops here.`,
    );
  }
  return withIt;
};

/** What a piece weighs in the record: a name as one, and four marks as much as a name. */
export const weightOf = (piece: Piece): number => {
  const named = [piece.edges, piece.places, piece.darts, piece.allowances];
  const marks = [piece.notches, piece.drills, piece.labels, piece.takeUps, piece.keeps, piece.hinges];
  return named.reduce((sum, { size }) => sum + size, 0) + marks.reduce((sum, { length }) => sum + length, 0) / 4;
};

/** How many lines and curves a piece has that its source does not share. */
export const ownSpans = ({ edges, source }: Piece): number =>
  [...edges].reduce((sum, [name, { path }]) => (source?.edges.get(name)?.path === path ? sum : sum + path.length), 0);

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
