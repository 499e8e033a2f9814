// Which line lies inside which. Asking is dear, so that there is an end to it.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { contains } from "../../kernel/geometry/area.ts";
import { type Bounds, bounds } from "../../kernel/geometry/bounds.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
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

  /** Whether a closed line lies inside another, or runs as one with it, as along a fold. */
  isRoundAbout(outline: Path, other: Path): boolean {
    const box = this.boxOf(other);
    const around = this.boxOf(outline);
    if (!holds(around, { x: box.left, y: box.top }) || !holds(around, { x: box.right, y: box.bottom })) return false;
    const length = pathLength(other);
    return spread
      .map((share) => pointAt(other, share * length))
      .every((p) => this.holdsPoint(outline, p) || nearest(outline, p).distance <= endsMeetWithin);
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

// Nine places round a closed line, at no even distances, so that no pattern of corners meets them all.
const spread = [0.03, 0.13, 0.24, 0.37, 0.43, 0.56, 0.68, 0.79, 0.93];

/** Whether a box holds a point, or has it at its rim. */
export const holds = ({ left, top, right, bottom }: Bounds, { x, y }: Point): boolean =>
  x >= left - endsMeetWithin &&
  x <= right + endsMeetWithin &&
  y >= top - endsMeetWithin &&
  y <= bottom + endsMeetWithin;
