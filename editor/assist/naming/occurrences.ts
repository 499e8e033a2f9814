// Every word in which a name stands, where it is given and where it is used, in all recipes that are known.
import type { WrittenLine } from "../written.ts";
import type { WrittenWord } from "../written-word.ts";
import type { Given } from "./blocks.ts";
import { meant, measuresCalled } from "./meant.ts";
import type { NamedRecipe, Recipes } from "./recipes.ts";

/** A word that stands for a name. */
export interface Occurrence {
  readonly recipe: NamedRecipe;
  readonly line: WrittenLine;
  readonly word: WrittenWord;
  readonly isGiven: boolean;
  /** All that it may stand for. */
  readonly meant: readonly Given[];
}

/** Where any of these names stands; those of the opened recipe first, each recipe's from top to bottom. */
export const occurrencesOf = (recipes: Recipes, wanted: readonly Given[]): Occurrence[] => {
  const sought = withSameBody(recipes, wanted);
  const names = new Set(wanted.map(({ word }) => word.text));
  const others = [...recipes.all.values()].filter((recipe) => recipe !== recipes.opened);
  others.sort((a, b) => (a.source.file < b.source.file ? -1 : 1));
  return [recipes.opened, ...others].flatMap((recipe) =>
    recipe.written.lines.flatMap((line) =>
      line.words.flatMap((word, at): Occurrence[] => {
        if (!names.has(word.text)) return [];
        const stands = meant(recipes, recipe, line, at);
        if (!stands.some((given) => sought.has(given))) return [];
        const isGiven = recipe.blocks.at.get(word.from)?.word === word;
        return [{ recipe, line, word, isGiven, meant: stands }];
      }),
    ),
  );
};

/** Where a name stands with all names that have to be called the same, because some word stands for either. */
export const allOccurrences = (recipes: Recipes, wanted: readonly Given[]): Occurrence[] => {
  let known = new Set(wanted);
  for (;;) {
    const found = occurrencesOf(recipes, [...known]);
    const grown = new Set([...known, ...found.flatMap((each) => each.meant)]);
    if (grown.size === known.size) return found;
    known = grown;
  }
};

const withSameBody = (recipes: Recipes, wanted: readonly Given[]): ReadonlySet<Given> =>
  new Set(
    wanted.flatMap((given) =>
      given.kind === "measure" ? [given, ...measuresCalled(recipes, given.file, given.word.text)] : [given],
    ),
  );
