// No step may leave a piece with points off the end of the table, with more curves than any garment has, or with an allowance
// that no garment has.
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
  for (const [name, allowance] of now.allowances) {
    if (before.allowances.get(name) !== allowance) checkAllowance(name, allowance.width);
  }
  if (now.grain !== before.grain && now.grain?.kind === "line") [now.grain.from, now.grain.to].forEach(checkPoint);
  if (now.notches !== before.notches) for (const { point } of now.notches) checkPoint(point);
  if (now.drills !== before.drills) for (const { point } of now.drills) checkPoint(point);
  if (now.labels !== before.labels) for (const { at } of now.labels) if (at) checkPoint(at);
  for (const [name, dart] of now.darts) {
    if (before.darts.get(name) !== dart)
      [dart.first, dart.second, dart.tip, dart.lower ?? dart.tip].forEach(checkPoint);
  }
  if (now !== before) checkSize(now);
  const withIt = spans + ownSpans(now);
  if (withIt > limits.curveSpans) {
    throw new LimitReached(
      "limit-spans",
      `This recipe draws more than ${limits.curveSpans} lines and curves, and working it stops here.`,
    );
  }
  return withIt;
};

/**
 * What a step on a piece costs beside being a step: nothing as long as no outline is altered, else the square of the lines and
 * curves in it. Every alteration, and every check of what came of it, holds each of them against each.
 */
export const effortOf = (now: Piece, before?: Piece): number => {
  if (before && now.edges === before.edges && now.outline === before.outline) return 0;
  const spans = now.outline.reduce((sum, { edge }) => sum + (now.edges.get(edge)?.path.length ?? 0), 0);
  return spans * spans;
};

/** What a piece weighs in the record: a name as one, and four marks as much as a name. */
export const weightOf = (piece: Piece): number => {
  const named = [piece.edges, piece.places, piece.darts, piece.allowances];
  const marks = [piece.notches, piece.drills, piece.labels, piece.takeUps, piece.keeps, piece.hinges];
  return named.reduce((sum, { size }) => sum + size, 0) + marks.reduce((sum, { length }) => sum + length, 0) / 4;
};

/** How many lines and curves a piece has that its source does not share. */
export const ownSpans = ({ edges, source }: Piece): number => {
  let spans = 0;
  for (const [name, { path }] of edges) if (source?.edges.get(name)?.path !== path) spans += path.length;
  return spans;
};

/** A single piece may be so heavy that every line below would be slow, long before the whole recipe is. */
const checkSize = (piece: Piece): void => {
  const spans = [...piece.edges.values()].reduce((sum, { path }) => sum + path.length, 0);
  if (spans > limits.pieceSpans)
    throw new Problem(
      "limit-piece",
      `A piece has at most ${limits.pieceSpans} lines and curves, and ${piece.name} would have ${spans}.`,
      { hint: "Draw it with fewer places to pass through." },
    );
  const { notches, drills, labels, takeUps, keeps, darts } = piece;
  const marks = [notches, drills, labels, takeUps, keeps].reduce((sum, { length }) => sum + length, darts.size);
  if (marks > limits.marks)
    throw new Problem(
      "limit-marks",
      `A piece has at most ${limits.marks} notches, drill holes, labels and other marks, and ${piece.name} would have ${marks}.`,
    );
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

const checkAllowance = (edge: string, width: number): void => {
  if (width <= limits.allowance) return;
  throw new Problem(
    "limit-allowance",
    `The allowance of ${edge} is wider than ${limits.allowance / 1000} m, and an allowance is a matter of centimeters.`,
    { hint: "Write the width that is sewn or turned in." },
  );
};
