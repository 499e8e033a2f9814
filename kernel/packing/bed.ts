// The strip while it is being filled: where every copy lies, how far each two overlap, and what an overlap weighs. It is the one
// thing in packing that changes in place, in flat arrays, because the search asks it a million times a second.
import { depthIn, exchanged, movedRegion, type NoFit, noFit } from "./no-fit.ts";
import type { Layout, Strip } from "./strip.ts";
import { type TurnedShape, turnedShapes } from "./turned-shape.ts";

export interface Bed {
  readonly strip: Strip;
  readonly turned: readonly TurnedShape[];
  /** How many copies are laid. */
  readonly count: number;
  /** For every copy the numbers of the turned shapes that it may lie as. */
  readonly choices: readonly (readonly number[])[];
  /** For every copy the turned shape it lies as, the corner of its box, and the measures of the box. */
  readonly lies: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly long: Float64Array;
  readonly wide: Float64Array;
  /** For every two copies how deep they overlap, and by what it is multiplied; both ways round. */
  readonly depths: Float64Array;
  readonly weights: Float64Array;
  /** No-fit regions of two turned shapes, made when first asked for. */
  readonly regions: (NoFit | undefined)[];
  length: number;
  /** How many places have been looked at, and overlaps measured there: the measure of effort. What grows with the square of
   * many copies counts as well, or hundreds of them would take minutes of the effort of seconds. */
  spent: number;
}

/** A place for one copy: the turned shape it lies as and the corner of its box. */
export interface Place {
  readonly lies: number;
  readonly x: number;
  readonly y: number;
}

// Shapes are kept apart by this share of the strip's width, so that rounding never makes an overlap.
const gap = 1e-7;

/** A bed in which nothing lies yet. */
export const emptyBed = (strip: Strip): Bed => {
  const turned = turnedShapes(strip);
  const choicesOf = strip.shapes.map((_, shape) => turned.flatMap((each, i) => (each.shape === shape ? [i] : [])));
  const choices = strip.shapes.flatMap(({ count }, shape) => Array.from({ length: count }, () => choicesOf[shape]!));
  const count = choices.length;
  const bed: Bed = {
    strip,
    turned,
    count,
    choices,
    lies: new Int32Array(count),
    x: new Float64Array(count),
    y: new Float64Array(count),
    long: new Float64Array(count),
    wide: new Float64Array(count),
    depths: new Float64Array(count * count),
    weights: new Float64Array(count * count).fill(1),
    regions: [],
    length: 0,
    spent: 0,
  };
  clear(bed);
  return bed;
};

/** Takes everything out of the bed: all copies are so far off that they meet none. */
export const clear = (bed: Bed): void => {
  bed.choices.forEach(([first], copy) => {
    putDown(bed, copy, { lies: first!, x: Number.NEGATIVE_INFINITY, y: 0 });
  });
};

/** Lays a copy at a place, without looking at what lies there. */
export const putDown = (bed: Bed, copy: number, { lies, x, y }: Place): void => {
  bed.lies[copy] = lies;
  bed.x[copy] = x;
  bed.y[copy] = y;
  bed.long[copy] = bed.turned[lies]!.long;
  bed.wide[copy] = bed.turned[lies]!.wide;
};

/** Lays a copy at a place and measures how deep it overlaps the others. */
export const lay = (bed: Bed, copy: number, place: Place): void => {
  putDown(bed, copy, place);
  for (let other = 0; other < bed.count; other += 1) measure(bed, copy, other);
};

/** Measures all overlaps anew. */
export const measureAll = (bed: Bed): void => {
  bed.spent += Math.floor((bed.count / many) ** 2) * eachSquare;
  for (let copy = 0; copy < bed.count; copy += 1) {
    for (let other = copy + 1; other < bed.count; other += 1) measure(bed, copy, other);
  }
};

// Fewer copies, or turned shapes, than this are a garment or a few: what it takes to go through them is in the price of a look.
const many = 128;

// What it costs, as overlaps measured, to go through all pairs of so many copies; and to make a region where the shapes are many,
// for each two of their parts.
const eachSquare = 40;
const eachSum = 10;

const measure = (bed: Bed, copy: number, other: number): void => {
  const depth = copy === other ? 0 : depthBetween(bed, copy, other);
  bed.depths[copy * bed.count + other] = depth;
  bed.depths[other * bed.count + copy] = depth;
};

