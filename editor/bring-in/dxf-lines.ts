// The entities of DXF that are lines, as paths in the file's own units, y up (DXF reference, "ENTITIES section").
import { hobbyCurve } from "../../kernel/geometry/hobby.ts";
import { type Path, straight } from "../../kernel/geometry/path.ts";
import { distance, type Point, size } from "../../kernel/geometry/point.ts";
import { cos, sin, toRadians } from "../../kernel/geometry/trig.ts";
import { movedBy } from "./affine.ts";
import { bulged, circleArc, wholeCircle } from "./circle-arc.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { type DxfEntity, numberOf, numbersOf } from "./dxf-tags.ts";
import { splinePath } from "./spline.ts";

/** The line of an entity, or why there is none, in the plural for a list of what is left out. */
export type LineRead = { readonly path: Path; readonly isMeasured?: boolean } | { readonly leftOut: string };

/** Reads one entity; undefined where the type is none of a line. */
export const dxfLine = (entity: DxfEntity): LineRead | undefined => {
  const read = readers.get(entity.type);
  if (!read) return undefined;
  const facing = facingOf(entity);
  if (facing === "away") return { leftOut: `${entity.type} entities that do not lie flat on the page` };
  const line = read(entity);
  // A thing seen from behind has its x the other way (DXF reference, "Arbitrary axis algorithm"); LINE and SPLINE are written as they lie.
  return facing === "mirrored" && "path" in line && !lyingAsWritten.has(entity.type)
    ? { ...line, path: movedBy([-1, 0, 0, 1, 0, 0], line.path) }
    : line;
};

/** The point under group codes 10 and 20. */
export const spotOf = (entity: DxfEntity): Point => ({ x: numberOf(entity, 10, 0), y: numberOf(entity, 20, 0) });

/** How a flat thing lies, by the direction that its front faces. */
export const facingOf = (entity: DxfEntity): "up" | "mirrored" | "away" => {
  const [x, y, z] = [numberOf(entity, 210, 0), numberOf(entity, 220, 0), numberOf(entity, 230, 1)];
  const off = Math.sqrt(x * x + y * y);
  if (off > 1e-6 * Math.abs(z)) return "away";
  return z < 0 ? "mirrored" : "up";
};

const lyingAsWritten: ReadonlySet<string> = new Set(["LINE", "SPLINE", "ELLIPSE"]);

const incomplete = (entity: DxfEntity): LineRead => ({ leftOut: `${entity.type} entities that are not complete` });

const has = (entity: DxfEntity, ...codes: readonly number[]): boolean =>
  codes.every((code) => entity.tags.some((tag) => tag.code === code));

const line = (entity: DxfEntity): LineRead => {
  if (!has(entity, 10, 20, 11, 21)) return incomplete(entity);
  const [start, end] = [spotOf(entity), { x: numberOf(entity, 11, 0), y: numberOf(entity, 21, 0) }];
  return { path: distance(start, end) === 0 ? [] : straight(start, end) };
};

const arc = (entity: DxfEntity): LineRead => {
  if (!has(entity, 10, 20, 40, 50, 51)) return incomplete(entity);
  const radius = numberOf(entity, 40, 0);
  if (!(radius > 0)) return incomplete(entity);
  const [from, to] = [numberOf(entity, 50, 0), numberOf(entity, 51, 0)];
  // Always the way round in which angles grow; equal ones are a whole circle.
  const degrees = (((to - from) % 360) + 360) % 360 || 360;
  const center = spotOf(entity);
  const start = { x: center.x + radius * cos(toRadians(from)), y: center.y + radius * sin(toRadians(from)) };
  return { path: circleArc(center, start, toRadians(degrees)) };
};

const circle = (entity: DxfEntity): LineRead => {
  const radius = numberOf(entity, 40, 0);
  return has(entity, 10, 20) && radius > 0 ? { path: wholeCircle(spotOf(entity), radius) } : incomplete(entity);
};

/** An ellipse: its middle, the end of its longer half axis from there, the share of the shorter, and from where to where. */
const ellipse = (entity: DxfEntity): LineRead => {
  const long = { x: numberOf(entity, 11, 0), y: numberOf(entity, 21, 0) };
  const share = numberOf(entity, 40, 0);
  if (!has(entity, 10, 20, 11, 21) || !(share > 0) || size(long) === 0) return incomplete(entity);
  const [from, to] = [numberOf(entity, 41, 0), numberOf(entity, 42, 2 * Math.PI)];
  const turn = 2 * Math.PI;
  const angle = (((to - from) % turn) + turn) % turn || turn;
  const unit = circleArc({ x: 0, y: 0 }, { x: cos(from), y: sin(from) }, angle);
  const center = spotOf(entity);
  // Seen from behind it goes round the other way.
  const way = facingOf(entity) === "mirrored" ? -share : share;
  return { path: movedBy([long.x, long.y, -long.y * way, long.x * way, center.x, center.y], unit) };
};

