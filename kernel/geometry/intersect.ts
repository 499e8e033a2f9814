// Where paths cross or touch: each other, a full straight line, and themselves.
// Lines are solved outright, line and cubic by a polynomial, two cubics by closing in on them with ever smaller boxes.
import { derivativeOn, lengthTo, pathLength, pointOn } from "./arc-length.ts";
import { nearestOnSpan } from "./nearest.ts";
import type { CubicSpan, LineSpan, Path, Span } from "./path.ts";
import { cubic } from "./path.ts";
import type { Point } from "./point.ts";
import { cross, distance, dot, minus, plus, quarterTurn, size, times, unit } from "./point.ts";
import { rootsOf } from "./roots.ts";
import { stretch } from "./split.ts";

/** A place that two paths share. */
export interface Crossing {
  readonly point: Point;
  /** Arc length from the start of the first path, mm. */
  readonly onFirst: number;
  /** Arc length from the start of the second path, mm; not less than `onFirst` where a path crosses itself. */
  readonly onSecond: number;
}

/** A place that a path and a full straight line share. */
export interface RayCrossing {
  readonly point: Point;
  /** Arc length from the start of the path, mm. */
  readonly at: number;
  /** How far ahead of the line's given point it lies, mm; negative behind it. */
  readonly ahead: number;
}

/**
 * The places where two paths cross, touch, or one ends on the other, in order along the first, each spot (within
 * 0.001 mm) once; where they run along each other, the two ends of the stretch they share.
 */
export const crossings = (a: Path, b: Path): Crossing[] => {
  const found: Crossing[] = [];
  const boxes = b.map(boxOf);
  a.forEach((first, i) => {
    const box = boxOf(first);
    b.forEach((second, j) => {
      if (!boxesMeet(box, boxes[j]!)) return;
      for (const { t, u, point } of meetings(first, second)) {
        if (found.some((other) => distance(other.point, point) < sameCrossing)) continue;
        found.push({ point, onFirst: lengthTo(a, { index: i, t }), onSecond: lengthTo(b, { index: j, t: u }) });
      }
    });
  });
  return found.sort((x, y) => x.onFirst - y.onFirst);
};

/** The places where a path meets the full straight line through a point in a direction (length 1), from behind to ahead. */
export const crossingsWithRay = (path: Path, from: Point, direction: Point): RayCrossing[] => {
  const found: RayCrossing[] = [];
  path.forEach((span, index) => {
    for (const t of parametersOnLine(span, from, direction, touchTolerance)) {
      const point = pointOn(span, t);
      if (found.some((other) => distance(other.point, point) < sameCrossing)) continue;
      found.push({ point, at: lengthTo(path, { index, t }), ahead: dot(minus(point, from), direction) });
    }
  });
  return found.sort((x, y) => x.ahead - y.ahead);
};

/** The places where an open path crosses or touches itself, its ends included, in order along it. */
export const selfCrossings = (path: Path): Crossing[] => crossingsWithin(path, Number.POSITIVE_INFINITY);

/** The same for a closed path, whose end meets its start anyway: that joint does not count. */
export const selfCrossingsOfLoop = (loop: Path): Crossing[] => crossingsWithin(loop, pathLength(loop));

/** Where two full straight lines meet; undefined where they are parallel within 1e-9. */
export const linesMeet = (a: Point, directionA: Point, b: Point, directionB: Point): Point | undefined => {
  const along = unit(directionA);
  const slant = cross(along, unit(directionB));
  if (Math.abs(slant) < parallel) return undefined;
  return plus(a, times(along, cross(minus(b, a), unit(directionB)) / slant));
};

// Spots nearer than this, in mm, are one crossing.
const sameCrossing = 0.001;

// An end this near to the other path, in mm, lies on it; lines nearer than this run along each other.
const touchTolerance = 1e-6;

// The sine of the angle up to which two directions are parallel.
const parallel = 1e-9;

/** A meeting of two spans by their parameters. */
interface Meeting {
  readonly t: number;
  readonly u: number;
  readonly point: Point;
}

const meetings = (a: Span, b: Span): Meeting[] => {
  if (a.kind === "line" && b.kind === "line") return linesMeeting(a, b);
  const touches = endTouches(a, b);
  if (runAlong(a, b, touches)) return touches;
  // Touches come first: where an end is on the other span, that end exactly is the crossing.
  if (b.kind === "line") return [...touches, ...lineAndCubic(b, a as CubicSpan).map(swapped)];
  if (a.kind === "line") return [...touches, ...lineAndCubic(a, b)];
  return [...touches, ...cubicsMeeting(a, b)];
};

