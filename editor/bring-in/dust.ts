// What a program drew and nobody meant: stretches too short to see, and points in the middle of a straight line.

import type { Path, Span } from "../../kernel/geometry/path.ts";
import { distance, minus, type Point } from "../../kernel/geometry/point.ts";
import type { PointsTold } from "./breaks.ts";

/**
 * The path without stretches too short to see, and with straight ones that go on in one line made one. A bent line with points
 * far closer than a drawing is exact loses those that tell nothing.
 */
export const withoutDust = (path: Path, told: PointsTold): Path => {
  const kept: Span[] = [];
  let between: Point[] = [];
  let swallowed = 0;
  for (const span of path) {
    const last = kept.at(-1);
    const length = reach(span);
    // Only so much in a row, or a fine line of nothing else would be lost.
    if (last && length < dust && swallowed + length < dust && !told.isTurn(span.start)) {
      kept[kept.length - 1] = { ...last, end: span.end };
      swallowed += length;
      continue;
    }
    swallowed = 0;
    if (last && goesOn(last, span, between, told)) {
      between.push(span.start);
      kept[kept.length - 1] = { ...last, end: span.end };
      continue;
    }
    between = [];
    kept.push(span);
  }
  return withoutSpecks(kept);
};

// mm; nothing that is drawn on purpose is as short as this, and with what a fit may stray it stays within a tenth.
const dust = 0.025;

// mm; two places of a recipe as near as this are nearly one spot (0.01), and no line is drawn between them.
const speck = 0.02;

/** The stretches without those that no recipe can draw: the next begins where they began. */
const withoutSpecks = (spans: readonly Span[]): Path => {
  const kept: Span[] = [];
  let start: Point | undefined;
  spans.forEach((span, i) => {
    const here = start === undefined ? span : { ...span, start };
    start = undefined;
    if (reach(here) >= speck || spans.length === 1) kept.push(here);
    else if (i < spans.length - 1) start = here.start;
    else if (kept.length > 0) kept[kept.length - 1] = { ...kept.at(-1)!, end: here.end };
  });
  return kept.length > 0 ? kept : spans;
};

/** How far a stretch gets from its start at most, about. */
const reach = (span: Span): number => {
  const points = span.kind === "cubic" ? [span.startHandle, span.endHandle, span.end] : [span.end];
  return Math.max(...points.map((p) => distance(p, span.start)));
};

const goesOn = (last: Span, span: Span, between: readonly Point[], told: PointsTold): boolean =>
  last.kind === "line" &&
  span.kind === "line" &&
  between.length < mostDropped &&
  !told.isTurn(span.start) &&
  !told.isOnCurve(span.start) &&
  [...between, span.start].every((p) => isBetween(p, last.start, span.end));

const mostDropped = 64;

// How far off a straight line, mm, a point may lie that tells nothing.
const tellsNothing = 0.004;

const isBetween = (p: Point, start: Point, end: Point): boolean => {
  const [along, to] = [minus(end, start), minus(p, start)];
  const square = along.x * along.x + along.y * along.y;
  const t = square === 0 ? 0 : (to.x * along.x + to.y * along.y) / square;
  return t > 0 && t < 1 && distance(p, { x: start.x + along.x * t, y: start.y + along.y * t }) <= tellsNothing;
};
