// At every word of every recipe, completion in the middle of the word offers the word that stands there.
import { expect, test } from "vitest";
import { completion } from "../../../editor/assist/completion.ts";
import { written } from "../../../editor/assist/written.ts";
import { recipeFiles, recipeText, worked } from "./marked.ts";

// New names are free, and some cannot be foreseen; everything else can.
const least = 0.98;

test("completion knows the words of the recipes", { timeout: 120_000 }, () => {
  let [all, found] = [0, 0];
  const missed: string[] = [];
  for (const file of recipeFiles) {
    const recipe = worked(recipeText(file), file);
    for (const line of written(recipe).lines)
      for (const { text, means, from } of line.words) {
        if (!/^\p{L}/u.test(text)) continue;
        const offset = from + Math.ceil(text.length / 2);
        const isOffered = completion(recipe, offset, recipeFiles).some(({ label }) => label === text);
        all += 1;
        if (isOffered) found += 1;
        else if (means !== "NewName")
          missed.push(`${file}: ${text} in ${recipe.source.text.slice(line.from, line.to)}`);
      }
  }
  expect(all).toBeGreaterThan(5000);
  expect(found / all).toBeGreaterThan(least);
  expect(missed.length / all).toBeLessThan(0.005);
});