const swapped = ({ t, u, point }: Meeting): Meeting => ({ t: u, u: t, point });

const linesMeeting = (a: LineSpan, b: LineSpan): Meeting[] => {
  const touches = endTouches(a, b);
  const [alongA, alongB] = [minus(a.end, a.start), minus(b.end, b.start)];
  const slant = cross(alongA, alongB);
  if (Math.abs(slant) <= parallel * size(alongA) * size(alongB)) return outermostOf(touches);
  const t = cross(minus(b.start, a.start), alongB) / slant;
  const u = cross(minus(b.start, a.start), alongA) / slant;
  return t < 0 || t > 1 || u < 0 || u > 1 ? touches : [...touches, { t, u, point: pointOn(a, t) }];
};

const outermostOf = (touches: readonly Meeting[]): Meeting[] => {
  const inOrder = [...touches].sort((x, y) => x.t - y.t);
  return inOrder.length < 3 ? inOrder : [inOrder[0]!, inOrder[inOrder.length - 1]!];
};

const endTouches = (a: Span, b: Span): Meeting[] => {
  const found: Meeting[] = [];
  for (const end of [0, 1] as const) {
    const onB = parameterNear(b, pointOn(a, end));
    if (onB !== undefined) found.push({ t: end, u: onB, point: pointOn(a, end) });
  }
  for (const end of [0, 1] as const) {
    const onA = parameterNear(a, pointOn(b, end));
    if (onA !== undefined) found.push({ t: onA, u: end, point: pointOn(b, end) });
  }
  return found;
};

/** The parameter of a span at a point within the touch tolerance of it. */
const parameterNear = (span: Span, p: Point): number | undefined => {
  if (!boxesMeet(boxOf(span), { left: p.x, top: p.y, right: p.x, bottom: p.y })) return undefined;
  if (distance(span.start, p) <= touchTolerance) return 0;
  if (distance(span.end, p) <= touchTolerance) return 1;
  if (span.kind === "line") {
    const along = minus(span.end, span.start);
    const t = dot(minus(p, span.start), along) / dot(along, along);
    return t > 0 && t < 1 && distance(pointOn(span, t), p) <= touchTolerance ? t : undefined;
  }
  const t = nearestOnSpan(span, p);
  return distance(pointOn(span, t), p) <= touchTolerance ? t : undefined;
};

// Two cubics that agree on any stretch are parts of one curve, so such a stretch ends at an end of one of them. If the
// curve is on the other span between its touches too, they run along each other.
const runAlong = (a: Span, b: Span, touches: readonly Meeting[]): boolean => {
  const ts = touches.map((touch) => touch.t);
  const [low, high] = [Math.min(...ts), Math.max(...ts)];
  if (!(high > low) || distance(pointOn(a, low), pointOn(a, high)) + Math.abs(high - low) < sameCrossing) return false;
  return [0.21, 0.5, 0.83].every((share) => parameterNear(b, pointOn(a, low + (high - low) * share)) !== undefined);
};

const lineAndCubic = (straight: LineSpan, curve: CubicSpan): Meeting[] => {
  const along = minus(straight.end, straight.start);
  const length = size(along);
  if (length === 0) return [];
  const found: Meeting[] = [];
  for (const u of parametersOnLine(curve, straight.start, times(along, 1 / length), parallel)) {
    const point = pointOn(curve, u);
    const t = dot(minus(point, straight.start), along) / (length * length);
    if (t >= 0 && t <= 1) found.push({ t, u, point });
  }
  return found;
};

/** Where a span is on the full line through a point in a direction; for a span along it, its two ends. */
const parametersOnLine = (span: Span, from: Point, direction: Point, within: number): number[] => {
  const off = (p: Point): number => cross(direction, minus(p, from));
  const [start, end] = [off(span.start), off(span.end)];
  const ends = [...(Math.abs(start) <= within ? [0] : []), ...(Math.abs(end) <= within ? [1] : [])];
  if (span.kind === "line") {
    return ends.length > 0 || start > 0 === end > 0 ? ends : [start / (start - end)];
  }
  const [startHandle, endHandle] = [off(span.startHandle), off(span.endHandle)];
  if (ends.length === 2 && Math.abs(startHandle) <= within && Math.abs(endHandle) <= within) return ends;
  // Where the line only grazes the curve, rounding may leave it just off: there the distance has a flat place near nought.
  const flat = rootsOf([startHandle - start, endHandle - startHandle, end - endHandle]);
  const grazing = flat.filter((t) => Math.abs(off(pointOn(span, t))) <= parallel);
  return [...ends, ...grazing, ...rootsOf([start, startHandle, endHandle, end])];
};

interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const boxOf = (span: Span): Box => {
  const { start, end } = span;
  const [b, c] = span.kind === "line" ? [start, end] : [span.startHandle, span.endHandle];
  return {
    left: Math.min(start.x, b.x, c.x, end.x),
    top: Math.min(start.y, b.y, c.y, end.y),
    right: Math.max(start.x, b.x, c.x, end.x),
    bottom: Math.max(start.y, b.y, c.y, end.y),
  };
};

const boxesMeet = (a: Box, b: Box): boolean =>
  a.left <= b.right + touchTolerance &&
  b.left <= a.right + touchTolerance &&
  a.top <= b.bottom + touchTolerance &&
  b.top <= a.bottom + touchTolerance;

/** A stretch of a cubic that is being closed in on. */
interface Stretch {
  readonly whole: CubicSpan;
  readonly span: CubicSpan;
  readonly from: number;
  readonly to: number;
  readonly box: Box;
  /** How far its handles lie from its chord at most, mm. */
  readonly sagging: number;
}

// Flat to this many mm a stretch is as good as its chord for a first guess.
const flatEnough = 1e-6;
const shortest = 2 ** -40;

const stretchOf = (whole: CubicSpan, span: CubicSpan, from: number, to: number): Stretch => {
  const along = unit(minus(span.end, span.start));
  const closed = along.x === 0 && along.y === 0;
  const off = (p: Point): number => (closed ? distance(p, span.start) : Math.abs(cross(along, minus(p, span.start))));
  return { whole, span, from, to, box: boxOf(span), sagging: Math.max(off(span.startHandle), off(span.endHandle)) };
};

const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

// De Casteljau's scheme at one half; it makes both sides in six steps, which is most of the work here.
const halvesOf = ({ whole, span, from, to }: Stretch): [Stretch, Stretch] => {
  const left = middleOf(span.start, span.startHandle);
  const inner = middleOf(span.startHandle, span.endHandle);
  const right = middleOf(span.endHandle, span.end);
  const [before, after] = [middleOf(left, inner), middleOf(inner, right)];
  const cut = middleOf(before, after);
  const middle = (from + to) / 2;
  return [
    stretchOf(whole, cubic(span.start, left, before, cut), from, middle),
    stretchOf(whole, cubic(cut, after, right, span.end), middle, to),
  ];
};

const cubicsMeeting = (a: CubicSpan, b: CubicSpan): Meeting[] => {
  const found: Meeting[] = [];
  closeIn(stretchOf(a, a, 0, 1), stretchOf(b, b, 0, 1), found);
  return found;
};

const closeIn = (a: Stretch, b: Stretch, found: Meeting[]): void => {
  if (!boxesMeet(a.box, b.box) || besideChord(a, b.span) || besideChord(b, a.span)) return;
  const done = (s: Stretch): boolean => s.sagging < flatEnough || s.to - s.from < shortest;
  if (done(a) && done(b)) {
    const meeting = polished(a, b);
    if (meeting !== undefined && !found.some((other) => distance(other.point, meeting.point) < sameCrossing)) {
      found.push(meeting);
    }
    return;
  }
  if (done(b) || (!done(a) && a.sagging >= b.sagging)) for (const half of halvesOf(a)) closeIn(half, b, found);
  else for (const half of halvesOf(b)) closeIn(a, half, found);
};

// A curve keeps to the strip of its handles' distance around its chord. This parts curves that run side by side long
// before their upright boxes do.
const besideChord = (a: Stretch, b: CubicSpan): boolean => {
  const along = unit(minus(a.span.end, a.span.start));
  if (along.x === 0 && along.y === 0) return false;
  const off = (p: Point): number => along.x * (p.y - a.span.start.y) - along.y * (p.x - a.span.start.x);
  const [first, second, third, fourth] = [off(b.start), off(b.startHandle), off(b.endHandle), off(b.end)];
  const room = a.sagging + parallel;
  return Math.min(first, second, third, fourth) > room || Math.max(first, second, third, fourth) < -room;
};

