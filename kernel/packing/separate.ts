// Moves copies that overlap until none does: each in turn to a place where its weighted overlaps are less, and after every round
// the overlaps that are left weigh more (guided local search: J. Egeblad, B. K. Nielsen, A. Odgaard 2007, "Fast neighborhood
// search for two- and three-dimensional nesting problems"; weights as in arXiv:2509.13329).
import type { Draw } from "../stress/seeded.ts";
import { type Bed, type Kept, kept, lay, putBack, weightedDepth, wholeDepth } from "./bed.ts";
import { findPlace } from "./find-place.ts";

/** When separating gives up. */
export interface Patience {
  /** So many rounds without a smaller sum of overlaps end a try. */
  readonly rounds: number;
  /** So many tries in a row that gained little end it all. */
  readonly tries: number;
}

// A try gains little that leaves more than this share of the overlap.
const littleGained = 0.98;

/** Rounds until nothing overlaps or nothing more is gained; yields after each round; gives the least overlap found. */
export function* separated(
  bed: Bed,
  draw: Draw,
  patience: Patience,
): Generator<void, { readonly depth: number; readonly least: Kept }> {
  let [depth, least] = [wholeDepth(bed), kept(bed)];
  bed.weights.fill(1);
  for (let poor = 0; poor < patience.tries && depth > 0; ) {
    const before = depth;
    for (let idle = 0; idle < patience.rounds && depth > 0; idle += 1) {
      round(bed, draw);
      const now = wholeDepth(bed);
      if (now < depth) {
        if (now < depth * littleGained) idle = -1;
        [depth, least] = [now, kept(bed)];
      }
      reweigh(bed);
      yield;
    }
    poor = depth < before * littleGained ? 0 : poor + 1;
    if (depth > 0) putBack(bed, least);
  }
  return { depth, least };
}

/** Every copy that overlaps another, in chance order, goes where it overlaps less. */
const round = (bed: Bed, draw: Draw): void => {
  const overlapping = shuffled(
    Array.from({ length: bed.count }, (_, copy) => copy).filter((copy) => weightedDepth(bed, copy) > 0),
    draw,
  );
  for (const copy of overlapping) {
    const loss = weightedDepth(bed, copy);
    if (loss === 0) continue;
    const place = findPlace(bed, copy, draw);
    if (place.loss < loss) lay(bed, copy, place);
  }
};

// The deepest overlap has its weight doubled, a slight one gets a fifth more; what does not overlap loses a twentieth.
const most = 2;
const some = 1.2;
const faded = 0.95;

const reweigh = ({ depths, weights }: Bed): void => {
  const deepest = depths.reduce((a, b) => Math.max(a, b), 0);
  if (deepest === 0) return;
  for (let i = 0; i < depths.length; i += 1) {
    const depth = depths[i]!;
    weights[i] =
      depth > 0 ? weights[i]! * (some + ((most - some) * depth) / deepest) : Math.max(1, weights[i]! * faded);
  }
};

const shuffled = (numbers: number[], draw: Draw): number[] => {
  for (let i = numbers.length - 1; i > 0; i -= 1) {
    const j = Math.floor(draw() * (i + 1));
    [numbers[i], numbers[j]] = [numbers[j]!, numbers[i]!];
  }
  return numbers;
};
