// As few cubics as keep close to a row of points: P. J. Schneider, "An Algorithm for Automatically Fitting Digitized Curves",
// in Graphics Gems (1990), 612-626, with the handle lengths found by Gauss and Newton.
import { pointOn } from "../../kernel/geometry/arc-length.ts";
import { type CubicSpan, cubic } from "../../kernel/geometry/path.ts";
import { distance, dot, minus, type Point, plus, quarterTurn, times, unit } from "../../kernel/geometry/point.ts";

/**
 * Cubics through the first and the last point that leave and arrive in given directions of length 1, none further than `within`,
 * mm, from a point. Where the paper halves at the worst point, each cubic here reaches as far as one can, which takes fewer.
 */
export const fittedCubics = (
  points: readonly Point[],
  leaving: Point,
  arriving: Point,
  within: number,
): CubicSpan[] => {
  const spans: CubicSpan[] = [];
  const last = points.length - 1;
  let start = 0;
  let direction = leaving;
  while (start < last) {
    const from = start;
    const fitTo = (end: number): CubicSpan | undefined =>
      oneCubic(points.slice(from, end + 1), direction, end === last ? arriving : acrossAt(points, end), within);
    const { end, span } = furthestFit(from, last, fitTo);
    // Two neighbours can always be joined, however they lie.
    spans.push(
      span ?? alongChord(points[from]!, points[end]!, direction, end === last ? arriving : acrossAt(points, end)),
    );
    start = end;
    direction = acrossAt(points, end);
  }
  return spans;
};

/** The furthest end that one cubic reaches from a start: all the way, or else in steps that double, then halve again. */
const furthestFit = (
  start: number,
  last: number,
  fitTo: (end: number) => CubicSpan | undefined,
): { readonly end: number; readonly span: CubicSpan | undefined } => {
  const whole = last - start <= mostAtOnce ? fitTo(last) : undefined;
  if (whole) return { end: last, span: whole };
  let end = start + 1;
  let span: CubicSpan | undefined;
  let beyond = last + 1;
  for (let step = 4; end < last; step *= 2) {
    const next = Math.min(last, start + step);
    const found = fitTo(next);
    if (!found) {
      beyond = next;
      break;
    }
    end = next;
    span = found;
  }
  while (beyond - end > 1) {
    const middle = (end + beyond) >> 1;
    const found = middle <= last ? fitTo(middle) : undefined;
    if (found) {
      end = middle;
      span = found;
    } else beyond = middle;
  }
  return { end, span };
};

// Points that are tried at once; more would be looked at again and again, once for each cubic.
const mostAtOnce = 2000;

/** The direction of travel at a point between two others. */
const acrossAt = (points: readonly Point[], at: number): Point => {
  const across = unit(minus(points[Math.min(at + 1, points.length - 1)]!, points[at - 1]!));
  return across.x === 0 && across.y === 0 ? unit(minus(points[at]!, points[at - 1]!)) : across;
};

/** One cubic as near to all the points as that; undefined where there is none. */
const oneCubic = (points: readonly Point[], leaving: Point, arriving: Point, within: number): CubicSpan | undefined => {
  if (points.length === 2) return alongChord(points[0]!, points[1]!, leaving, arriving);
  let parameters = byChords(points);
  let span = leastSquares(points, parameters, leaving, arriving);
  let least = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round += 1) {
    const now = span;
    parameters = parameters.map((t, i) => bettered(now, points[i]!, bettered(now, points[i]!, t)));
    const off = furthestOff(points, parameters, now);
    if (off <= within) return now;
    // Where a round no longer brings it nearer by a tenth, none will; the first ones may go astray.
    if (round > 3 && off > least * 0.9) return undefined;
    least = Math.min(least, off);
    span = adjusted(now, points, parameters, leaving, arriving);
  }
  return undefined;
};

const rounds = 12;

// A handle shorter than this share of the chord hides a sharp bend at its end, and no hand draws one.
const shortestHandle = 0.08;

/**
 * The cubic with the handle lengths at which the distances square to the curve are least, to first order: the method of
 * Gauss and Newton, which W. Wang, H. Pottmann and Y. Liu call tangent distance minimization (ACM Transactions on Graphics 25,
 * 2006). Least squares at fixed parameters, as in the paper of Schneider, come there too, but by very small steps.
 */
