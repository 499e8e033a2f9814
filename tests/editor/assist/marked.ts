// A recipe with a mark where the cursor stands, worked as it is without the mark.
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type WorkedText, workedText } from "../../../editor/assist/worked-text.ts";
import type { Sources } from "../../../kernel/sources.ts";
import { chalkline, recipeSources } from "../../worked-recipe.ts";

export interface Marked {
  readonly worked: WorkedText;
  readonly offset: number;
}

/** The recipe with its `|` taken out, and where that stood; a `chalkline 1` is put before it. */
export const marked = (recipe: string, file = "test.chalk"): Marked => {
  const text = `chalkline 1\n${recipe}`;
  const offset = text.indexOf("|");
  if (offset < 0) throw new Error("the recipe has no mark");
  return { worked: worked(text.slice(0, offset) + text.slice(offset + 1), file), offset };
};

/** A text, worked as if it lay in recipes/. */
export const worked = (text: string, file = "test.chalk"): WorkedText =>
  workedText(chalkline, { file, text }, { sources });

/** The recipes of recipes/; a path that is only half typed leads nowhere. */
const sources: Sources = {
  read: (path, from) => {
    try {
      return recipeSources.read(path, from);
    } catch {
      return { problem: { code: "use-unreadable", message: `There is no file ${path}.` } };
    }
  },
};

const recipes = new URL("../../../recipes/", import.meta.url);

/** The recipes of recipes/, by name. */
export const recipeFiles: readonly string[] = readdirSync(fileURLToPath(recipes), { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".chalk"))
  .map((name) => name.replaceAll("\\", "/"))
  .sort();

/** The text of one of them. */
export const recipeText = (file: string): string => readFileSync(new URL(file, recipes), "utf8");
