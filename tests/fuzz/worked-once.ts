// Recipes worked for all targets in turn: the last few outcomes are kept, since most targets begin with the same one.
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { sources } from "./seed-recipes.ts";

export const chalkline = kernel(vocabulary);

const kept = new Map<string, Outcome>();
const most = 4;

/** What comes of a recipe that stands at the root of recipes/. */
export const workedOnce = (text: string): Outcome => {
  const known = kept.get(text);
  if (known) return known;
  const outcome = chalkline.work({ file: "fuzz.chalk", text }, { sources });
  const [oldest] = kept.keys();
  if (kept.size >= most && oldest !== undefined) kept.delete(oldest);
  kept.set(text, outcome);
  return outcome;
};
