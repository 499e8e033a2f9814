// Lays copies box by box, in rows across the strip: no good layout, but one that is there at once however many copies there are.
import { type Bed, putDown } from "./bed.ts";

// Between two boxes, as a share of the strip's width: more than regions stand out from their shapes.
const apart = 1e-6;

/** Lays copies behind the length that the bed has, those of about one length in a row, and sets the length anew. */
export const inRows = (bed: Bed, copies: readonly number[]): void => {
  const gap = apart * bed.strip.width;
  const lies = (copy: number): number => bed.choices[copy]![0]!;
  const long = (copy: number): number => bed.turned[lies(copy)]!.long;
  let [x, y] = [bed.length + gap, 0];
  for (const copy of [...copies].sort((a, b) => long(b) - long(a) || a - b)) {
    const { wide, least, most } = bed.turned[lies(copy)]!;
    // What is held across lies where it must; where that is taken, it begins a row.
    if (Math.max(y, least) > most) [x, y] = [bed.length + gap, 0];
    const at = Math.max(y, least);
    putDown(bed, copy, { lies: lies(copy), x, y: at });
    bed.length = Math.max(bed.length, x + long(copy));
    y = at + wide + gap;
  }
};
