// Turning a point about another.
import type { Point } from "./point.ts";
import { cos, sin } from "./trig.ts";

/** p turned about a centre by an angle in radians, positive clockwise on the page. */
export const rotated = (p: Point, about: Point, angle: number): Point => {
  const c = cos(angle);
  const s = sin(angle);
  const dx = p.x - about.x;
  const dy = p.y - about.y;
  return { x: about.x + dx * c - dy * s, y: about.y + dx * s + dy * c };
};
