// The middle of the area inside a closed path: where a sheet cut along it would balance.
import { flattened } from "./area.ts";
import type { Path } from "./path.ts";
import type { Point } from "./point.ts";

/** The middle of the area of a closed path, mm, within what a bent line 0.5 mm off gives. */
export const middleOfArea = (loop: Path): Point => {
  const points = flattened(loop, 0.5);
  // Each corner's triangle with the first point counts by its signed area.
  const first = points[0]!;
  let [twice, x, y] = [0, 0, 0];
  points.forEach((a, index) => {
    const b = points[(index + 1) % points.length]!;
    const share = (a.x - first.x) * (b.y - first.y) - (b.x - first.x) * (a.y - first.y);
    twice += share;
    x += (a.x + b.x + first.x) * share;
    y += (a.y + b.y + first.y) * share;
  });
  return twice === 0 ? first : { x: x / (3 * twice), y: y / (3 * twice) };
};
