// Making one smooth line of an edge that slashes have left with bridges and corners.

import { arcAbout } from "../geometry/arc.ts";
import { directionAt, pathLength, pointAt, pointOn, spanLength } from "../geometry/arc-length.ts";
import { hobbyHandles } from "../geometry/hobby.ts";
import { nearest } from "../geometry/nearest.ts";
import {
  type CubicSpan,
  corners,
  cubic,
  endDirection,
  joined,
  type Path,
  reversed,
  type Span,
  startDirection,
} from "../geometry/path.ts";
import { between, distance, minus, type Point, plus, times } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { angleOf, toRadians, turnBetween } from "../geometry/trig.ts";

/** The directions of travel that a line is to have at its ends, length 1; undefined where it keeps its own. */
export interface Ends {
  readonly start: Point | undefined;
  readonly end: Point | undefined;
}

/** Under this angle, in radians, a corner does not show and an end complies. */
export const smooth = toRadians(0.1);

/** The line with each bridge as the arc about its hinge: the cloth measures the same from the hinge all along it. */
export const withArcs = (path: Path): Path =>
  path.flatMap((span): Path => {
    if (span.kind === "cubic" || span.pivot === undefined) return [span];
    const { start, end, pivot } = span;
    const turn = turnBetween(minus(start, pivot), minus(end, pivot));
    if (distance(start, pivot) <= nothing || distance(end, pivot) <= nothing) return [span];
    return arcAbout(pivot, start, end, turn).map((each) => ({ ...each, pivot }));
  });

/** The smooth line: arcs for bridges, one cubic from 50 mm before to 50 mm behind each corner, and ends as required. */
export const trued = (path: Path, ends: Ends): Path => {
  const arcs = withArcs(path);
  return withEndsTurned(cornersRounded(arcs), ends);
};

/** Half the length, mm, that a corner is smoothed over. */
const reach = 50;

const nothing = 1e-9;

/** A place where a line turns: a corner, or the step that closing a slash leaves, whose corners turn back on each other. */
interface Bend {
  /** Arc lengths of its first and its last corner, mm. */
  readonly from: number;
  readonly to: number;
  /** How far the line turns there in all, radians, clockwise on the page. */
  readonly turn: number;
}

// Two corners no further apart than this, in mm, that turn opposite ways are one step.
const longestStep = 10;

const bendsOf = (path: Path): Bend[] => {
  const bends: Bend[] = [];
  let before = 0;
  for (const { at, turn } of corners(path, smooth)) {
    const last = bends.at(-1);
    if (last && at - last.to <= longestStep && turn * before < 0) {
      bends[bends.length - 1] = { ...last, to: at, turn: last.turn + turn };
    } else bends.push({ from: at, to: at, turn });
    before = turn;
  }
  return bends;
};

const cornersRounded = (path: Path): Path => {
  const found = bendsOf(path);
  if (found.length === 0) return path;
  const length = pathLength(path);
  // Up to the end of the line, but only halfway to the next corner, which needs the other half.
  const room = (from: number, to: number, isEnd: boolean): number =>
    Math.min(reach, isEnd ? to - from : (to - from) / 2);
  const paths: Path[] = [];
  let done = 0;
  found.forEach((bend, index) => {
    const [last, next] = [found[index - 1], found[index + 1]];
    const from = bend.from - room(last?.to ?? 0, bend.from, !last);
    const to = bend.to + room(bend.to, next?.from ?? length, !next);
    if (from - done > nothing) paths.push(part(path, done, from));
    paths.push([cubicBetween(path, from, to)]);
    done = to;
  });
  if (length - done > nothing) paths.push(part(path, done, length));
  return joined(paths);
};

/** The cubic between two places of a line that leaves and arrives in the line's directions there. */
const cubicBetween = (path: Path, from: number, to: number): CubicSpan =>
  hobbyHandles(pointAt(path, from), angleOf(directionAt(path, from)), pointAt(path, to), angleOf(arrivalAt(path, to)));

// At a joint the direction is that of the later span; arriving there the earlier one counts.
const arrivalAt = (path: Path, at: number): Point => times(directionAt(reversed(path), pathLength(path) - at), -1);

const isOff = (direction: Point, wanted: Point | undefined): wanted is Point =>
  wanted !== undefined && Math.abs(turnBetween(direction, wanted)) > smooth;

/** Turns the handles at the ends to the required directions; their length is found so that the line keeps its own. */
const withEndsTurned = (path: Path, { start, end }: Ends): Path => {
  const turnStart = isOff(startDirection(path), start) ? start : undefined;
  const turnEnd = isOff(endDirection(path), end) ? end : undefined;
  if (!turnStart && !turnEnd) return path;
  const length = pathLength(path);
  // A short span at the end would turn all of the angle within its few millimetres; then the last 50 mm do it.
  const from = turnStart ? Math.max(spanLength(path[0]!), Math.min(reach, length)) : 0;
  const to = turnEnd ? length - Math.max(spanLength(path.at(-1)!), Math.min(reach, length)) : length;
  if (from > to + nothing || (turnStart && turnEnd && to <= nothing)) {
    return [withHandles(stretchAsCubic(path, 0, length), turnStart, turnEnd, length)];
  }
  return joined([
    turnStart ? [withHandles(stretchAsCubic(path, 0, from), turnStart, undefined, from)] : [],
    to - from > nothing ? part(path, from, to) : [],
    turnEnd ? [withHandles(stretchAsCubic(path, to, length), undefined, turnEnd, length - to)] : [],
  ]);
};

