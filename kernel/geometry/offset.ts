// A path at a constant distance beside another. Straight stretches and arcs with a pivot come out exactly, other curves
// within 1e-4 mm. At corners the sides are carried on to where they meet, or trimmed where they cross.
import { derivativeOn, pathLength, pointAt, pointOn, spanLength } from "./arc-length.ts";
import { crossings, linesMeet, selfCrossings } from "./intersect.ts";
import { nearest } from "./nearest.ts";
import type { CubicSpan, Path, Span } from "./path.ts";
import {
  cubic,
  endDirection,
  endOf,
  line,
  spanEndDirection,
  spanStartDirection,
  startDirection,
  startOf,
} from "./path.ts";
import type { Point } from "./point.ts";
import { cross, distance, dot, minus, plus, size, times } from "./point.ts";
import { part, stretch } from "./split.ts";
import { turnBetween } from "./trig.ts";

/**
 * An open path with every point moved by so many mm to the left of travel as seen on the page, negative to the right.
 * Stretches of an arc that are less than `by` from their pivot vanish; a path of nothing else stays a point of no length.
 */
export const offsetPath = (path: Path, by: number): Path => {
  if (by === 0) return path;
  const spans = path.filter((span) => spanLength(span) > nothing && !vanishes(span, by));
  let folds = spans.some((span) => foldsBack(span, by));
  const moved = movedAlong(spans, by, (before, after) => {
    const trimmed = trimmedAtCrossing(before, after);
    folds ||= trimmed === undefined;
    return trimmed ?? [...before, line(endOf(before), startOf(after)), ...after];
  });
  if (moved.length === 0) return [line(startOf(path), startOf(path))];
  return folds ? withoutLoops(moved, path, Math.abs(by)) : moved;
};

/** A path moved to its left with nothing trimmed, and whether that made it run back on itself. */
export interface Untrimmed {
  readonly path: Path;
  readonly folds: boolean;
}

/**
 * The same with every loop left in: into an inner corner and out again by way of the corner itself, and round a curve that
 * is tighter than the distance from behind. So the path goes round all that lies within the distance, some of it twice.
 * Two straight sides that meet are trimmed all the same, as nothing else can lie in so small a loop.
 */
export const offsetUntrimmed = (path: Path, by: number): Untrimmed => {
  if (by === 0) return { path, folds: false };
  const spans = path.filter((span) => spanLength(span) > nothing);
  let folds = spans.some((span) => foldsBack(span, by) || vanishes(span, by));
  const moved = movedAlong(spans, by, (before, after, corner, own) => {
    const trimmed = trimmedLines(before, after, own);
    if (trimmed) return trimmed;
    folds = true;
    return [...before, line(endOf(before), corner), line(corner, startOf(after)), ...after];
  });
  return { path: moved.length > 0 ? moved : [line(startOf(path), startOf(path))], folds };
};

/** How all that is moved so far and the next side are joined at an inner corner; `own` is the side before it by itself. */
type AtInnerCorner = (before: Path, after: Path, corner: Point, own: Path) => Path;

const movedAlong = (spans: Path, by: number, atInnerCorner: AtInnerCorner): Path => {
  const runs = spans.map((span) => ({ span, moved: offsetSpan(span, by) })).filter(({ moved }) => moved.length > 0);
  let result: Path = runs[0]?.moved ?? [];
  for (let i = 1; i < runs.length; i += 1) {
    const run = runs[i]!;
    const turn = turnBetween(spanEndDirection(runs[i - 1]!.span), spanStartDirection(run.span));
    if (distance(endOf(result), startOf(run.moved)) <= sameEnd)
      result = [...result, ...startedAt(run.moved, endOf(result))];
    else if (turn * by > 0) result = carriedToMeeting(result, run.moved, turn);
    else result = atInnerCorner(result, run.moved, run.span.start, runs[i - 1]!.moved);
  }
  return result;
};

// Only between sides as they were moved: where one was carried on, what would be trimmed off may lie beside nothing.
const trimmedLines = (before: Path, after: Path, own: Path): Path | undefined => {
  const [last, first] = [before[before.length - 1]!, after[0]!];
  if (last.kind !== "line" || first.kind !== "line" || crossings(own, [first]).length === 0) return undefined;
  const point = crossings([last], [first])[0]?.point;
  // A side of which nothing is left would have no direction to carry on in.
  if (!point || distance(last.start, point) <= sameEnd || distance(point, first.end) <= sameEnd) return undefined;
  return [...before.slice(0, -1), { ...last, end: point }, { ...first, start: point }, ...after.slice(1)];
};

