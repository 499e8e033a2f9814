// The three ways in which a layout is made shorter, one after another: closing a first fit in large steps, exploring other
// arrangements, and compressing the best of them in ever smaller steps.
import type { Draw } from "../stress/seeded.ts";
import { type Bed, type Kept, kept, putBack } from "./bed.ts";
import { exchangeTwo } from "./exchange-two.ts";
import { type Patience, separated } from "./separate.ts";
import { shortened } from "./shorten.ts";

/** What a phase works on, when it ends, and whom it tells. */
export interface Phase {
  readonly bed: Bed;
  readonly draw: Draw;
  /** The effort at which it ends. */
  readonly until: number;
  /** Called whenever nothing in the bed overlaps. */
  readonly found: () => void;
}

// A first fit is shortened by this share of its length to begin with, and what does not soon come apart is given up.
const firstStep = 0.05;
const hasty: Patience = { rounds: 12, tries: 1 };

// Afterwards it is worth while to go on for longer. An arrangement is shortened by this share of the length at a time, the best
// one by shares between the other two.
const patient: Patience = { rounds: 60, tries: 3 };
const exploringStep = 0.002;
const [firstCompression, lastCompression] = [0.0005, 0.00001];

/** Shortens what lies in the bed in large steps, and in smaller ones where what overlaps does not soon come apart. */
export function* closing({ bed, draw, until, found }: Phase): Generator<void, void> {
  let best = kept(bed);
  for (let step = firstStep; step > exploringStep && bed.spent < until; ) {
    if (!shortened(bed, best.length, 1 - step, draw)) return;
    const end = yield* spending(bed, until, separated(bed, draw, hasty));
    if (end?.depth === 0) {
      found();
      best = kept(bed);
    } else {
      putBack(bed, best);
      step /= 2;
    }
  }
}

/** Shortens what lies in the bed a little at a time; where that fails, two copies change places and it is tried from there. */
export function* exploring({ bed, draw, until, found }: Phase): Generator<void, void> {
  let failures: { readonly depth: number; readonly least: Kept }[] = [];
  while (bed.spent < until) {
    if (failures.length === 0 && !shortened(bed, bed.length, 1 - exploringStep, draw)) return;
    const end = yield* spending(bed, until, separated(bed, draw, patient));
    if (!end) return;
    if (end.depth === 0) {
      found();
      failures = [];
      continue;
    }
    failures.push(end);
    failures.sort((a, b) => a.depth - b.depth);
    // One of the failures, those that overlap least oftener, is gone on from.
    const chosen = Math.floor(draw() * draw() * failures.length);
    putBack(bed, failures[chosen]!.least);
    exchangeTwo(bed, draw);
  }
}

/** Shortens what lies in the bed by less and less, and goes back to it where that fails. */
export function* compressing({ bed, draw, until, found }: Phase): Generator<void, void> {
  const from = bed.spent;
  let best = kept(bed);
  while (bed.spent < until) {
    const share = (bed.spent - from) / (until - from);
    const step = firstCompression * (lastCompression / firstCompression) ** share;
    if (!shortened(bed, best.length, 1 - step, draw)) return;
    const end = yield* spending(bed, until, separated(bed, draw, patient));
    if (!end) return;
    if (end.depth === 0) {
      found();
      best = kept(bed);
    } else putBack(bed, best);
  }
}

/** Runs on to the end; undefined where the effort was spent first. */
function* spending<Result>(
  bed: Bed,
  until: number,
  work: Generator<void, Result>,
): Generator<void, Result | undefined> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    if (bed.spent >= until) return undefined;
    yield;
  }
}
