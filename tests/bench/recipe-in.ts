// A recipe of recipes/ worked for the bench, from wherever the bench is started in the checkout.
import { readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

const recipes = resolve("recipes");

export const recipeIn = (file: string): Outcome =>
  kernel(vocabulary).work(
    { file, text: readFileSync(join(recipes, file), "utf8") },
    {
      sources: {
        read: (path, from) => {
          const used = relative(recipes, resolve(recipes, dirname(from), path));
          return { file: used, text: readFileSync(join(recipes, used), "utf8") };
        },
      },
    },
  );
