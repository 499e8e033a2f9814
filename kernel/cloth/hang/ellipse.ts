// The round of a body: an ellipse, walked evenly along its circumference.
import { distance, type Point } from "../../geometry/point.ts";
import { cos, sin } from "../../geometry/trig.ts";

/** The spot of an ellipse with this circumference at a share of it, from the middle of the front to the right, and the way out. */
export const onEllipse = (
  share: number,
  around: number,
  depth: number,
): { readonly at: Point; readonly out: Point } => {
  const { angles, length } = unitEllipse(depth);
  const at = share * (angles.length - 1);
  const index = Math.min(angles.length - 2, Math.floor(at));
  const angle = angles[index]! + (angles[index + 1]! - angles[index]!) * (at - index);
  const half = around / length;
  const [x, y] = [sin(angle), cos(angle)];
  const steep = Math.sqrt(depth * depth * x * x + y * y);
  return { at: { x: half * x, y: half * depth * y }, out: { x: (depth * x) / steep, y: y / steep } };
};

/** An ellipse of half width 1: its circumference, and the angles of spots that are evenly apart along it. */
const unitEllipse = (depth: number): { readonly angles: readonly number[]; readonly length: number } => {
  const known = ellipses.get(depth);
  if (known) return known;
  const steps = 1440;
  const spots = Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = (2 * Math.PI * step) / steps;
    return { x: sin(angle), y: depth * cos(angle) };
  });
  const lengths = [0];
  for (let step = 1; step <= steps; step += 1)
    lengths.push(lengths[step - 1]! + distance(spots[step - 1]!, spots[step]!));
  const length = lengths[steps]!;
  let step = 1;
  const angles = Array.from({ length: 721 }, (_, index) => {
    const wanted = (length * index) / 720;
    while (step < steps && lengths[step]! < wanted) step += 1;
    const share = (wanted - lengths[step - 1]!) / (lengths[step]! - lengths[step - 1]!);
    return (2 * Math.PI * (step - 1 + share)) / steps;
  });
  const made = { angles, length };
  ellipses.set(depth, made);
  return made;
};

const ellipses = new Map<number, ReturnType<typeof unitEllipse>>();
