// The worker of a long run: rounds of recipes until it is stopped. It says what it is about to run, so that whoever watches it knows
// what a recipe without end was given to.
import { parentPort, workerData } from "node:worker_threads";
import { allTargets } from "./all-targets.ts";
import { type Fault, faultsOn, type Tally } from "./faults.ts";
import { textsToTry } from "./recipes-to-try.ts";
import type { Kind } from "./target.ts";

/** What a worker is started with. */
export interface Rounds {
  readonly seed: number;
  readonly round: number;
  /** Kinds of fault that need not be told again. */
  readonly known: readonly string[];
}

/** What a worker tells. */
export type Word =
  | {
      readonly kind: "begins";
      readonly target: string;
      readonly text: string;
      readonly of: Kind;
      readonly round: number;
    }
  | { readonly kind: "fault"; readonly fault: Fault; readonly seed: number }
  | { readonly kind: "worked"; readonly tallies: ReadonlyMap<string, Tally> };

const tell = (word: Word): void => parentPort!.postMessage(word);

const { seed, round: first, known: told } = workerData as Rounds;
const known = new Set(told);
const targets = allTargets();

// Of targets that take long, each gets one recipe of so many, and not all of them the same one.
const dearEvery = 4;
let tried = 0;

for (let round = first; ; round += 1) {
  for (const subject of textsToTry(20, seed + round)) {
    tried += 1;
    const tallies = new Map<string, Tally>();
    const faults = await faultsOn(
      targets,
      [subject],
      known,
      tallies,
      (target, { text, kind = "recipe" }) => tell({ kind: "begins", target: target.name, text, of: kind, round }),
      (target) => target.isDear === true && (tried + targets.indexOf(target)) % dearEvery !== 0,
    );
    for (const fault of faults) tell({ kind: "fault", fault, seed: seed + round });
    tell({ kind: "worked", tallies });
  }
}
