// Smooth curves through given points: J. D. Hobby, "Smooth, easy to compute interpolating splines", Discrete and
// Computational Geometry 1 (1986), in the form Knuth gave them in METAFONT (METAFONT: The Program, sections 271-301).
import type { CubicSpan, Path } from "./path.ts";
import { cubic } from "./path.ts";
import type { Point } from "./point.ts";
import { distance, minus, plus, times } from "./point.ts";
import { angleOf, cos, sin, turnBetween } from "./trig.ts";

/** A point for a smooth curve to pass, and how; angles in radians, clockwise on the page from pointing right. */
export interface Knot {
  readonly point: Point;
  /** How tight the curve is on both sides, at least 3/4; 1 where it is not given. */
  readonly tension?: number;
  /** The direction in which the curve arrives and leaves. */
  readonly heading?: number;
  /** The direction in which it arrives, where that is to differ. */
  readonly arriving?: number;
  /** The direction in which it leaves, where that is to differ. */
  readonly leaving?: number;
}

/** The smooth open curve through two knots or more, one cubic a span; a free end curls as much as its neighbour. */
export const hobbyCurve = (knots: readonly Knot[]): Path => {
  if (knots.length < 2) throw new RangeError("A smooth curve needs two knots.");
  const spans: CubicSpan[] = [];
  let start = 0;
  for (let end = 1; end < knots.length; end += 1) {
    if (!endsRun(knots, start, end)) continue;
    spans.push(...runThrough(knots.slice(start, end + 1)));
    start = end;
  }
  return spans;
};

/** The cubic that leaves one point and arrives at another in given directions (radians), with one tension for both. */
export const hobbyHandles = (
  start: Point,
  startAngle: number,
  end: Point,
  endAngle: number,
  tension = 1,
): CubicSpan => {
  const chord = angleOf(minus(end, start));
  return spanBetween(start, end, wrapped(startAngle - chord), wrapped(chord - endAngle), tension, tension);
};

/**
 * Hobby's velocity: the handle at an end as a share of the chord, from the angle theta (radians) between chord and curve
 * at this end and phi at the other, each positive where the curve lies to the same side of the chord.
 */
export const rho = (theta: number, phi: number): number => {
  const [sinTheta, cosTheta, sinPhi, cosPhi] = [sin(theta), cos(theta), sin(phi), cos(phi)];
  const skew = (sinTheta - sinPhi / 16) * (sinPhi - sinTheta / 16) * (cosTheta - cosPhi);
  const root = Math.sqrt(5);
  return (2 + Math.SQRT2 * skew) / (3 * (1 + ((root - 1) / 2) * cosTheta + ((3 - root) / 2) * cosPhi));
};

// METAFONT lets no handle be longer than four chords and no tension be below this.
const longestHandle = 4;
const leastTension = 3 / 4;

// A knot with a direction of its own ends a run: nothing on one side of it changes the other. So does a pair of knots
// on one spot, which has no chord to measure angles from.
const endsRun = (knots: readonly Knot[], start: number, end: number): boolean => {
  const knot = knots[end]!;
  const next = knots[end + 1];
  if (next === undefined || knot.heading !== undefined) return true;
  if (knot.arriving !== undefined || knot.leaving !== undefined) return true;
  return onOneSpot(knot, next) || (end === start + 1 && onOneSpot(knots[start]!, knot));
};

const onOneSpot = (a: Knot, b: Knot): boolean => distance(a.point, b.point) === 0;

// Only a run's two ends may have directions.
const runThrough = (knots: readonly Knot[]): CubicSpan[] => {
  const first = knots[0]!;
  const last = knots[knots.length - 1]!;
  if (knots.length === 2 && onOneSpot(first, last)) return [cubic(first.point, first.point, last.point, last.point)];
  const chords = knots.slice(1).map((knot, i) => minus(knot.point, knots[i]!.point));
  const turns = chords.map((chord, i) => (i === 0 ? 0 : turnBetween(chords[i - 1]!, chord)));
  turns.push(0);
  const leaving = directionAfter(first);
  const arriving = directionBefore(last);
  const thetas = anglesOffChord(
    knots,
    turns,
    leaving === undefined ? undefined : wrapped(leaving - angleOf(chords[0]!)),
    arriving === undefined ? undefined : wrapped(arriving - angleOf(chords[chords.length - 1]!)),
  );
  return chords.map((_, i) => {
    const [from, to] = [knots[i]!, knots[i + 1]!];
    const phi = -turns[i + 1]! - thetas[i + 1]!;
    return spanBetween(from.point, to.point, thetas[i]!, phi, tensionAt(from), tensionAt(to));
  });
};

