// A kernel that has worked many recipes remembers what they used; what it makes of the next must be what a fresh one makes.
import { kernel, type Outcome } from "../../../kernel/kernel.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";
import { comesTo } from "../../language/without-places.ts";
import { sources } from "../seed-recipes.ts";
import { holds, type Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";

/** The target, around what remembers. */
export const workingAnewAfter = (remembered: (text: string) => Outcome): Target => ({
  name: "work anew",
  isDear: true,
  run({ text }) {
    const anew = kernel(vocabulary).work({ file: "fuzz.chalk", text }, { sources });
    holds(told(remembered(text)) === told(anew), "a kernel that remembers says otherwise");
  },
});

export const workingAnew = workingAnewAfter(workedOnce);

const told = (outcome: Outcome): string => JSON.stringify([comesTo(outcome), outcome.findings]);
