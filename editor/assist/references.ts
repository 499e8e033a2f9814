// Every place where the name under the cursor is given and used, in this recipe and in others.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import type { Source } from "../../kernel/sources.ts";
import { namedAt } from "./named-at.ts";
import { occurrencesOf } from "./naming/occurrences.ts";
import { recipesAround } from "./naming/recipes.ts";
import type { WorkedText } from "./worked-text.ts";

/** A word that stands for a name; its line counts from 1. */
export interface Reference {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  /** The name is given here. */
  readonly isGiven: boolean;
}

/** Where the name at an offset stands, in the opened recipe, in those it uses, and in these others. */
export const references = (worked: WorkedText, offset: number, others: readonly Source[] = []): Reference[] => {
  const recipes = recipesAround(worked, others);
  const starts = new Map<string, number[]>();
  return occurrencesOf(recipes, namedAt(recipes, offset)?.meant ?? []).map(({ recipe, word, isGiven }) => {
    const { file, text } = recipe.source;
    const lines = starts.get(file) ?? lineStarts(text);
    starts.set(file, lines);
    return { file, from: word.from, to: word.to, line: lineOf(lines, word.from), isGiven };
  });
};