// As in METAFONT, a direction given for one side only holds for both.
const directionAfter = (knot: Knot): number | undefined => knot.leaving ?? knot.heading ?? knot.arriving;
const directionBefore = (knot: Knot): number | undefined => knot.arriving ?? knot.heading ?? knot.leaving;
const tensionAt = (knot: Knot): number => Math.max(leastTension, knot.tension ?? 1);

const wrapped = (angle: number): number => angle - 2 * Math.PI * Math.ceil(angle / (2 * Math.PI) - 0.5);

/**
 * The angle between the chord ahead and the curve at each knot (at the last: the chord behind). Each inner knot gives
 * one equation, that the mock curvatures on its two sides agree; the system is tridiagonal and is solved downwards,
 * keeping theta[i] = value[i] - factor[i] * theta[i + 1].
 */
const anglesOffChord = (
  knots: readonly Knot[],
  turns: readonly number[],
  firstAngle: number | undefined,
  lastAngle: number | undefined,
): number[] => {
  const last = knots.length - 1;
  // Two free ends make a straight line, and equations that do not say so.
  if (last === 1 && firstAngle === undefined && lastAngle === undefined) return [0, 0];
  const slack = knots.map((knot) => 1 / tensionAt(knot));
  const lengths = knots.slice(1).map((knot, i) => distance(knot.point, knots[i]!.point));
  const values: number[] = [];
  const factors: number[] = [];
  if (firstAngle === undefined) {
    const factor = curlRatio(slack[0]!, slack[1]!);
    factors.push(factor);
    values.push(-factor * turns[1]!);
  } else {
    factors.push(0);
    values.push(firstAngle);
  }
  for (let k = 1; k < last; k += 1) {
    const [before, here, after] = [slack[k - 1]!, slack[k]!, slack[k + 1]!];
    // The knot's own slack, the same on both sides, falls out of the equation.
    const behind = 1 / (here * here * lengths[k - 1]!);
    const ahead = 1 / (here * here * lengths[k]!);
    const a = before * behind;
    const b = (3 - before) * behind;
    const c = (3 - after) * ahead;
    const d = after * ahead;
    const pivot = b + c - a * factors[k - 1]!;
    factors.push(d / pivot);
    values.push((-b * turns[k]! - d * turns[k + 1]! - a * values[k - 1]!) / pivot);
  }
  const thetas: number[] = new Array<number>(last + 1).fill(0);
  if (lastAngle === undefined) {
    const factor = curlRatio(slack[last]!, slack[last - 1]!);
    thetas[last] = (-factor * values[last - 1]!) / (1 - factor * factors[last - 1]!);
  } else thetas[last] = lastAngle;
  for (let k = last - 1; k >= 0; k -= 1) thetas[k] = values[k]! - factors[k]! * thetas[k + 1]!;
  return thetas;
};

// How an end of curl 1 answers its neighbour's angle, from the reciprocals of the two tensions; METAFONT stops at 4.
const curlRatio = (end: number, neighbour: number): number => {
  const weight = (end * end) / (neighbour * neighbour);
  return Math.min(4, ((3 - end) * weight + neighbour) / (end * weight + 3 - neighbour));
};

const spanBetween = (
  start: Point,
  end: Point,
  theta: number,
  phi: number,
  startTension: number,
  endTension: number,
): CubicSpan => {
  const chord = minus(end, start);
  const reachStart = Math.min(longestHandle, rho(theta, phi) / Math.max(leastTension, startTension));
  const reachEnd = Math.min(longestHandle, rho(phi, theta) / Math.max(leastTension, endTension));
  return cubic(
    start,
    plus(start, times(turned(chord, theta), reachStart)),
    minus(end, times(turned(chord, -phi), reachEnd)),
    end,
  );
};

const turned = (v: Point, angle: number): Point => {
  const [c, s] = [cos(angle), sin(angle)];
  return { x: v.x * c - v.y * s, y: v.x * s + v.y * c };
};
