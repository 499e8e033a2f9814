// Arcs of circles as cubics, each of at most 1/32 of a turn; one cubic for a whole quarter would be off by 0.03 %.
import type { CubicSpan, Path } from "./path.ts";
import { cubic } from "./path.ts";
import type { Point } from "./point.ts";
import { between, cross, distance, minus, plus, quarterTurn, size, times, unit } from "./point.ts";
import { rotated } from "./rotate.ts";
import { atan2, tan, turnBetween } from "./trig.ts";

/** The arc about a centre from a start through an angle in radians, positive clockwise on the page. */
export const arcSpans = (center: Point, start: Point, angle: number): Path => {
  const count = spanCount(angle);
  const knots = Array.from({ length: count + 1 }, (_, i) =>
    i === 0 ? start : rotated(start, center, i === count ? angle : (angle * i) / count),
  );
  return spansThrough(center, knots, angle / count);
};

/**
 * The arc about a centre from one given end to another, hitting both exactly, for a turn in radians (clockwise positive)
 * that may be off by rounding; ends unequally far from the centre make the radius grow evenly from one to the other.
 */
export const arcAbout = (center: Point, start: Point, end: Point, turn: number): Path => {
  const fromCenter = minus(start, center);
  const toEnd = minus(end, center);
  const exact = turn + turnBetween(rotated(fromCenter, { x: 0, y: 0 }, turn), toEnd);
  const growth = size(toEnd) / size(fromCenter) - 1;
  const count = spanCount(exact);
  const knots = Array.from({ length: count + 1 }, (_, i) => {
    if (i === 0) return start;
    if (i === count) return end;
    const swung = rotated(start, center, (exact * i) / count);
    return plus(center, times(minus(swung, center), 1 + (growth * i) / count));
  });
  return spansThrough(center, knots, exact / count);
};

/**
 * The shorter arc of a radius in mm between two ends that bulges towards a direction, and its centre; undefined where
 * the radius is less than half the distance between the ends.
 */
export const arcBulging = (
  start: Point,
  end: Point,
  radius: number,
  side: Point,
): { readonly center: Point; readonly path: Path } | undefined => {
  const half = distance(start, end) / 2;
  // Half a millionth of a millimetre short is a half circle spoilt by rounding.
  if (half === 0 || radius < half - 5e-7) return undefined;
  const depth = Math.sqrt(Math.max(0, (radius - half) * (radius + half)));
  const square = quarterTurn(unit(minus(end, start)));
  const bulge = square.x * side.x + square.y * side.y >= 0 ? square : times(square, -1);
  const center = minus(between(start, end, 0.5), times(bulge, depth));
  const clockwise = cross(minus(start, end), bulge) > 0 ? 1 : -1;
  return { center, path: arcAbout(center, start, end, clockwise * 2 * atan2(half, depth)) };
};

const mostOfATurn = (2 * Math.PI) / 32;

// The little taken off keeps a whole number of parts whole in spite of rounding.
const spanCount = (angle: number): number => Math.max(1, Math.ceil(Math.abs(angle) / mostOfATurn - 1e-9));

const spansThrough = (center: Point, knots: readonly Point[], step: number): CubicSpan[] => {
  // The handle length that puts a cubic's middle onto the circle: 4/3 of the tangent of a quarter of the angle.
  const reach = (4 / 3) * tan(step / 4);
  return knots.slice(1).map((end, i) => {
    const start = knots[i]!;
    const ahead = times(quarterTurn(minus(start, center)), reach);
    const behind = times(quarterTurn(minus(end, center)), reach);
    return cubic(start, plus(start, ahead), minus(end, behind), end);
  });
};
