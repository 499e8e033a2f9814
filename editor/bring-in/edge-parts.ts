// One edge, as it was drawn in however many stretches, as the few lines and curves that a person would write.
import { directionAt, pathLength, pointAt, spanLength } from "../../kernel/geometry/arc-length.ts";
import { hobbyCurve } from "../../kernel/geometry/hobby.ts";
import {
  type CubicSpan,
  endDirection,
  endOf,
  isStraight,
  type Path,
  type Span,
  startDirection,
  startOf,
} from "../../kernel/geometry/path.ts";
import {
  between,
  cross,
  distance,
  dot,
  minus,
  type Point,
  plus,
  size,
  times,
  unit,
} from "../../kernel/geometry/point.ts";
import { angleOf, toDegrees, turnBetween } from "../../kernel/geometry/trig.ts";
import { type Break, isCoarse, type PointsTold } from "./breaks.ts";
import { sampled, straying } from "./closeness.ts";
import { fittedCubics } from "./fitted-cubics.ts";
import { type ArcPart, drawnPart, type FairPart, type Part, sides } from "./parts.ts";

/** How places are rounded before they are written. */
export type Rounding = (p: Point) => Point;

/** An edge in parts, and how far, in mm, it strays from what was drawn. */
export interface EdgeParts {
  readonly parts: readonly Part[];
  readonly straying: number;
}

/** The parts of an edge; `breaks` holds for each span what it begins with, and where a corner begins one it counts as a bend. */
export const edgeParts = (spans: Path, breaks: readonly Break[], told: PointsTold, round: Rounding): EdgeParts => {
  const runs = runsOf(spans, breaks).map((run) => throughTold(run, told));
  let worst = 0;
  const parts: Part[] = [];
  runs.forEach((run, i) => {
    const before = i > 0 && run.isSmooth ? runs[i - 1] : undefined;
    const after = runs[i + 1]?.isSmooth ? runs[i + 1] : undefined;
    const drawn = partsOf(run, straightDirection(before), straightDirection(after), round);
    const points = sampled(run.path);
    const kept = drawn.filter(({ points: [from, ...rest] }) => rest.some((p) => distance(p, from!) > noLength));
    if (kept.length > 0) worst = Math.max(worst, straying(kept.flatMap(drawnPart), points, Number.POSITIVE_INFINITY));
    for (const part of kept) {
      const last = parts.at(-1);
      // Straight parts that follow one another are one bent line.
      if (part.kind === "line" && last?.kind === "line" && last.points.length < mostBends)
        parts[parts.length - 1] = { kind: "line", points: [...last.points, ...part.points.slice(1)] };
      else parts.push(part);
    }
  });
  return { parts, straying: worst };
};

// Rounded places as near as this are one spot to the kernel (0.01 mm).
const noLength = 0.011;

// A line of text with more places than this is not read by anybody.
const mostBends = 60;

/** A stretch of an edge that is one thing: a straight line, part of a circle, or a curve. */
interface Run {
  readonly kind: "straight" | "arc" | "curve";
  readonly path: Path;
  /** Whether it goes on in the direction in which the run before it ends. */
  readonly isSmooth: boolean;
}

const runsOf = (spans: Path, breaks: readonly Break[]): Run[] => {
  const runs: { kind: Run["kind"]; path: Span[]; isSmooth: boolean }[] = [];
  const kinds = spans.map((span, i) => kindOf(spans, breaks, span, i));
  spans.forEach((span, i) => {
    const isSmooth = i > 0 && breaks[i] === "smooth";
    const last = runs.at(-1);
    const goesOn = last && isSmooth && last.kind === kinds[i] && goesOnAs(last.kind, last.path.at(-1)!, span);
    if (goesOn) last.path.push(span);
    else runs.push({ kind: kinds[i]!, path: [span], isSmooth });
  });
  return runs;
};

const goesOnAs = (kind: Run["kind"], before: Span, span: Span): boolean => {
  if (kind === "curve") return true;
  if (kind === "straight") return false;
  return distance(before.pivot!, span.pivot!) < sameCenter && isClockwise(before) === isClockwise(span);
};

const isClockwise = (span: Span): boolean => cross(minus(span.start, span.pivot!), minus(span.end, span.pivot!)) > 0;

// Centres this near, mm, are one.
const sameCenter = 0.01;

// No bend of a curve hides in a line this long that is so much longer than those beside it.
const longLine = 10;
const longerThanBeside = 4;
// What keeps this near to its chord is straight, mm.
const straightWithin = 0.005;

