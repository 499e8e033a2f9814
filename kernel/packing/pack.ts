// Packs shapes into a strip of fixed width, as short as it comes in a given effort. From a first fit the strip is shortened a
// little again and again, and what then overlaps is separated; where that fails, large copies change places and it is tried
// from there; the last part of the effort shortens in ever smaller steps. The whole is that of J. Gardeyn, G. Vanden Berghe,
// T. Wauters 2025 (arXiv:2509.13329) with no-fit polygons in place of their poles to measure overlaps, as in S. Imamichi,
// M. Yagiura, H. Nagamochi 2009 (from memory).
import { seeded } from "../stress/seeded.ts";
import { clear, emptyBed, type Kept, kept, layoutOf, putBack } from "./bed.ts";
import { largestFirst, nearlyLargestFirst } from "./by-size.ts";
import { firstFit } from "./first-fit.ts";
import { closing, compressing, exploring, type Phase } from "./phases.ts";
import { inRows } from "./rows.ts";
import type { Layout, Strip } from "./strip.ts";

/** How far a packing has come, and the shortest layout so far. */
export interface Progress {
  /** 0 to 1. */
  readonly done: number;
  readonly best: Layout;
}

/**
 * Shortens the layout of a strip until so many places have been looked at and overlaps measured; the same for the same seed and effort. It may be stopped
 * at every yield, and has then lost nothing.
 */
export function* pack(strip: Strip, seed: number, effort: number): Generator<Progress, Layout> {
  const draw = seeded(seed);
  const bed = emptyBed(strip);
  // Whoever stops at once has something to cut by.
  inRows(bed, largestFirst(bed));
  let best = kept(bed);
  let layout = layoutOf(bed);
  const found = (): void => {
    if (bed.length >= best.length) return;
    best = kept(bed);
    layout = layoutOf(bed);
  };
  const progress = (): Progress => ({ done: Math.min(1, bed.spent / effort), best: layout });
  function* telling(work: Generator<void, void>): Generator<Progress, void> {
    for (const _ of work) yield progress();
  }
  yield progress();
  clear(bed);
  yield* telling(firstFit(bed, largestFirst(bed), effort));
  const plain = kept(bed);
  found();
  yield progress();
  const others: Kept[] = [];
  const until = Math.min(effort * begun, bed.count * begunEach);
  while (strip.shapes.length > 1 && bed.spent < until) {
    clear(bed);
    yield* telling(firstFit(bed, nearlyLargestFirst(bed, draw), effort));
    found();
    const fit = kept(bed);
    yield progress();
    if ([plain, ...others].some(({ length }) => length === fit.length)) continue;
    others.push(fit);
    others.sort((a, b) => a.length - b.length).splice(goneOnWith);
  }
  const exploration: Phase = { bed, draw, until: effort * explored, found };
  for (const fit of [plain, ...others].sort((a, b) => a.length - b.length)) {
    putBack(bed, fit);
    yield* telling(closing(exploration));
  }
  putBack(bed, best);
  yield* telling(exploring(exploration));
  putBack(bed, best);
  yield* telling(compressing({ ...exploration, until: effort }));
  return layout;
}

// So much of the effort goes to finding other arrangements, the rest to pressing the best one together.
const explored = 0.8;

// So much of the effort goes to other first fits, in orders near that of the largest first, and no more than so much for each copy; the shortest of them
// are gone on with, besides that of the largest first.
const begun = 0.1;
const begunEach = 40_000;
const goneOnWith = 3;