const polished = (a: Stretch, b: Stretch): Meeting | undefined => {
  const start = { t: (a.from + a.to) / 2, u: (b.from + b.to) / 2 };
  const [alongA, alongB] = [derivativeOn(a.whole, start.t), derivativeOn(b.whole, start.u)];
  const sine = Math.abs(cross(alongA, alongB)) / (size(alongA) * size(alongB));
  const place =
    (sine > 1e-4 ? crossingNear(a.whole, b.whole, start) : undefined) ?? grazingNear(a.whole, b.whole, start);
  if (place === undefined) return undefined;
  const t = Math.min(1, Math.max(0, place.t));
  const u = Math.min(1, Math.max(0, place.u));
  const point = pointOn(a.whole, t);
  return distance(point, pointOn(b.whole, u)) <= parallel ? { t, u, point } : undefined;
};

// Newton's steps for a(t) = b(u).
const crossingNear = (a: CubicSpan, b: CubicSpan, start: { t: number; u: number }): typeof start | undefined => {
  let { t, u } = start;
  for (let step = 0; step < 12; step += 1) {
    const gap = minus(pointOn(b, u), pointOn(a, t));
    const [alongA, alongB] = [derivativeOn(a, t), derivativeOn(b, u)];
    const slant = cross(alongA, alongB);
    if (slant === 0) return undefined;
    const [dt, du] = [cross(gap, alongB) / slant, cross(gap, alongA) / slant];
    t += dt;
    u += du;
    if (t < -0.01 || t > 1.01 || u < -0.01 || u > 1.01) return undefined;
    if (Math.abs(dt) + Math.abs(du) < 1e-15) break;
  }
  return { t, u };
};

// Where curves only graze, Newton's steps above stall. Instead: the place where they run parallel, squarely opposite.
const grazingNear = (a: CubicSpan, b: CubicSpan, start: { t: number; u: number }): typeof start | undefined => {
  let { t, u } = start;
  for (let step = 0; step < 20; step += 1) {
    const gap = minus(pointOn(a, t), pointOn(b, u));
    const [alongA, alongB] = [derivativeOn(a, t), derivativeOn(b, u)];
    const [bendA, bendB] = [secondDerivativeOn(a, t), secondDerivativeOn(b, u)];
    const askew = cross(alongA, alongB);
    const ahead = dot(gap, alongA);
    const [askewT, askewU] = [cross(bendA, alongB), cross(alongA, bendB)];
    const [aheadT, aheadU] = [dot(alongA, alongA) + dot(gap, bendA), -dot(alongB, alongA)];
    const determinant = askewT * aheadU - askewU * aheadT;
    if (determinant === 0) return undefined;
    const dt = (askewU * ahead - askew * aheadU) / determinant;
    const du = (askew * aheadT - askewT * ahead) / determinant;
    t += dt;
    u += du;
    if (!(t >= -0.01 && t <= 1.01 && u >= -0.01 && u <= 1.01)) return undefined;
    if (Math.abs(dt) + Math.abs(du) < 1e-15) break;
  }
  return { t, u };
};

const secondDerivativeOn = ({ start, startHandle, endHandle, end }: CubicSpan, t: number): Point => ({
  x: 6 * ((1 - t) * (endHandle.x - 2 * startHandle.x + start.x) + t * (end.x - 2 * endHandle.x + startHandle.x)),
  y: 6 * ((1 - t) * (endHandle.y - 2 * startHandle.y + start.y) + t * (end.y - 2 * endHandle.y + startHandle.y)),
});

/** A piece of a path that cannot cross itself, with where it starts and how it maps back. */
interface Rising {
  readonly span: Span;
  readonly index: number;
  readonly from: number;
  readonly to: number;
  readonly box: Box;
}

// Cut where they run upright, spans only go right or only go left, so none crosses itself and pairs are all there is.
const crossingsWithin = (path: Path, closesAt: number): Crossing[] => {
  const pieces = path.flatMap(risingPieces);
  const found: Crossing[] = [];
  for (const [i, j] of pairsAbreast(pieces)) {
    const [a, b] = [pieces[i]!, pieces[j]!];
    if (!boxesMeet(a.box, b.box) || goOnFrom(a, b) || liesBeside(a.span, b.span)) continue;
    for (const { t, u, point } of meetings(a.span, b.span)) {
      const onFirst = lengthTo(path, { index: a.index, t: a.from + (a.to - a.from) * t });
      const onSecond = lengthTo(path, { index: b.index, t: b.from + (b.to - b.from) * u });
      const apart = onSecond - onFirst;
      // Neighbours always meet at their joint.
      if (apart < sameCrossing || closesAt - apart < sameCrossing) continue;
      if (found.some((other) => distance(other.point, point) < sameCrossing)) continue;
      found.push({ point, onFirst, onSecond });
    }
  }
  return found.sort((x, y) => x.onFirst - y.onFirst);
};