interface Vertex {
  readonly at: Point;
  readonly bulge: number;
}

const bentLine = (entity: DxfEntity, vertices: readonly Vertex[], closed: boolean): LineRead => {
  // Such an arc would lack less than a thousandth of its whole circle.
  if (vertices.some(({ bulge }) => Math.abs(bulge) > 1000))
    return { leftOut: `${entity.type} entities with a bulge that is no arc` };
  return { path: bentPath(vertices, closed) };
};

const bentPath = (vertices: readonly Vertex[], closed: boolean): Path =>
  vertices.flatMap(({ at, bulge }, index) => {
    const next = vertices[index + 1] ?? (closed ? vertices[0] : undefined);
    return next === undefined ? [] : bulged(at, next.at, bulge);
  });

const lightPolyline = (entity: DxfEntity): LineRead => {
  const vertices: { at: { x: number; y: number }; bulge: number }[] = [];
  for (const tag of entity.tags) {
    const last = vertices.at(-1);
    if (tag.code === 10) vertices.push({ at: { x: numberOf({ ...entity, tags: [tag] }, 10, 0), y: 0 }, bulge: 0 });
    else if (tag.code === 20 && last) last.at.y = numberOf({ ...entity, tags: [tag] }, 20, 0);
    else if (tag.code === 42 && last) last.bulge = numberOf({ ...entity, tags: [tag] }, 42, 0);
  }
  return bentLine(entity, vertices, (numberOf(entity, 70, 0) & 1) === 1);
};

const polyline = (entity: DxfEntity): LineRead => {
  const flags = numberOf(entity, 70, 0);
  if (flags & 80) return { leftOut: "surfaces" };
  const corners = entity.vertices.filter((vertex) => {
    // The points that pull a fitted line are not on it.
    const own = numberOf(vertex, 70, 0);
    return (own & 16) === 0;
  });
  const heights = flags & 8 ? corners.map((vertex) => numberOf(vertex, 30, 0)) : [];
  if (heights.some((height) => Math.abs(height - heights[0]!) > 1e-6))
    return { leftOut: "POLYLINE entities that do not lie flat on the page" };
  const vertices = corners.map((vertex) => ({ at: spotOf(vertex), bulge: flags & 8 ? 0 : numberOf(vertex, 42, 0) }));
  return bentLine(entity, vertices, (flags & 1) === 1);
};

const spline = (entity: DxfEntity): LineRead => {
  const degree = numberOf(entity, 71, 3);
  const knots = numbersOf(entity, 40);
  const weights = numbersOf(entity, 41);
  const controls = pairs(numbersOf(entity, 10), numbersOf(entity, 20));
  const onIt = pairs(numbersOf(entity, 11), numbersOf(entity, 21));
  if (controls.length === 0 && onIt.length > 1) {
    const apart = onIt.filter((p, i) => i === 0 || distance(p, onIt[i - 1]!) > 0);
    return apart.length < 2 ? { path: [] } : { path: hobbyCurve(apart.map((point) => ({ point }))), isMeasured: true };
  }
  const isSound =
    Number.isInteger(degree) &&
    degree >= 1 &&
    degree <= drawingLimits.degree &&
    controls.length > degree &&
    knots.length === controls.length + degree + 1 &&
    knots.every((knot, i) => i === 0 || knot >= knots[i - 1]!) &&
    (weights.length === 0 || (weights.length === controls.length && weights.every((weight) => weight > 0)));
  if (!isSound) return { leftOut: "SPLINE entities whose knots and points do not fit together" };
  const isAlike = weights.every((weight) => weight === weights[0]);
  return { path: splinePath({ degree, knots, controls, weights: isAlike ? [] : weights }) };
};

const pairs = (xs: readonly number[], ys: readonly number[]): Point[] =>
  xs.flatMap((x, i) => (ys[i] === undefined ? [] : [{ x, y: ys[i] }]));

const readers: ReadonlyMap<string, (entity: DxfEntity) => LineRead> = new Map([
  ["LINE", line],
  ["ARC", arc],
  ["CIRCLE", circle],
  ["ELLIPSE", ellipse],
  ["LWPOLYLINE", lightPolyline],
  ["POLYLINE", polyline],
  ["SPLINE", spline],
]);
