// Moves that keep straight lines straight: turned, scaled, sheared, shifted. Written as SVG writes a matrix.
import { mapped, type Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { cos, sin } from "../../kernel/geometry/trig.ts";

/** A point (x, y) goes to (ax + cy + e, bx + dy + f). */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

export const unmoved: Affine = [1, 0, 0, 1, 0, 0];
export const shifted = (x: number, y: number): Affine => [1, 0, 0, 1, x, y];
export const scaled = (x: number, y: number): Affine => [x, 0, 0, y, 0, 0];

/** Turned about (0, 0) by radians, from the x axis toward the y axis. */
export const turned = (angle: number): Affine => [cos(angle), sin(angle), -sin(angle), cos(angle), 0, 0];

/** First the later, then the earlier, as in a list of transforms. */
export const after = (m: Affine, n: Affine): Affine => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

export const sentBy = ([a, b, c, d, e, f]: Affine, { x, y }: Point): Point => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** The path moved; arcs stay arcs only where circles stay circles. */
export const movedBy = (m: Affine, path: Path): Path => {
  const moved = mapped(path, (p) => sentBy(m, p));
  return keepsCircles(m) ? moved : moved.map(({ pivot: _, ...span }) => span);
};

const keepsCircles = ([a, b, c, d]: Affine): boolean => {
  const [first, second] = [a * a + b * b, c * c + d * d];
  const most = Math.max(first, second) * 1e-9;
  return Math.abs(first - second) <= most && Math.abs(a * c + b * d) <= most;
};