const stretchAsCubic = (path: Path, from: number, to: number): CubicSpan => {
  const stretch = part(path, from, to);
  return stretch.length === 1 ? asCubic(stretch[0]!) : cubicBetween(path, from, to);
};

const asCubic = (span: Span): CubicSpan => {
  const { start, end } = span;
  if (span.kind === "line") return cubic(start, between(start, end, 1 / 3), between(start, end, 2 / 3), end);
  return cubic(start, span.startHandle, span.endHandle, end);
};

const withHandles = (span: CubicSpan, start: Point | undefined, end: Point | undefined, length: number): CubicSpan => {
  const chord = distance(span.start, span.end);
  const handle = (length: number): number => (length > nothing ? length : chord / 3);
  const startReach = handle(distance(span.start, span.startHandle));
  const endReach = handle(distance(span.end, span.endHandle));
  const turned = (share: number): CubicSpan =>
    cubic(
      span.start,
      start ? plus(span.start, times(start, share * startReach)) : span.startHandle,
      end ? minus(span.end, times(end, share * endReach)) : span.endHandle,
      span.end,
    );
  const share = solved((each) => spanLength(turned(each)) - length, 1, 1 / 3, 3);
  return turned(share ?? 1);
};

/** The line that holds a length, mm: cubics from end to end, the free ends turned outward by one angle in radians. */
export const truedHolding = (
  path: Path,
  atFolds: Ends,
  keepsEnds: boolean,
  length: number,
): { readonly path: Path; readonly turn: number } | undefined => {
  const arcs = withArcs(path);
  const found = bendsOf(arcs);
  const ends: Ends = keepsEnds ? { start: startDirection(arcs), end: endDirection(arcs) } : atFolds;
  if (found.length === 0) {
    const line = withEndsTurned(arcs, ends);
    return Math.abs(pathLength(line) - length) <= holds ? { path: line, turn: 0 } : undefined;
  }
  const whole = pathLength(arcs);
  const stations = [0, ...found.slice(1).map(({ from }, index) => (found[index]!.to + from) / 2), whole];
  // Outward makes the line turn more, the way it turns at the corner next to that end.
  const [firstWay, lastWay] = [Math.sign(found[0]!.turn), Math.sign(found.at(-1)!.turn)];
  const line = (turn: number): Path =>
    stations.slice(1).map((to, index) => {
      const from = stations[index]!;
      const leaving = directionAt(arcs, from);
      const arriving = arrivalAt(arcs, to);
      const first = from === 0 ? (ends.start ?? rotated(leaving, origin, -firstWay * turn)) : leaving;
      const last = to === whole ? (ends.end ?? rotated(arriving, origin, lastWay * turn)) : arriving;
      return hobbyHandles(pointAt(arcs, from), angleOf(first), pointAt(arcs, to), angleOf(last));
    });
  const off = (turn: number): number => pathLength(line(turn)) - length;
  const turn = solved(off, 0, -mostOutward / 2, mostOutward);
  return turn === undefined || Math.abs(off(turn)) > holds ? undefined : { path: line(turn), turn };
};

// How nearly a length is held, mm.
const holds = 0.001;
const mostOutward = toRadians(60);
const origin: Point = { x: 0, y: 0 };

/** The zero of a function nearest to where one starts, between two limits; undefined where there is none. */
export const solved = (f: (x: number) => number, start: number, low: number, high: number): number | undefined => {
  const atStart = f(start);
  if (Math.abs(atStart) <= exact) return start;
  // Looks ever further away on both sides, so that the nearest zero is the one found.
  let [below, above] = [start, start];
  let [atBelow, atAbove] = [atStart, atStart];
  for (let step = 1; step <= looks; step += 1) {
    const nextAbove = start + ((high - start) * step) / looks;
    const nextBelow = start - ((start - low) * step) / looks;
    const [valueAbove, valueBelow] = [f(nextAbove), f(nextBelow)];
    if (atAbove > 0 !== valueAbove > 0) return halved(f, above, nextAbove);
    if (atBelow > 0 !== valueBelow > 0) return halved(f, below, nextBelow);
    [below, above, atBelow, atAbove] = [nextBelow, nextAbove, valueBelow, valueAbove];
  }
  return undefined;
};

const looks = 64;
const exact = 1e-9;

const halved = (f: (x: number) => number, from: number, to: number): number => {
  let [a, b] = [from, to];
  const startsPositive = f(a) > 0;
  for (let step = 0; step < 60; step += 1) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === startsPositive) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
};

/** The greatest distance, mm, of the old line from the new one. */
export const greatestMove = (old: Path, path: Path): number => {
  const shares = Array.from({ length: looksPerSpan + 1 }, (_, look) => look / looksPerSpan);
  const points = old.flatMap((span) => shares.map((share) => pointOn(span, share)));
  return Math.max(...points.map((point) => nearest(path, point).distance));
};

const looksPerSpan = 16;
