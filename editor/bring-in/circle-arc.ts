// Arcs of circles and ellipses as they stand in files. An arc of a circle carries its centre as the pivot of its cubics, so that
// it can be written as an arc again.
import { arcAbout, arcSpans } from "../../kernel/geometry/arc.ts";
import { cubic, line, type Path } from "../../kernel/geometry/path.ts";
import { cross, dot, type Point } from "../../kernel/geometry/point.ts";
import { atan, atan2, cos, sin } from "../../kernel/geometry/trig.ts";
import { type Affine, movedBy } from "./affine.ts";

/** The arc about a centre from a start, through an angle in radians from the x axis toward the y axis. */
export const circleArc = (center: Point, start: Point, angle: number): Path =>
  about(center, arcSpans(center, start, angle));

/** All round a circle, from its rightmost point. */
export const wholeCircle = (center: Point, radius: number): Path => {
  const start = { x: center.x + radius, y: center.y };
  return closedUp(circleArc(center, start, 2 * Math.PI));
};

/** All round an ellipse with upright axes. */
export const wholeEllipse = ({ x, y }: Point, rx: number, ry: number): Path =>
  rx === ry
    ? wholeCircle({ x, y }, rx)
    : movedBy([rx, 0, 0, ry, x, y], closedUp(arcSpans({ x: 0, y: 0 }, { x: 1, y: 0 }, 2 * Math.PI)));

/**
 * The arc of an ellipse between two ends (W3C SVG 2, appendix B.2.4 "Conversion from endpoint to center parameterization" and
 * B.2.5 for radii out of range); the turn of the ellipse in radians.
 */
export const arcBetween = (
  start: Point,
  end: Point,
  radii: { readonly rx: number; readonly ry: number; readonly turn: number },
  isLarge: boolean,
  isSweep: boolean,
): Path => {
  if (start.x === end.x && start.y === end.y) return [];
  let [rx, ry] = [Math.abs(radii.rx), Math.abs(radii.ry)];
  if (rx === 0 || ry === 0) return [line(start, end)];
  const [c, s] = [cos(radii.turn), sin(radii.turn)];
  const half = { x: (start.x - end.x) / 2, y: (start.y - end.y) / 2 };
  const p = { x: c * half.x + s * half.y, y: -s * half.x + c * half.y };
  const lack = (p.x / rx) ** 2 + (p.y / ry) ** 2;
  if (lack > 1) [rx, ry] = [rx * Math.sqrt(lack), ry * Math.sqrt(lack)];
  const spare = Math.max(0, 1 - (p.x / rx) ** 2 - (p.y / ry) ** 2);
  // Radii so large that nothing of their circle is to be seen.
  if ((p.x / rx) ** 2 + (p.y / ry) ** 2 < 1e-14) return [line(start, end)];
  const reach = Math.sqrt(spare / ((p.x / rx) ** 2 + (p.y / ry) ** 2)) * (isLarge === isSweep ? -1 : 1);
  const middle = { x: (reach * rx * p.y) / ry, y: (-reach * ry * p.x) / rx };
  const center = {
    x: c * middle.x - s * middle.y + (start.x + end.x) / 2,
    y: s * middle.x + c * middle.y + (start.y + end.y) / 2,
  };
  // On the unit circle that the ellipse is a picture of.
  const from = { x: (p.x - middle.x) / rx, y: (p.y - middle.y) / ry };
  const to = { x: (-p.x - middle.x) / rx, y: (-p.y - middle.y) / ry };
  const short = atan2(cross(from, to), dot(from, to));
  const swept = isSweep ? (short < 0 ? short + 2 * Math.PI : short) : short > 0 ? short - 2 * Math.PI : short;
  if (rx === ry) return about(center, arcAbout(center, start, end, swept));
  const placed: Affine = [rx * c, rx * s, -ry * s, ry * c, center.x, center.y];
  return endingAt(movedBy(placed, arcSpans({ x: 0, y: 0 }, from, swept)), start, end);
};

/** The stretch of a bent line that bulges: `bulge` is the tangent of a quarter of the angle it turns through (DXF reference, VERTEX). */
export const bulged = (start: Point, end: Point, bulge: number): Path => {
  if (start.x === end.x && start.y === end.y) return [];
  if (Math.abs(bulge) < flatBulge) return [line(start, end)];
  const turn = 4 * atan(bulge);
  // From the middle of the chord to the centre, square to it: half the chord over the tangent of half the angle.
  const out = (1 - bulge * bulge) / (4 * bulge);
  const center = {
    x: (start.x + end.x) / 2 - (end.y - start.y) * out,
    y: (start.y + end.y) / 2 + (end.x - start.x) * out,
  };
  return about(center, arcAbout(center, start, end, turn));
};

// A bulge below this lifts a metre of line by less than a thousandth of a millimetre.
const flatBulge = 1e-6;

const about = (center: Point, path: Path): Path => path.map((span) => ({ ...span, pivot: center }));

const closedUp = (path: Path): Path => endingAt(path, path[0]!.start, path[0]!.start);

/** The same cubics with their ends on these two points to the last digit. */
const endingAt = (path: Path, start: Point, end: Point): Path =>
  path.map((span, index) => {
    if (span.kind === "line") return span;
    const from = index === 0 ? start : span.start;
    const to = index === path.length - 1 ? end : span.end;
    return { ...cubic(from, span.startHandle, span.endHandle, to), ...(span.pivot && { pivot: span.pivot }) };
  });