const kindOf = (spans: Path, breaks: readonly Break[], span: Span, i: number): Run["kind"] => {
  if (span.pivot !== undefined) return "arc";
  if (span.kind === "cubic") return isStraight([span], straightWithin) ? "straight" : "curve";
  const beside = [
    ...(i > 0 && breaks[i] === "smooth" ? [spans[i - 1]!] : []),
    ...(i + 1 < spans.length && breaks[i + 1] === "smooth" ? [spans[i + 1]!] : []),
  ];
  const lines = beside.filter(({ kind }) => kind === "line");
  if (lines.length === 0) return "straight";
  const longest = Math.max(...lines.map(spanLength));
  const isLong = spanLength(span) >= longLine && spanLength(span) >= longerThanBeside * longest;
  return isLong ? "straight" : "curve";
};

const straightDirection = (run: Run | undefined): Point | undefined =>
  run?.kind === "straight" ? startDirection(run.path) : undefined;

const partsOf = (
  { kind, path }: Run,
  leaving: Point | undefined,
  arriving: Point | undefined,
  round: Rounding,
): Part[] => {
  switch (kind) {
    case "straight":
      return [{ kind: "line", points: [round(startOf(path)), round(endOf(path))] }];
    case "arc":
      return arcParts(path, round);
    case "curve":
      return curveParts(path, leaving ?? endTangent(path, false), arriving ?? endTangent(path, true), round);
  }
};

/** A bent line whose points the file says lie on a curve is that curve, where its chords are long enough to make a difference. */
const throughTold = (run: Run, told: PointsTold): Run => {
  const { kind, path } = run;
  const isTold =
    path.every((span) => span.kind === "line") && path.slice(1).every(({ start }) => told.isOnCurve(start));
  if (kind !== "curve" || path.length < 2 || !isTold || !isCoarse(path)) return run;
  const points = [startOf(path), ...path.map(({ end }) => end)];
  return { ...run, path: hobbyCurve(points.map((point) => ({ point }))) };
};

/** The direction at an end of a curve; of a bent line that of the circle through its last three points. */
const endTangent = (path: Path, isEnd: boolean): Point => {
  const near = isEnd ? path.slice(-2) : path.slice(0, 2);
  if (near.length < 2 || near.some(({ kind }) => kind === "cubic"))
    return isEnd ? endDirection(path) : startDirection(path);
  const [first, second] = near as [Span, Span];
  const [a, b] = [minus(first.end, first.start), minus(second.end, second.start)];
  // The tangent at the middle point turns as far to either end as the chords stand from it.
  const middle = plus(times(unit(a), size(b)), times(unit(b), size(a)));
  const chord = unit(isEnd ? b : a);
  const off = unit(middle);
  return unit(minus(times(chord, 2 * dot(chord, off)), off));
};

/** As many arcs as keep each well under half a circle, so that rounding of their ends moves them little. */
const arcParts = (path: Path, round: Rounding): Part[] => {
  const center = path[0]!.pivot!;
  const turn = path.reduce((sum, { start, end }) => sum + turnBetween(minus(start, center), minus(end, center)), 0);
  const count = Math.max(1, Math.ceil(Math.abs(turn) / mostTurn - 1e-9));
  const length = pathLength(path);
  const spots = Array.from({ length: count + 1 }, (_, i) =>
    i === count ? endOf(path) : pointAt(path, (length * i) / count),
  );
  const radius = (distance(center, startOf(path)) + distance(center, endOf(path))) / 2;
  return spots.slice(1).map((end, i) => {
    const points = [round(spots[i]!), round(end)] as const;
    const middle = pointAt(path, (length * (i + 0.5)) / count);
    const bulge = minus(middle, between(points[0], points[1], 0.5));
    // Never so small by rounding that no circle goes through both ends.
    const written = Math.max(
      round({ x: radius, y: 0 }).x,
      round({ x: distance(points[0], points[1]) / 2 + 0.005, y: 0 }).x,
    );
    return { kind: "arc", points, radius: written, bulging: sideOf(bulge) };
  });
};

const mostTurn = (100 * Math.PI) / 180;

const sideOf = (v: Point): ArcPart["bulging"] => {
  const [best] = [...sides].sort(([, a], [, b]) => dot(b, v) - dot(a, v));
  return best![0];
};

// How near, in mm, a curve keeps to what was drawn; the rest of the tenth is for rounding and for chords.
const fitWithin = 0.07;
// A curve that our own programs drew is found again this exactly, mm, rounded places and all.
const sameWithin = 0.02;
// Of a drawing that has no more cubics than this in one run, each is kept as it is.
const fewCubics = 3;
// Through more points than this nobody draws a curve by hand.
const fewPoints = 8;

