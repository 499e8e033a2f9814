// One line for every step of the record. A drafting step that has nothing to tell is told by its own line of the recipe.
import type { Outcome } from "../kernel.ts";
import { type StepRecord, tellStep } from "../record.ts";

/** A step in one line of words. */
export const stepWords = (record: StepRecord, outcome: Outcome): string => {
  const told = tellStep(record, outcome.garment);
  if (told !== "") return told;
  return outcome.tree.text.slice(record.where.from, record.where.to).replace(/\s+/g, " ");
};