/** A path made longer by so many mm, straight on in its own direction, at one of its ends. */
export const carriedOn = (path: Path, end: "start" | "end", by: number): Path => {
  if (end === "start") {
    const to = plus(startOf(path), times(startDirection(path), -by));
    const [first, ...others] = path;
    return first!.kind === "line" && first!.pivot === undefined
      ? [{ ...first!, start: to }, ...others]
      : [line(to, startOf(path)), ...path];
  }
  const to = plus(endOf(path), times(endDirection(path), by));
  const last = path[path.length - 1]!;
  return last.kind === "line" && last.pivot === undefined
    ? [...path.slice(0, -1), { ...last, end: to }]
    : [...path, line(endOf(path), to)];
};

// Spans shorter than this, in mm, have no direction to move away from.
const nothing = 1e-9;

// Moved ends this near, in mm, come from a smooth joint; they differ by rounding and by the tolerance of drawing.
const sameEnd = 1e-6;

// The moved curve keeps this close, in mm, to the true one where it is checked; half of what is promised.
const fitTolerance = 5e-5;

const leftOf = (direction: Point): Point => ({ x: direction.y, y: -direction.x });

const offsetSpan = (span: Span, by: number): Path => {
  if (span.pivot !== undefined) {
    const swung = scaledAboutPivot(span, span.pivot, by);
    if (swung !== undefined) return swung;
  }
  if (span.kind === "line") {
    const shift = times(leftOf(spanStartDirection(span)), by);
    return [line(plus(span.start, shift), plus(span.end, shift))];
  }
  return fitted(span, by);
};

// Round the pivot clockwise, the left side is the outside.
const growthAbout = (pivot: Point, { start, end }: Span, by: number): number =>
  cross(minus(start, pivot), minus(end, pivot)) >= 0 ? by : -by;

/** Whether an arc would shrink past its pivot, where what is moved further comes out behind it and runs backward. */
const vanishes = (span: Span, by: number): boolean => {
  if (span.pivot === undefined) return false;
  const radius = Math.min(distance(span.start, span.pivot), distance(span.end, span.pivot));
  return radius > nothing && radius + growthAbout(span.pivot, span, by) <= nothing;
};

/** An arc about its pivot, or a chord of one, made larger or smaller; nothing is left of one that shrinks to a point. */
const scaledAboutPivot = (span: Span, pivot: Point, by: number): Path | undefined => {
  const [toStart, toEnd] = [minus(span.start, pivot), minus(span.end, pivot)];
  const [startRadius, endRadius] = [size(toStart), size(toEnd)];
  if (Math.min(startRadius, endRadius) <= nothing) return undefined;
  const growth = growthAbout(pivot, span, by);
  if (Math.abs(Math.min(startRadius, endRadius) + growth) <= nothing) return [];
  // Adding the growth, and not multiplying by the whole, keeps round numbers round.
  const scaled = (p: Point, radius: number): Point => plus(p, times(minus(p, pivot), growth / radius));
  const [start, end] = [scaled(span.start, startRadius), scaled(span.end, endRadius)];
  if (span.kind === "line") return [{ ...span, start, end }];
  const [startHandle, endHandle] = [scaled(span.startHandle, startRadius), scaled(span.endHandle, endRadius)];
  return [{ ...span, start, startHandle, endHandle, end }];
};

/** How fast the moved point runs compared to the curve's own at t; nought and less where it turns back. */
const pace = (span: CubicSpan, by: number, t: number): number => {
  const derivative = derivativeOn(span, t);
  const speed = size(derivative);
  if (speed < 1e-9) return 1;
  const u = 1 - t;
  const bend = (axis: "x" | "y"): number =>
    6 *
    (u * (span.endHandle[axis] - 2 * span.startHandle[axis] + span.start[axis]) +
      t * (span.end[axis] - 2 * span.endHandle[axis] + span.startHandle[axis]));
  const curvature = cross(derivative, { x: bend("x"), y: bend("y") }) / (speed * speed * speed);
  return 1 + curvature * by;
};

const foldChecks = 32;

const foldsBack = (span: Span, by: number): boolean => {
  if (span.kind === "line" || span.pivot !== undefined) return false;
  for (let i = 0; i <= foldChecks; i += 1) if (pace(span, by, i / foldChecks) <= 0) return true;
  return false;
};

// Eleven halvings make a span of 300 mm into stretches of 0.15 mm; only at a fold does it come to that. Where a curve turns
// nearly on the spot the moved one goes a long way round meanwhile, and is halved on.
const deep = 11;
const deepest = 40;

// As many as eleven halvings of every stretch make. Where a curve folds or turns on the spot only the few stretches there are
// halved on; more than this many come of a distance so great that rounding alone is coarser than the tolerance, and then no
// number of halvings would ever be enough.
const mostStretches = 2 ** deep;

const checks = [0.08, 0.2, 0.35, 0.5, 0.65, 0.8, 0.92];