/** A curve as few parts. */
const curveParts = (path: Path, leaving: Point, arriving: Point, round: Rounding): Part[] => {
  const points = sampled(path);
  const isDrawnAsCurves = path.every(({ kind }) => kind === "cubic");
  if (isDrawnAsCurves) {
    if (path.length === 1) return [handles(path[0] as CubicSpan, round)];
    const joints = path.slice(1).map(({ start }) => start);
    const own =
      joints.length <= fewPoints
        ? nearEnough(fairOnes(joints, path, leaving, arriving, round), points, sameWithin)
        : undefined;
    if (own) return [own];
    if (path.length <= fewCubics) return path.map((span) => handles(span as CubicSpan, round));
  }
  const length = pathLength(path);
  for (let count = 0; count <= 3; count += 1) {
    const spots = Array.from({ length: count }, (_, i) => pointAt(path, (length * (i + 1)) / (count + 1)));
    const fair = nearEnough(fairOnes(spots, path, leaving, arriving, round), points, fitWithin);
    if (fair) return [fair];
  }
  const cubics = fittedCubics(points, leaving, arriving, fitWithin);
  const headed = withHeadings(path, points, leaving, arriving, round, cubics.length + 1);
  if (headed) return [headed];
  return isDrawnAsCurves && path.length <= cubics.length
    ? path.map((span) => handles(span as CubicSpan, round))
    : cubics.map((span) => handles(span, round));
};

const handles = ({ start, startHandle, endHandle, end }: CubicSpan, round: Rounding): Part => ({
  kind: "handles",
  points: [round(start), round(end)],
  handles: [round(startHandle), round(endHandle)],
});

/** Fair curves through these spots, the plainest first: with free ends, then with the directions at the ends. */
const fairOnes = (
  spots: readonly Point[],
  path: Path,
  leaving: Point,
  arriving: Point,
  round: Rounding,
): FairPart[] => {
  const points = [startOf(path), ...spots, endOf(path)].map(round);
  const headings = spots.map(() => undefined);
  const plain: FairPart = { kind: "fair", points, headings, leaving: undefined, arriving: undefined };
  const ended: FairPart = { ...plain, leaving: inDegrees(leaving), arriving: inDegrees(arriving) };
  return spots.length === 0 ? [ended] : [plain, ended];
};

const nearEnough = (candidates: readonly FairPart[], points: readonly Point[], within: number): FairPart | undefined =>
  candidates.find((part) => isDrawable(part) && straying(drawnPart(part), points, within) <= within);

const isDrawable = ({ points }: FairPart): boolean =>
  points.every((p, i) => i === 0 || distance(p, points[i - 1]!) > leastApart);

// Places on one spot are refused by the kernel (0.01 mm).
const leastApart = 0.05;

/** The fair curve with a direction at each point, halved where it strays too far; undefined where that takes too many points. */
const withHeadings = (
  path: Path,
  points: readonly Point[],
  leaving: Point,
  arriving: Point,
  round: Rounding,
  most: number,
): FairPart | undefined => {
  const length = pathLength(path);
  const heading = (s: number): number =>
    s === 0 ? inDegrees(leaving) : s === length ? inDegrees(arriving) : inDegrees(tangentAt(path, s));
  const spots = [0, length];
  for (let i = 0; i + 1 < spots.length; ) {
    const [from, to] = [spots[i]!, spots[i + 1]!];
    const ends = [from, to].map((s) => round(pointAt(path, s)));
    const one: FairPart = { kind: "fair", points: ends, headings: [], leaving: heading(from), arriving: heading(to) };
    const between = Array.from({ length: 17 }, (_, k) => pointAt(path, from + ((to - from) * k) / 16));
    if (isDrawable(one) && straying(drawnPart(one), between, fitWithin) <= fitWithin) i += 1;
    else if (spots.length - 1 > most) return undefined;
    else spots.splice(i + 1, 0, (from + to) / 2);
  }
  const inner = spots.slice(1, -1);
  const part: FairPart = {
    kind: "fair",
    points: spots.map((s) => round(pointAt(path, s))),
    headings: inner.map(heading),
    leaving: heading(0),
    arriving: heading(length),
  };
  return isDrawable(part) && straying(drawnPart(part), points, fitWithin) <= fitWithin ? part : undefined;
};

/** The direction of a path at a place; of a bent line the one over a little of it, so that no single chord decides. */
const tangentAt = (path: Path, s: number): Point => {
  if (path.some(({ kind }) => kind === "cubic")) return directionAt(path, s);
  const [before, behind] = [Math.max(0, s - 3), Math.min(pathLength(path), s + 3)];
  return unit(minus(pointAt(path, behind), pointAt(path, before)));
};

const inDegrees = (v: Point): number => Math.round(toDegrees(angleOf(v)) * 100) / 100;
