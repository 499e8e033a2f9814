// Packing as a task that may be given to somebody else: plain data in, a layout out.
import { pack } from "./pack.ts";
import type { Layout, Strip } from "./strip.ts";

export interface PackTask {
  readonly strip: Strip;
  readonly seed: number;
  readonly effort: number;
  /** A layout no longer than this will do; 0 for the shortest that the effort finds. */
  readonly enough: number;
}

/** A layout, and whether it is what the task asked for and not only what there was when somebody stopped. */
export interface Packed {
  readonly layout: Layout;
  readonly isWhole: boolean;
}

/** Packs, a look at each yield; the same for the same task however often it is asked to go on. */
export function* packed({ strip, seed, effort, enough }: PackTask): Generator<Layout, Layout> {
  const search = pack(strip, seed, effort);
  for (;;) {
    const { done, value } = search.next();
    if (done) return value;
    if (value.best.length <= enough) return value.best;
    yield value.best;
  }
}

/** Packs at once, unless it is asked to stop. */
export const packedUntil = (task: PackTask, isStopped: () => boolean): Packed => {
  const search = packed(task);
  for (;;) {
    const { done, value: layout } = search.next();
    if (done || isStopped()) return { layout, isWhole: done === true };
  }
};
