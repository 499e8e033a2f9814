// How long a path is, and which place lies how far along it. Lengths hold to 1e-9 mm even where a cubic nearly stops
// (a near-cusp), where a fixed number of sample points would be off by tenths of a millimetre.
import type { CubicSpan, Path, Span } from "./path.ts";
import { spanEndDirection, spanStartDirection } from "./path.ts";
import type { Point } from "./point.ts";
import { distance, size, unit } from "./point.ts";

/** A place on a path: the span by its index, and the share 0 to 1 of the span's parameter. */
export interface Position {
  readonly index: number;
  readonly t: number;
}

/** The length of one span, mm. */
export const spanLength = (span: Span): number => {
  if (span.kind === "line") return distance(span.start, span.end);
  return lengthBetween(span, 0, 1);
};

/** The length of a path, mm. */
export const pathLength = (path: Path): number => spanStarts(path)[path.length]!;

/** The place at an arc length in mm from the start; beyond an end it is that end, at a joint the later span's start. */
export const positionAt = (path: Path, s: number): Position => {
  const starts = spanStarts(path);
  const last = path.length - 1;
  if (s >= starts[path.length]! - jointTolerance) return { index: last, t: 1 };
  let [index, beyond] = [0, last + 1];
  while (beyond - index > 1) {
    const middle = (index + beyond) >> 1;
    if (starts[middle]! > s + jointTolerance) beyond = middle;
    else index = middle;
  }
  const within = s - starts[index]!;
  return within <= jointTolerance ? { index, t: 0 } : { index, t: parameterAt(path[index]!, within) };
};

/** The arc length in mm from the start of a path to a place on it. */
export const lengthTo = (path: Path, position: Position): number => {
  const starts = spanStarts(path);
  if (position.t <= 0) return starts[position.index]!;
  if (position.t >= 1) return starts[position.index + 1]!;
  const span = path[position.index]!;
  const within =
    span.kind === "line" ? position.t * distance(span.start, span.end) : lengthBetween(span, 0, position.t);
  return starts[position.index]! + within;
};

/** The point at an arc length in mm; exactly the end points at 0 and at the whole length. */
export const pointAt = (path: Path, s: number): Point => {
  const { index, t } = positionAt(path, s);
  return pointOn(path[index]!, t);
};

/** The vector of length 1 in the direction of travel at an arc length in mm; at a joint that of the later span. */
export const directionAt = (path: Path, s: number): Point => {
  const { index, t } = positionAt(path, s);
  const span = path[index]!;
  if (t === 0) return spanStartDirection(span);
  if (t === 1) return spanEndDirection(span);
  const derivative = derivativeOn(span, t);
  // At a cusp the curve stops and leaves anew; how it leaves shows a little later.
  return size(derivative) > 1e-9 ? unit(derivative) : unit(derivativeOn(span, Math.min(1, t + 1e-6)));
};

/** The point of a span at t from 0 to 1; exactly its end points at 0 and 1. */
export const pointOn = (span: Span, t: number): Point => {
  const u = 1 - t;
  if (t === 0) return span.start;
  if (t === 1) return span.end;
  if (span.kind === "line") return { x: span.start.x * u + span.end.x * t, y: span.start.y * u + span.end.y * t };
  const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
  return {
    x: a * span.start.x + b * span.startHandle.x + c * span.endHandle.x + d * span.end.x,
    y: a * span.start.y + b * span.startHandle.y + c * span.endHandle.y + d * span.end.y,
  };
};

/** How fast and where to a span moves at t, mm for the whole of t. */
export const derivativeOn = (span: Span, t: number): Point => {
  if (span.kind === "line") return { x: span.end.x - span.start.x, y: span.end.y - span.start.y };
  const u = 1 - t;
  const [a, b, c] = [3 * u * u, 6 * u * t, 3 * t * t];
  const { start, startHandle, endHandle, end } = span;
  return {
    x: a * (startHandle.x - start.x) + b * (endHandle.x - startHandle.x) + c * (end.x - endHandle.x),
    y: a * (startHandle.y - start.y) + b * (endHandle.y - startHandle.y) + c * (end.y - endHandle.y),
  };
};

// Within this arc length, in mm, a place is a joint: far below anything drawn, well above rounding.
const jointTolerance = 1e-9;

// Paths never change, so what was measured once holds for as long as they live. Single spans are measured again: that takes less
// time than remembering the many that are drawn once, measured once and given up.
const pathStarts = new WeakMap<Path, readonly number[]>();

