// Two large copies of different shapes change places, so that a search that is stuck goes on from another arrangement.
import type { Draw } from "../stress/seeded.ts";
import { type Bed, measureAll, putDown } from "./bed.ts";
import { largestFirst } from "./by-size.ts";
import { clamp } from "./clamp.ts";

/** Exchanges two of the larger half at chance, middle for middle; nothing where all are of one shape. */
export const exchangeTwo = (bed: Bed, draw: Draw): void => {
  const large = largestFirst(bed).slice(0, Math.max(2, Math.ceil(bed.count / 2)));
  const first = large[Math.floor(draw() * large.length)]!;
  const others = large.filter((copy) => shapeOf(bed, copy) !== shapeOf(bed, first));
  if (others.length === 0) return;
  const second = others[Math.floor(draw() * others.length)]!;
  const [a, b] = [middle(bed, first), middle(bed, second)];
  putMiddle(bed, first, b);
  putMiddle(bed, second, a);
  measureAll(bed);
};

const shapeOf = (bed: Bed, copy: number): number => bed.turned[bed.lies[copy]!]!.shape;

const middle = (bed: Bed, copy: number): readonly [number, number] => [
  bed.x[copy]! + bed.long[copy]! / 2,
  bed.y[copy]! + bed.wide[copy]! / 2,
];

const putMiddle = (bed: Bed, copy: number, [x, y]: readonly [number, number]): void => {
  const lies = bed.lies[copy]!;
  const { long, wide, least, most } = bed.turned[lies]!;
  putDown(bed, copy, { lies, x: clamp(x - long / 2, 0, bed.length - long), y: clamp(y - wide / 2, least, most) });
};
