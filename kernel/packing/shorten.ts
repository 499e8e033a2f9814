// Makes the strip shorter, and pushes together what lies in it; overlaps are left for others to separate.
import type { Draw } from "../stress/seeded.ts";
import { type Bed, measureAll, putDown } from "./bed.ts";
import { clamp } from "./clamp.ts";

/** No layout is shorter than this: the longest shape must fit, and all areas together. */
export const leastLength = ({ strip, turned, choices }: Bed): number => {
  const longest = choices.map((numbers) => Math.min(...numbers.map((lies) => turned[lies]!.long)));
  const area = choices.reduce((sum, [first]) => sum + turned[first!]!.area, 0);
  return Math.max(0, area / strip.width, ...longest);
};

/** Shortens the strip to a share of a length; what lies beyond a place at chance moves back. False where it cannot be shorter. */
export const shortened = (bed: Bed, from: number, share: number, draw: Draw): boolean => {
  const length = Math.max(leastLength(bed), from * share);
  if (length >= from) return false;
  const by = bed.length - length;
  const cut = draw() * length;
  bed.length = length;
  for (let copy = 0; copy < bed.count; copy += 1) {
    const moved = bed.x[copy]! + bed.long[copy]! / 2 > cut ? bed.x[copy]! - by : bed.x[copy]!;
    // What has become longer than the strip is turned to a side that fits.
    const fits = (lies: number): boolean => bed.turned[lies]!.long <= length;
    const lies = fits(bed.lies[copy]!) ? bed.lies[copy]! : bed.choices[copy]!.find(fits)!;
    const { long, least, most } = bed.turned[lies]!;
    putDown(bed, copy, { lies, x: clamp(moved, 0, length - long), y: clamp(bed.y[copy]!, least, most) });
  }
  measureAll(bed);
  return true;
};