/** The arc length at which each span of a path starts, and last the whole length, mm. */
const spanStarts = (path: Path): readonly number[] => {
  let starts = pathStarts.get(path);
  if (starts === undefined) {
    const sums = [0];
    for (const span of path) sums.push(sums[sums.length - 1]! + spanLength(span));
    starts = sums;
    pathStarts.set(path, starts);
  }
  return starts;
};

// Newton's steps for the t at an arc length inside one span. The bracket keeps them from running off where the
// curve nearly stops; each step measures only the stretch from the last t.
const parameterAt = (span: Span, within: number): number => {
  const whole = spanLength(span);
  if (span.kind === "line") return Math.min(1, within / whole);
  if (within >= whole) return 1;
  let low = 0;
  let high = 1;
  let t = within / whole;
  let length = lengthBetween(span, 0, t);
  for (let step = 0; step < 100; step += 1) {
    const excess = length - within;
    if (Math.abs(excess) < 1e-11) break;
    if (excess > 0) high = t;
    else low = t;
    let next = t - excess / size(derivativeOn(span, t));
    if (!(next > low && next < high)) next = (low + high) / 2;
    if (next === t || next === low || next === high) break;
    length += next > t ? lengthBetween(span, t, next) : -lengthBetween(span, next, t);
    t = next;
  }
  return t;
};

// Nodes and weights of Gauss and Legendre's rule on [-1, 1]; only the positive halves.
const nodes8 = [0.1834346424956498, 0.525532409916329, 0.7966664774136267, 0.9602898564975363];
const weights8 = [0.362683783378362, 0.31370664587788727, 0.22238103445337448, 0.10122853629037626];
const nodes16 = [
  0.09501250983763744, 0.2816035507792589, 0.45801677765722737, 0.6178762444026438, 0.755404408355003,
  0.8656312023878318, 0.9445750230732326, 0.9894009349916499,
];
const weights16 = [
  0.1894506104550685, 0.18260341504492358, 0.16915651939500254, 0.14959598881657674, 0.12462897125553388,
  0.09515851168249279, 0.062253523938647894, 0.027152459411754096,
];

// Where the rule of 8 points and that of 16 agree to this (mm), the latter is right to far better.
const agreement = 1e-9;

const lengthBetween = (span: CubicSpan, from: number, to: number): number => adaptive(speedOf(span), from, to, 45);

/** How fast a cubic moves, as the two polynomials in t that its derivative is made of. */
interface Speed {
  readonly ax: number;
  readonly ay: number;
  readonly bx: number;
  readonly by: number;
  readonly cx: number;
  readonly cy: number;
}

// A sample then costs two polynomials and a root.
const speedOf = ({ start, startHandle, endHandle, end }: CubicSpan): Speed => ({
  ax: 3 * (end.x - start.x + 3 * (startHandle.x - endHandle.x)),
  ay: 3 * (end.y - start.y + 3 * (startHandle.y - endHandle.y)),
  bx: 6 * (start.x - 2 * startHandle.x + endHandle.x),
  by: 6 * (start.y - 2 * startHandle.y + endHandle.y),
  cx: 3 * (startHandle.x - start.x),
  cy: 3 * (startHandle.y - start.y),
});

const speedAt = ({ ax, ay, bx, by, cx, cy }: Speed, t: number): number => {
  const dx = (ax * t + bx) * t + cx;
  const dy = (ay * t + by) * t + cy;
  return Math.sqrt(dx * dx + dy * dy);
};

const rule = (
  speed: Speed,
  low: number,
  high: number,
  nodes: readonly number[],
  weights: readonly number[],
): number => {
  const middle = (low + high) / 2;
  const half = (high - low) / 2;
  let sum = 0;
  for (let i = 0; i < nodes.length; i += 1) {
    const off = half * nodes[i]!;
    sum += weights[i]! * (speedAt(speed, middle - off) + speedAt(speed, middle + off));
  }
  return sum * half;
};

const adaptive = (speed: Speed, low: number, high: number, depth: number): number => {
  const fine = rule(speed, low, high, nodes16, weights16);
  if (depth === 0 || Math.abs(fine - rule(speed, low, high, nodes8, weights8)) < agreement) return fine;
  const middle = (low + high) / 2;
  return adaptive(speed, low, middle, depth - 1) + adaptive(speed, middle, high, depth - 1);
};
