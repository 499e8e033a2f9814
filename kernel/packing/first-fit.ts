// A first layout: the largest shape first, each as near to the strip's beginning as it can lie without an overlap (the bottom-left
// rule of B. S. Baker, E. G. Coffman, R. L. Rivest 1980, at the corners of no-fit polygons as in Bennell and Oliveira 2008).
import type { Point } from "../geometry/point.ts";
import { type Bed, type Place, putDown, regionOf, weightedDepthAt } from "./bed.ts";
import { eachSide } from "./no-fit.ts";
import { inRows } from "./rows.ts";

/** Fills an empty bed, the copies in the given order, and sets its length; what is left when the effort is spent goes in rows. */
export function* firstFit(bed: Bed, order: readonly number[], until: number): Generator<void, void> {
  const laid: number[] = [];
  // What is laid only takes room away, so that a shape finds none before where it last found some.
  const from = new Float64Array(bed.turned.length);
  bed.length = 0;
  for (const copy of order) {
    if (bed.spent >= until) break;
    const place = firstPlace(bed, copy, laid, from);
    putDown(bed, copy, place);
    laid.push(copy);
    bed.length = Math.max(bed.length, place.x + bed.turned[place.lies]!.long);
    yield;
  }
  inRows(bed, order.slice(laid.length));
}

const firstPlace = (bed: Bed, copy: number, laid: readonly number[], from: Float64Array): Place => {
  let [best, reach] = [behindAll(bed, copy), Number.POSITIVE_INFINITY];
  for (const lies of bed.choices[copy]!) {
    const { long } = bed.turned[lies]!;
    // Its far end counts, so that a shape that lies well one way is not stood on end for a nearer corner.
    const free = candidates(bed, lies, laid, from[lies]!).find(
      ({ x, y }) => x + long >= reach || weightedDepthAt(bed, copy, lies, x, y, Number.MIN_VALUE) === 0,
    );
    if (!free) continue;
    from[lies] = free.x;
    if (free.x + long >= reach) continue;
    [best, reach] = [{ lies, ...free }, free.x + long];
  }
  return best;
};

const behindAll = (bed: Bed, copy: number): Place => {
  const lies = bed.choices[copy]![0]!;
  return { lies, x: bed.length, y: bed.turned[lies]!.least };
};

/** Corners of the regions of what is laid, and where their borders meet the sides of the strip, nearest first. */
const candidates = (bed: Bed, lies: number, laid: readonly number[], from: number): Point[] => {
  const { least, most } = bed.turned[lies]!;
  const found: Point[] = [
    { x: 0, y: least },
    { x: 0, y: most },
  ];
  for (const other of laid) {
    const [atX, atY] = [bed.x[other]!, bed.y[other]!];
    // Its region ends a hair behind its box.
    if (atX + bed.long[other]! * 1.001 < from) continue;
    eachSide(regionOf(bed, bed.lies[other]!, lies), (x0, y0, x1, y1) => {
      if (y0 + atY >= least && y0 + atY <= most) found.push({ x: x0 + atX, y: y0 + atY });
      for (const side of least === most ? [least] : [least, most]) {
        const level = side - atY;
        if (y0 > level === y1 > level) continue;
        const x = x0 + ((level - y0) / (y1 - y0)) * (x1 - x0);
        found.push({ x: x + atX + bed.length * 1e-12, y: side });
      }
    });
  }
  return found.filter(({ x }) => x >= from).sort((a, b) => a.x - b.x || a.y - b.y);
};