/** A stretch of a curve from one parameter to another, and the moved curve beside it once it is near enough. */
interface Beside {
  readonly from: number;
  readonly to: number;
  readonly moved: CubicSpan | undefined;
}

// All that is not near enough is halved in each round, so that where halving is given up it is given up evenly.
const fitted = (span: CubicSpan, by: number): Path => {
  let stretches: readonly Beside[] = [beside(span, by, 0, 1, 0)];
  for (let depth = 1; depth <= deepest; depth += 1) {
    const open = stretches.filter(({ moved }) => moved === undefined).length;
    if (open === 0 || stretches.length + open > mostStretches) break;
    stretches = stretches.flatMap((each) => {
      if (each.moved !== undefined) return [each];
      const middle = (each.from + each.to) / 2;
      return [beside(span, by, each.from, middle, depth), beside(span, by, middle, each.to, depth)];
    });
  }
  return stretches.map(({ from, to, moved }) => moved ?? roughly(span, by, from, to));
};

const beside = (span: CubicSpan, by: number, from: number, to: number, depth: number): Beside => {
  const moved = fittedOnce(span, by, from, to);
  const isShort = moved === undefined && depth >= deep && goesNowhere(span, by, from, to);
  return { from, to, moved: isShort ? roughly(span, by, from, to) : moved };
};

const goesNowhere = (span: CubicSpan, by: number, from: number, to: number): boolean =>
  distance(movedPoint(span, by, from), movedPoint(span, by, to)) < shortestMoved;

// Shorter than this, in mm, a moved stretch is as good as straight.
const shortestMoved = 0.2;

const directionOn = (span: CubicSpan, t: number): Point => {
  if (t === 0) return spanStartDirection(span);
  if (t === 1) return spanEndDirection(span);
  const derivative = derivativeOn(span, t);
  return times(derivative, 1 / size(derivative));
};

const movedPoint = (span: CubicSpan, by: number, t: number): Point =>
  plus(pointOn(span, t), times(leftOf(directionOn(span, t)), by));

/** The cubic with the moved ends and directions, each handle as long as the curve's own times the pace there. */
const roughly = (span: CubicSpan, by: number, from: number, to: number): CubicSpan => {
  const piece = stretch(span, from, to) as CubicSpan;
  const startReach = distance(piece.start, piece.startHandle) * pace(span, by, from);
  const endReach = distance(piece.end, piece.endHandle) * pace(span, by, to);
  return withReaches(span, by, from, to, startReach, endReach);
};

const withReaches = (
  span: CubicSpan,
  by: number,
  from: number,
  to: number,
  startReach: number,
  endReach: number,
): CubicSpan => {
  const start = movedPoint(span, by, from);
  const end = movedPoint(span, by, to);
  return cubic(
    start,
    plus(start, times(directionOn(span, from), startReach)),
    minus(end, times(directionOn(span, to), endReach)),
    end,
  );
};

/** A cubic that keeps within the tolerance of the moved stretch, or undefined where none such is found. */
const fittedOnce = (span: CubicSpan, by: number, from: number, to: number): CubicSpan | undefined => {
  // A stretch that turns far is halved outright: seven checks would not see all of it.
  if (dot(directionOn(span, from), directionOn(span, to)) < 0.5) return undefined;
  const targets = checks.map((share) => movedPoint(span, by, from + (to - from) * share));
  let candidate = roughly(span, by, from, to);
  for (let round = 0; ; round += 1) {
    const misses = checks.map((share, i) => missOf(candidate, targets[i]!, share));
    const worst = Math.max(...misses.map(({ off }) => Math.abs(off)));
    if (worst <= fitTolerance) return candidate;
    // The first bettering gains the most; what is still far off then will not come near.
    if (round === 2 || (round === 1 && worst > 4 * fitTolerance)) return undefined;
    const reaches = betterReaches(candidate, misses);
    if (reaches === undefined) return undefined;
    candidate = withReaches(span, by, from, to, reaches.start, reaches.end);
  }
};

/** How far a target lies beside a curve, mm, to its left positive, and where. */
interface Miss {
  readonly off: number;
  readonly t: number;
  readonly left: Point;
}

const missOf = (curve: CubicSpan, target: Point, guess: number): Miss => {
  let t = guess;
  for (let step = 0; step < 3; step += 1) {
    const derivative = derivativeOn(curve, t);
    const square = dot(derivative, derivative);
    if (square === 0) break;
    t = Math.min(1, Math.max(0, t + dot(minus(target, pointOn(curve, t)), derivative) / square));
  }
  const derivative = derivativeOn(curve, t);
  const gap = minus(target, pointOn(curve, t));
  const length = size(derivative);
  if (length === 0) return { off: size(gap), t, left: { x: 0, y: 0 } };
  const left = times(leftOf(derivative), 1 / length);
  // What the steps left over along the curve counts too, so that a curve of the wrong extent is not taken.
  const away = size(gap);
  return { off: dot(gap, left) < 0 ? -away : away, t, left };
};

