// Seeing a flat thing from aslant: the map between a rectangle on the paper and the four-sided figure that it makes in a
// picture. The formulas are those of P. S. Heckbert, "Fundamentals of Texture Mapping and Image Warping" (1989), section 2.2.
import type { Point } from "../../kernel/geometry/point.ts";

/** Three rows of three: a point (x, y) goes to (ax + by + c, dx + ey + f) / (gx + hy + i). */
export type Homography = readonly [number, number, number, number, number, number, number, number, number];

/** Four corners in turn. */
export type Quad = readonly [Point, Point, Point, Point];

/**
 * Takes the rectangle from (0, 0) to (width, height), corner by corner clockwise on the page, to four points in turn, which must
 * make a figure whose corners all point outward.
 */
export const rectangleTo = (width: number, height: number, [p, q, r, s]: Quad): Homography => {
  const [alongX, alongY] = [q.x - r.x, q.y - r.y];
  const [downX, downY] = [s.x - r.x, s.y - r.y];
  // What is missing from a parallelogram; without it there is no perspective.
  const [rest, restY] = [p.x - q.x + r.x - s.x, p.y - q.y + r.y - s.y];
  const whole = alongX * downY - downX * alongY;
  const g = (rest * downY - downX * restY) / whole;
  const h = (alongX * restY - rest * alongY) / whole;
  return [
    (q.x - p.x + g * q.x) / width,
    (s.x - p.x + h * s.x) / height,
    p.x,
    (q.y - p.y + g * q.y) / width,
    (s.y - p.y + h * s.y) / height,
    p.y,
    g / width,
    h / height,
    1,
  ];
};

/** The map back, kept so that what lies before the horizon of the one lies before the horizon of the other. */
export const inverse = ([a, b, c, d, e, f, g, h, i]: Homography): Homography => {
  const determinant = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  // The adjugate over the determinant.
  return [
    (e * i - f * h) / determinant,
    (c * h - b * i) / determinant,
    (b * f - c * e) / determinant,
    (f * g - d * i) / determinant,
    (a * i - c * g) / determinant,
    (c * d - a * f) / determinant,
    (d * h - e * g) / determinant,
    (b * g - a * h) / determinant,
    (a * e - b * d) / determinant,
  ];
};

/** The same map with everything it gives made so many times larger about (0, 0). */
export const enlarged = ([a, b, c, d, e, f, g, h, i]: Homography, times: number): Homography => [
  a * times,
  b * times,
  c * times,
  d * times,
  e * times,
  f * times,
  g,
  h,
  i,
];

/** Where a point goes; undefined on the horizon and beyond it, where no paper is seen. */
export const sentBy = ([a, b, c, d, e, f, g, h, i]: Homography, { x, y }: Point): Point | undefined => {
  const depth = g * x + h * y + i;
  // Beside the sizes it is summed up from, what is left over by rounding alone is nothing.
  if (depth <= rounding * (Math.abs(g * x) + Math.abs(h * y) + Math.abs(i))) return undefined;
  return { x: (a * x + b * y + c) / depth, y: (d * x + e * y + f) / depth };
};

// A share of the sum that rounding may leave over.
const rounding = 1e-9;
