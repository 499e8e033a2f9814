// The outer rim of a closed path that runs over itself: which stretches of it border the outside of all that it goes round.
// Stretches are told by arc length, so that whoever drew the path still knows what each of them belongs to.
import { derivativeOn, directionAt, lengthTo, pathLength, pointOn, spanLength } from "./arc-length.ts";
import { signedArea, windingAbout } from "./area.ts";
import { type Bounds, bounds } from "./bounds.ts";
import { type Crossing, selfCrossingsOfLoop } from "./intersect.ts";
import { nearestOnSpan } from "./nearest.ts";
import type { Path } from "./path.ts";
import { distance, minus, type Point, plus, quarterTurn, times, unit } from "./point.ts";
import { part } from "./split.ts";
import { turnBetween } from "./trig.ts";

/** A stretch of a path between two arc lengths, mm; `from` is the smaller. */
export interface Between {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches, in order of travel, of the outer rim of what a closed path goes round clockwise (sense 1) or anticlockwise
 * (sense -1) once or more, of several parts that meet in single spots the largest; undefined where the path nowhere touches
 * itself and so is that rim, or goes round nothing. None of the stretches goes over the path's start.
 */
export const outermost = (loop: Path, sense: 1 | -1): readonly Between[] | undefined => {
  const crossings = selfCrossingsOfLoop(loop);
  if (crossings.length === 0) return undefined;
  const arcs = arcsOf(loop, crossings).filter((arc) => bordersOutside(loop, sense, arc));
  const rims = chained(loop, sense, arcs).map((rim) => ({ rim, area: sense * signedArea(pathOf(loop, rim)) }));
  // Holes that the path leaves open have their own rims, but run the other way round.
  const widest = rims.sort((a, b) => b.area - a.area)[0];
  return widest && widest.area > 0 ? startingFirst(widest.rim) : undefined;
};

/** A stretch between two neighbouring knots of the path, each told by the number of the spot that it lies on. */
interface Arc extends Between {
  readonly start: number;
  readonly end: number;
}

// Crossings nearer than this, in mm, are one spot; a passage as near to a spot goes through it.
const oneSpot = 0.001;

/** The path cut at its start and wherever it passes a crossing, be it for the third time. */
const arcsOf = (loop: Path, crossings: readonly Crossing[]): Arc[] => {
  const length = pathLength(loop);
  const boxes = loop.map((span) => bounds([[span]]));
  const passages = crossings.flatMap(({ point, onFirst, onSecond }, spot) => {
    const isOther = (at: number): boolean => Math.min(Math.abs(at - onFirst), Math.abs(at - onSecond)) > 2 * oneSpot;
    const others = passagesThrough(loop, boxes, point).filter(isOther);
    return [onFirst, onSecond, ...others].map((at) => ({ at: at > length - oneSpot ? 0 : at, spot }));
  });
  passages.push({ at: 0, spot: crossings.length });
  passages.sort((a, b) => a.at - b.at);
  // Of two spots so near that one knot does for both, the later is known by the earlier.
  const known = [...crossings.keys(), crossings.length];
  const first = (spot: number): number => (known[spot] === spot ? spot : first(known[spot]!));
  const knots: { at: number; spot: number }[] = [];
  for (const { at, spot } of passages) {
    const before = knots[knots.length - 1];
    if (before && at - before.at < oneSpot / 2) known[first(spot)] = first(before.spot);
    else knots.push({ at, spot });
  }
  return knots.map(({ at, spot }, index) => {
    const next = knots[index + 1];
    return { from: at, to: next?.at ?? length, start: first(spot), end: first((next ?? knots[0]!).spot) };
  });
};

const passagesThrough = (loop: Path, boxes: readonly Bounds[], spot: Point): number[] => {
  const found: number[] = [];
  boxes.forEach(({ left, top, right, bottom }, index) => {
    if (left > spot.x + oneSpot || right < spot.x - oneSpot) return;
    if (top > spot.y + oneSpot || bottom < spot.y - oneSpot) return;
    const span = loop[index]!;
    const t = nearestOnSpan(span, spot);
    if (distance(pointOn(span, t), spot) < oneSpot) found.push(lengthTo(loop, { index, t }));
  });
  return found;
};

// This far beside a stretch, in mm, it is asked what lies there: lines that run along each other are crossed together.
const beside = 1e-4;

const bordersOutside = (loop: Path, sense: 1 | -1, { from, to }: Between): boolean => {
  // The middle of a span, and not of the stretch, which may be a corner.
  const span = part(loop, from, to).reduce((longest, next) =>
    spanLength(next) > spanLength(longest) ? next : longest,
  );
  const middle = pointOn(span, 0.5);
  const right = times(quarterTurn(unit(derivativeOn(span, 0.5))), beside * sense);
  return sense * windingAbout(loop, plus(middle, right)) > 0 && sense * windingAbout(loop, minus(middle, right)) <= 0;
};

/** Stretches put end to end to closed rims; where several go on from a spot, the one that turns outward most is next. */
const chained = (loop: Path, sense: 1 | -1, arcs: readonly Arc[]): Arc[][] => {
  const from = new Map<number, Arc[]>();
  for (const arc of arcs) from.set(arc.start, [...(from.get(arc.start) ?? []), arc]);
  const used = new Set<Arc>();
  const rims: Arc[][] = [];
  for (const first of arcs) {
    const rim: Arc[] = [];
    let next: Arc | undefined = used.has(first) ? undefined : first;
    while (next) {
      used.add(next);
      rim.push(next);
      if (next.end === first.start) {
        rims.push(rim);
        break;
      }
      const onward = (from.get(next.end) ?? []).filter((arc) => !used.has(arc));
      next = outwardMost(loop, sense, next, onward);
    }
  }
  return rims;
};

const outwardMost = (loop: Path, sense: 1 | -1, arc: Arc, onward: readonly Arc[]): Arc | undefined => {
  if (onward.length < 2) return onward[0];
  const arriving = directionAt(loop, arc.to - inside(arc));
  const turn = (next: Arc): number => sense * turnBetween(arriving, directionAt(loop, next.from + inside(next)));
  return [...onward].sort((a, b) => turn(a) - turn(b))[0];
};

// A joint has two directions; a hair's breadth in from it, in mm, a stretch has its own.
const inside = ({ from, to }: Between): number => Math.min(0.01, (to - from) / 2);

const pathOf = (loop: Path, rim: readonly Between[]): Path => rim.flatMap(({ from, to }) => part(loop, from, to));

const startingFirst = (rim: readonly Between[]): Between[] => {
  const first = rim.indexOf(rim.reduce((least, arc) => (arc.from < least.from ? arc : least)));
  return [...rim.slice(first), ...rim.slice(0, first)];
};
