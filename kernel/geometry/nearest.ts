// The place of a path nearest to a point, and all feet of perpendiculars from it. Both solve for the zeros of
// (curve - point) . derivative, a polynomial of degree five, so no near place is missed for want of samples.
import { lengthTo, pointOn } from "./arc-length.ts";
import type { CubicSpan, Path, Span } from "./path.ts";
import { spanEndDirection, spanStartDirection } from "./path.ts";
import type { Point } from "./point.ts";
import { distance, dot, minus } from "./point.ts";
import { rootsOf } from "./roots.ts";

/** A place on a path seen from a point. */
export interface Foot {
  /** Arc length from the start of the path, mm. */
  readonly at: number;
  /** The place itself. */
  readonly point: Point;
  /** How far the point is from it, mm. */
  readonly distance: number;
}

/** The place of a path nearest to p; the first of them where several are equally near. */
export const nearest = (path: Path, p: Point): Foot => {
  let best = { index: 0, t: 0 };
  let point = path[0]!.start;
  let least = distance(point, p);
  path.forEach((span, index) => {
    if (distanceToBox(span, p) >= least) return;
    const t = nearestOnSpan(span, p);
    const candidate = pointOn(span, t);
    const away = distance(candidate, p);
    if (away >= least) return;
    best = { index, t };
    point = candidate;
    least = away;
  });
  return { at: lengthTo(path, best), point, distance: least };
};

/** The t of the place of one span nearest to p. */
export const nearestOnSpan = (span: Span, p: Point): number => {
  let best = 0;
  let least = distance(span.start, p);
  for (const t of [...footParameters(span, p), 1]) {
    const away = distance(pointOn(span, t), p);
    if (away >= least) continue;
    best = t;
    least = away;
  }
  return best;
};

/** Every place of a path, its ends among them, at which the line to p stands square on the path; nearest first. */
export const feet = (path: Path, p: Point): Foot[] => {
  const found: Foot[] = [];
  const add = (index: number, t: number): void => {
    const at = lengthTo(path, { index, t });
    if (found.some((foot) => Math.abs(foot.at - at) < sameFoot)) return;
    const point = pointOn(path[index]!, t);
    found.push({ at, point, distance: distance(point, p) });
  };
  path.forEach((span, index) => {
    // Ends come first: a foot at a joint would otherwise be missed, or found twice, by rounding.
    if (standsSquare(span.start, spanStartDirection(span), p)) add(index, 0);
    if (standsSquare(span.end, spanEndDirection(span), p)) add(index, 1);
    for (const t of footParameters(span, p)) add(index, t);
  });
  return found.sort((a, b) => a.distance - b.distance || a.at - b.at);
};

// Feet closer together along the path than this, in mm, are one.
const sameFoot = 1e-6;

// A perpendicular that misses an end by no more than this, in mm, stands on the end.
const footOnEnd = 1e-9;

const standsSquare = (end: Point, direction: Point, p: Point): boolean =>
  Math.abs(dot(minus(p, end), direction)) <= footOnEnd;

const footParameters = (span: Span, p: Point): number[] => {
  if (span.kind === "cubic") return rootsOf(slopeOfDistance(span, p));
  const along = minus(span.end, span.start);
  const square = dot(along, along);
  const t = square === 0 ? -1 : dot(minus(p, span.start), along) / square;
  return t >= 0 && t <= 1 ? [t] : [];
};

// The product of two polynomials in Bernstein form: coefficient k collects the pairs i + j = k, weighted by binomials.
const slopeOfDistance = (span: CubicSpan, p: Point): number[] => {
  const [a, b, c, d] = [span.start, span.startHandle, span.endHandle, span.end].map((q) => minus(q, p)) as [
    Point,
    Point,
    Point,
    Point,
  ];
  const [ab, bc, cd] = [minus(b, a), minus(c, b), minus(d, c)];
  return [
    dot(a, ab),
    (2 * dot(a, bc) + 3 * dot(b, ab)) / 5,
    (dot(a, cd) + 6 * dot(b, bc) + 3 * dot(c, ab)) / 10,
    (3 * dot(b, cd) + 6 * dot(c, bc) + dot(d, ab)) / 10,
    (3 * dot(c, cd) + 2 * dot(d, bc)) / 5,
    dot(d, cd),
  ];
};

// No point of a span lies outside the box around its control points.
const distanceToBox = (span: Span, p: Point): number => {
  const inner = span.kind === "line" ? [] : [span.startHandle, span.endHandle];
  const xs = [span.start, span.end, ...inner].map((q) => q.x);
  const ys = [span.start, span.end, ...inner].map((q) => q.y);
  const dx = Math.max(Math.min(...xs) - p.x, p.x - Math.max(...xs), 0);
  const dy = Math.max(Math.min(...ys) - p.y, p.y - Math.max(...ys), 0);
  return Math.sqrt(dx * dx + dy * dy);
};
