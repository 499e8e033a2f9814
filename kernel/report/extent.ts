// How large a closed line is: around, inside, across and down.
import { pathLength } from "../geometry/arc-length.ts";
import { signedArea } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";

/** All in mm and square mm. */
export interface Extent {
  readonly area: number;
  readonly perimeter: number;
  readonly width: number;
  readonly height: number;
}

/** The extent of a closed path, as it lies on the table. */
export const extentOf = (loop: Path): Extent => {
  const { left, top, right, bottom } = bounds([loop]);
  return {
    area: Math.abs(signedArea(loop)),
    perimeter: pathLength(loop),
    width: right - left,
    height: bottom - top,
  };
};