// Least squares for the two handle lengths: how far each check point moves sideways as a handle grows is known.
const betterReaches = (
  curve: CubicSpan,
  misses: readonly Miss[],
): { readonly start: number; readonly end: number } | undefined => {
  const ahead = spanStartDirection(curve);
  const behind = times(spanEndDirection(curve), -1);
  let [aa, ab, bb, ay, by] = [0, 0, 0, 0, 0];
  for (const { off, t, left } of misses) {
    const u = 1 - t;
    const a = 3 * u * u * t * dot(ahead, left);
    const b = 3 * u * t * t * dot(behind, left);
    aa += a * a;
    ab += a * b;
    bb += b * b;
    ay += a * off;
    by += b * off;
  }
  const determinant = aa * bb - ab * ab;
  if (!(determinant > 1e-12 * aa * bb)) return undefined;
  const start = distance(curve.start, curve.startHandle) + (ay * bb - by * ab) / determinant;
  const end = distance(curve.end, curve.endHandle) + (by * aa - ay * ab) / determinant;
  return start > 0 && end > 0 ? { start, end } : undefined;
};

const startedAt = (path: Path, start: Point): Path => {
  const [first, ...others] = path;
  if (first!.kind === "line") return [{ ...first!, start }, ...others];
  const shift = minus(start, first!.start);
  return [{ ...first!, start, startHandle: plus(first!.startHandle, shift) }, ...others];
};

// Sides that turn less than this (radians) run on; carrying them to where they meet would only add rounding.
const leastTurn = 1e-4;

// Sides that turn back more sharply than this (radians) would meet more than twenty times the distance away.
const sharpestTurn = Math.PI - 0.1;

const carriedToMeeting = (before: Path, after: Path, turn: number): Path => {
  const [a, b] = [endOf(before), startOf(after)];
  const [directionA, directionB] = [endDirection(before), startDirection(after)];
  const straightOn = Math.abs(turn) < leastTurn || Math.abs(turn) > sharpestTurn;
  const meeting = straightOn ? undefined : linesMeet(a, directionA, b, directionB);
  if (meeting === undefined) return [...before, line(a, b), ...after];
  const longer = carriedOn(before, "end", dot(minus(meeting, a), directionA));
  const earlier = carriedOn(after, "start", dot(minus(b, meeting), directionB));
  return [...endedAt(longer, meeting), ...startedAt(earlier, meeting)];
};

const endedAt = (path: Path, end: Point): Path => [...path.slice(0, -1), { ...path[path.length - 1]!, end }];

// Of several crossings the one nearest to the corner, measured along both sides, is the corner's own.
const trimmedAtCrossing = (before: Path, after: Path): Path | undefined => {
  const length = pathLength(before);
  let own: { readonly onFirst: number; readonly onSecond: number } | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const crossing of crossings(before, after)) {
    const away = length - crossing.onFirst + crossing.onSecond;
    if (away < least) {
      own = crossing;
      least = away;
    }
  }
  if (own === undefined) return undefined;
  const kept = part(before, 0, own.onFirst);
  return [...kept, ...startedAt(part(after, own.onSecond, pathLength(after)), endOf(kept))];
};

// Where a curve is tighter than the distance, or a stretch shorter than its corners eat, the moved path runs round a
// small loop that comes too near the original. Such loops are cut off at their crossing.
const withoutLoops = (path: Path, original: Path, by: number): Path => {
  let result = path;
  for (let rounds = 0; rounds < mostLoops; rounds += 1) {
    const loop = selfCrossings(result).find(({ onFirst, onSecond }) =>
      [0.25, 0.5, 0.75].some((share) => {
        const onLoop = pointAt(result, onFirst + (onSecond - onFirst) * share);
        return nearest(original, onLoop).distance < by - tooNear;
      }),
    );
    if (loop === undefined) return result;
    const length = pathLength(result);
    const kept = loop.onFirst > nothing ? part(result, 0, loop.onFirst) : [];
    const rest = length - loop.onSecond > nothing ? part(result, loop.onSecond, length) : [];
    // Nothing but loops: better the crossed line than none.
    if (kept.length === 0 && rest.length === 0) return result;
    if (kept.length === 0 || rest.length === 0) return kept.length > 0 ? kept : rest;
    result = [...kept, ...startedAt(rest, endOf(kept))];
  }
  return result;
};

const mostLoops = 100;

// A point of the moved path nearer to the original than the distance less this, in mm, is on a loop.
const tooNear = 0.001;
