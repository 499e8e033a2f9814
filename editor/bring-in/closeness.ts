// How far a drawn path strays from the points that it was drawn after.
import { pathLength, pointOn } from "../../kernel/geometry/arc-length.ts";
import type { Path, Span } from "../../kernel/geometry/path.ts";
import { distance, dot, minus, type Point } from "../../kernel/geometry/point.ts";
import { bettered } from "./fitted-cubics.ts";

/** Points close together on a path, its ends and joints among them, in order of travel. */
export const sampled = (path: Path): Point[] => {
  const points = [path[0]!.start];
  for (const span of path) {
    const count =
      span.kind === "line"
        ? chordSamples
        : Math.min(mostSamples, Math.max(fewestSamples, Math.ceil(handleLength(span) / apart)));
    for (let i = 1; i <= count; i += 1) points.push(pointOn(span, i / count));
  }
  return points;
};

/**
 * How far, in mm, the furthest of these points lies from a path that runs along them in the same direction; infinitely far
 * where the path is longer than the points give room for.
 */
export const straying = (path: Path, points: readonly Point[], giveUpAt: number): number => {
  const room = points.reduce((sum, p, i) => (i === 0 ? 0 : sum + distance(p, points[i - 1]!)), 0);
  // A path that swings out between the points and comes back is longer than they are.
  if (pathLength(path) > room * 1.01 + 0.05) return Number.POSITIVE_INFINITY;
  let worst = 0;
  let index = 0;
  let t = 0;
  for (const p of points) {
    let here = footFrom(path[index]!, p, t);
    // On to the next spans while that comes nearer.
    while (index + 1 < path.length) {
      const next = footFrom(path[index + 1]!, p, 0);
      if (next.away > here.away) break;
      index += 1;
      here = next;
    }
    t = here.t;
    worst = Math.max(worst, here.away);
    if (worst > giveUpAt) return worst;
  }
  return worst;
};

// A chord of a bent line is held at its ends and its middle: at both its direction, or that of its neighbours together, is that
// of the curve it stands for.
const chordSamples = 2;

// Cubics are looked at every 2 mm.
const apart = 2;
const fewestSamples = 8;
const mostSamples = 48;

const handleLength = (span: Extract<Span, { kind: "cubic" }>): number =>
  distance(span.start, span.startHandle) +
  distance(span.startHandle, span.endHandle) +
  distance(span.endHandle, span.end);

const footFrom = (span: Span, p: Point, from: number): { readonly t: number; readonly away: number } => {
  if (span.kind === "line") {
    const along = minus(span.end, span.start);
    const square = dot(along, along);
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(p, span.start), along) / square));
    return { t, away: distance(pointOn(span, t), p) };
  }
  // The nearest of a few places ahead, then Newton's method from there.
  let t = from;
  let away = distance(pointOn(span, t), p);
  for (let i = 1; i <= looksAhead; i += 1) {
    const next = from + ((1 - from) * i) / looksAhead;
    const off = distance(pointOn(span, next), p);
    if (off < away) [t, away] = [next, off];
  }
  for (let round = 0; round < 3; round += 1) t = bettered(span, p, t);
  return { t, away: Math.min(away, distance(pointOn(span, t), p)) };
};

const looksAhead = 8;