const adjusted = (
  span: CubicSpan,
  points: readonly Point[],
  parameters: readonly number[],
  leaving: Point,
  arriving: Point,
): CubicSpan => {
  let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
  points.forEach((p, i) => {
    const u = parameters[i]!;
    const v = 1 - u;
    const square = quarterTurn(unit(speed(span, u)));
    const [a0, a1] = [3 * u * v * v * dot(leaving, square), -3 * u * u * v * dot(arriving, square)];
    const rest = dot(minus(p, pointOn(span, u)), square);
    c00 += a0 * a0;
    c01 += a0 * a1;
    c11 += a1 * a1;
    x0 += a0 * rest;
    x1 += a1 * rest;
  });
  const whole = c00 * c11 - c01 * c01;
  if (!(Math.abs(whole) > 0)) return span;
  const most = distance(span.start, span.end);
  const [first, second] = [(x0 * c11 - x1 * c01) / whole, (c00 * x1 - c01 * x0) / whole].map((step) =>
    Math.min(most, Math.max(-most, step)),
  );
  const least = most * shortestHandle;
  const reach = Math.max(least, distance(span.start, span.startHandle) + first!);
  const back = Math.max(least, distance(span.end, span.endHandle) + second!);
  return cubic(span.start, plus(span.start, times(leaving, reach)), minus(span.end, times(arriving, back)), span.end);
};

/** Without points between them, the handles are a third of the chord. */
const alongChord = (start: Point, end: Point, leaving: Point, arriving: Point): CubicSpan => {
  const third = distance(start, end) / 3;
  return cubic(start, plus(start, times(leaving, third)), minus(end, times(arriving, third)), end);
};

const byChords = (points: readonly Point[]): number[] => {
  const along = [0];
  for (let i = 1; i < points.length; i += 1) along.push(along[i - 1]! + distance(points[i]!, points[i - 1]!));
  return along.map((s) => s / along.at(-1)!);
};

/** The two handle lengths with the least sum of squared distances at these parameters. */
const leastSquares = (
  points: readonly Point[],
  parameters: readonly number[],
  leaving: Point,
  arriving: Point,
): CubicSpan => {
  const [start, end] = [points[0]!, points.at(-1)!];
  const back = times(arriving, -1);
  let [c00, c01, c11, x0, x1] = [0, 0, 0, 0, 0];
  points.forEach((p, i) => {
    const u = parameters[i]!;
    const v = 1 - u;
    const [b0, b1, b2, b3] = [v * v * v, 3 * u * v * v, 3 * u * u * v, u * u * u];
    const [a0, a1] = [times(leaving, b1), times(back, b2)];
    c00 += dot(a0, a0);
    c01 += dot(a0, a1);
    c11 += dot(a1, a1);
    const rest = minus(p, plus(times(start, b0 + b1), times(end, b2 + b3)));
    x0 += dot(a0, rest);
    x1 += dot(a1, rest);
  });
  const whole = c00 * c11 - c01 * c01;
  const chord = distance(start, end);
  const [first, second] = [(x0 * c11 - x1 * c01) / whole, (c00 * x1 - c01 * x0) / whole];
  // Handles of no length, or turned about, come of points that are too few or all in one line.
  if (!(first > chord * shortestHandle) || !(second > chord * shortestHandle))
    return alongChord(start, end, leaving, arriving);
  return cubic(start, plus(start, times(leaving, first)), plus(end, times(back, second)), end);
};

const furthestOff = (points: readonly Point[], parameters: readonly number[], span: CubicSpan): number =>
  points.reduce((worst, p, i) => Math.max(worst, distance(pointOn(span, parameters[i]!), p)), 0);

/** One step of Newton's method toward the foot of a point on a cubic, kept on it. */
export const bettered = (span: CubicSpan, p: Point, t: number): number => {
  const { start, startHandle, endHandle, end } = span;
  const first = speed(span, t);
  const [before, behind] = [
    plus(minus(start, times(startHandle, 2)), endHandle),
    plus(minus(startHandle, times(endHandle, 2)), end),
  ];
  const second = times(plus(times(before, 1 - t), times(behind, t)), 6);
  const off = minus(pointOn(span, t), p);
  const slope = dot(first, first) + dot(off, second);
  if (!(slope > 0)) return t;
  return Math.min(1, Math.max(0, t - dot(off, first) / slope));
};

/** The derivative of a cubic. */
const speed = ({ start, startHandle, endHandle, end }: CubicSpan, t: number): Point => {
  const v = 1 - t;
  const [ab, bc, cd] = [minus(startHandle, start), minus(endHandle, startHandle), minus(end, endHandle)];
  return times(plus(plus(times(ab, v * v), times(bc, 2 * v * t)), times(cd, t * t)), 3);
};
