// A recipe of recipes/ worked for the bench, from wherever the bench is started in the checkout.
import { readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import type { Sources } from "../../kernel/sources.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

const recipes = resolve("recipes");

/** Reads the files of recipes/ as if it were the root. */
export const recipesFolder: Sources = {
  read: (path, from) => {
    const file = relative(recipes, resolve(recipes, dirname(from), path));
    return { file, text: readFileSync(join(recipes, file), "utf8") };
  },
};

export const recipeIn = (file: string): Outcome =>
  kernel(vocabulary).work({ file, text: readFileSync(join(recipes, file), "utf8") }, { sources: recipesFolder });