const depthBetween = (bed: Bed, copy: number, other: number): number => {
  const [dx, dy] = [bed.x[copy]! - bed.x[other]!, bed.y[copy]! - bed.y[other]!];
  if (dx >= bed.long[other]! || dx <= -bed.long[copy]! || dy >= bed.wide[other]! || dy <= -bed.wide[copy]!) return 0;
  return depthIn(regionOf(bed, bed.lies[other]!, bed.lies[copy]!), dx, dy);
};

/** All overlaps of a copy as it lies, each times its weight. */
export const weightedDepth = (bed: Bed, copy: number): number => {
  const row = copy * bed.count;
  let sum = 0;
  for (let i = row; i < row + bed.count; i += 1) sum += bed.depths[i]! * bed.weights[i]!;
  return sum;
};

/** All overlaps in the bed. */
export const wholeDepth = (bed: Bed): number => {
  bed.spent += Math.floor((bed.count / many) ** 2) * eachSquare;
  return bed.depths.reduce((sum, depth) => sum + depth, 0) / 2;
};

/** The weighted overlaps that a copy would have at a place; where they come to `enough`, that is all one learns. */
export const weightedDepthAt = (bed: Bed, copy: number, lies: number, x: number, y: number, enough: number): number => {
  const { count, turned, weights, long: longs, wide: wides, x: xs, y: ys, lies: lieAs } = bed;
  const { long, wide } = turned[lies]!;
  const row = copy * count;
  let sum = 0;
  let spent = 1 + Math.floor(count / many);
  for (let other = 0; other < count; other += 1) {
    // Boxes that do not overlap are told by two numbers each; of a hundred copies, five are left.
    const dx = x - xs[other]!;
    if (dx >= longs[other]! || dx <= -long) continue;
    const dy = y - ys[other]!;
    if (dy >= wides[other]! || dy <= -wide || other === copy) continue;
    spent += 1;
    sum += weights[row + other]! * depthIn(regionOf(bed, lieAs[other]!, lies), dx, dy);
    if (sum >= enough) break;
  }
  bed.spent += spent;
  return sum;
};

/** Where a turned shape may not lie because of another whose box begins at (0, 0). */
export const regionOf = (bed: Bed, fixed: number, moving: number): NoFit => {
  const at = fixed * bed.turned.length + moving;
  const known = bed.regions[at];
  if (known) return known;
  const [first, second] = [bed.turned[fixed]!, bed.turned[moving]!];
  const made = noFit(first.parts, second.parts, gap * bed.strip.width);
  if (bed.turned.length > many) bed.spent += first.parts.length * second.parts.length * eachSum;
  remember(bed, fixed, moving, made);
  // The two turned by half a turn together: all is the other way round, and boxes begin where they ended.
  if (first.opposite !== undefined && second.opposite !== undefined) {
    const shift = { x: first.long - second.long, y: first.wide - second.wide };
    remember(bed, first.opposite, second.opposite, movedRegion(exchanged(made), shift));
  }
  return made;
};

const remember = ({ regions, turned }: Bed, fixed: number, moving: number, region: NoFit): void => {
  regions[fixed * turned.length + moving] = region;
  regions[moving * turned.length + fixed] = exchanged(region);
};

/** What lies in the bed, as a layout. */
export const layoutOf = ({ turned, lies, x, y, length }: Bed): Layout => ({
  length,
  placements: Array.from(lies, (number, copy) => {
    const { shape, turn, flipped, origin } = turned[number]!;
    const by = { x: x[copy]! + origin.x, y: y[copy]! + origin.y };
    return flipped ? { shape, turn, by, flipped } : { shape, turn, by };
  }),
});

/** Where every copy lies, to be put back later. */
export interface Kept {
  readonly length: number;
  readonly places: readonly Place[];
}

/** Where every copy lies now. */
export const kept = ({ lies, x, y, length }: Bed): Kept => ({
  length,
  places: Array.from(lies, (number, copy) => ({ lies: number, x: x[copy]!, y: y[copy]! })),
});

/** Lays every copy where it lay. */
export const putBack = (bed: Bed, { length, places }: Kept): void => {
  bed.length = length;
  places.forEach((place, copy) => {
    putDown(bed, copy, place);
  });
  measureAll(bed);
};