/**
 * The pairs of pieces, the earlier piece first and in order, that lie abreast of one another in the direction in which fewest do. Be it
 * an outline or a zigzag of thousands of corners, most lie apart in some direction, and are never looked at together.
 */
const pairsAbreast = (pieces: readonly Rising[]): [number, number][] => {
  const chords = pieces.map(({ span }) => minus(span.end, span.start));
  const longest = chords.reduce((far, chord) => (size(chord) > size(far) ? chord : far), { x: 0, y: 0 });
  const directions = [{ x: 1, y: 0 }, { x: 0, y: 1 }, quarterTurn(unit(longest))];
  const [widths] = directions.map((direction) => widthsIn(pieces, direction)).sort((a, b) => crowding(a) - crowding(b));
  const pairs: [number, number][] = [];
  let open: Width[] = [];
  for (const width of widths!.toSorted((a, b) => a.from - b.from)) {
    open = open.filter(({ to }) => to >= width.from);
    for (const { index } of open) pairs.push(index < width.index ? [index, width.index] : [width.index, index]);
    open.push(width);
  }
  return pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
};

/** Between where and where a piece lies in some direction, mm. */
interface Width {
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

const widthsIn = (pieces: readonly Rising[], direction: Point): Width[] =>
  pieces.map(({ span }, index) => {
    const [start, end] = [dot(direction, span.start), dot(direction, span.end)];
    const [b, c] =
      span.kind === "line" ? [start, end] : [dot(direction, span.startHandle), dot(direction, span.endHandle)];
    return { index, from: Math.min(start, b, c, end), to: Math.max(start, b, c, end) + 2 * touchTolerance };
  });

/** How many pieces lie abreast on an average. */
const crowding = (widths: readonly Width[]): number => {
  const [first, last] = widths.reduce(
    ([low, high], { from, to }) => [Math.min(low, from), Math.max(high, to)] as const,
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY] as const,
  );
  return last > first ? widths.reduce((sum, { from, to }) => sum + to - from, 0) / (last - first) : widths.length;
};

/** Whether one span lies wholly to one side of the strip that the other keeps to, however near its box comes. */
const liesBeside = (a: Span, b: Span): boolean => isBeyondStrip(a, b) || isBeyondStrip(b, a);

const isBeyondStrip = ({ start, end, ...span }: Span, b: Span): boolean => {
  const along = unit(minus(end, start));
  if (along.x === 0 && along.y === 0) return false;
  const off = (p: Point): number => along.x * (p.y - start.y) - along.y * (p.x - start.x);
  const [first, last] = [off(b.start), off(b.end)];
  const [second, third] = b.kind === "line" ? [first, last] : [off(b.startHandle), off(b.endHandle)];
  const [low, high] = span.kind === "line" ? [0, 0] : [off(span.startHandle), off(span.endHandle)];
  return (
    Math.min(first, second, third, last) > Math.max(0, low, high) + touchTolerance ||
    Math.max(first, second, third, last) < Math.min(0, low, high) - touchTolerance
  );
};

// A piece that starts where another ends and goes on to the same side, or up or down from it, has nothing but that joint in common
// with it. Most neighbours do, and finding their joint by boxes would take longer than all the rest.
const goOnFrom = (a: Rising, b: Rising): boolean => {
  const { x, y } = a.span.end;
  if (x !== b.span.start.x || y !== b.span.start.y) return false;
  const [goesA, goesB] = [x - a.span.start.x, b.span.end.x - x];
  if (goesA * goesB > 0) return true;
  const [fallsA, fallsB] = [y - a.span.start.y, b.span.end.y - y];
  if (fallsA > 0 && fallsB > 0) return a.box.bottom <= y && b.box.top >= y;
  return fallsA < 0 && fallsB < 0 && a.box.top >= y && b.box.bottom <= y;
};

const risingPieces = (span: Span, index: number): Rising[] => {
  const turns =
    span.kind === "line"
      ? []
      : rootsOf([
          span.startHandle.x - span.start.x,
          span.endHandle.x - span.startHandle.x,
          span.end.x - span.endHandle.x,
        ]).filter((t) => t > 0 && t < 1);
  const cuts = [0, ...turns, 1];
  return cuts.slice(1).map((to, i) => {
    const from = cuts[i]!;
    const piece = stretch(span, from, to);
    return { span: piece, index, from, to, box: boxOf(piece) };
  });
};
