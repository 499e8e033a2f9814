// Which line lies inside which. Asking is dear, so that there is an end to it.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { contains } from "../../kernel/geometry/area.ts";
import { type Bounds, bounds } from "../../kernel/geometry/bounds.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { endsMeetWithin } from "./chained.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { Refused } from "./refused.ts";

/** Counts how often it is asked what lies inside what. */
export class Inside {
  private count = 0;
  private readonly boxes = new Map<Path, Bounds>();

  isInside(outline: Path, other: Path): boolean {
    const [around, box] = [this.boxOf(outline), this.boxOf(other)];
    if (!holds(around, { x: box.left, y: box.top }) || !holds(around, { x: box.right, y: box.bottom })) return false;
    // By its middle: the ends of an inner line often lie on the outline itself.
    return this.holdsPoint(outline, pointAt(other, pathLength(other) * 0.43));
  }

  holdsPoint(outline: Path, p: Point): boolean {
    if (!holds(this.boxOf(outline), p)) return false;
    this.count += 1 + outline.length / 64;
    if (this.count > drawingLimits.insideAsked)
      throw new Refused("There are too many lines inside one another to tell which belongs to which.");
    return contains(outline, p);
  }

  boxOf(path: Path): Bounds {
    let box = this.boxes.get(path);
    if (box === undefined) {
      box = bounds([path]);
      this.boxes.set(path, box);
    }
    return box;
  }
}

/** Whether a box holds a point, or has it at its rim. */
export const holds = ({ left, top, right, bottom }: Bounds, { x, y }: Point): boolean =>
  x >= left - endsMeetWithin &&
  x <= right + endsMeetWithin &&
  y >= top - endsMeetWithin &&
  y <= bottom + endsMeetWithin;
