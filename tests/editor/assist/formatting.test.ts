// Tidying as edits.
import { expect, test } from "vitest";
import { changesBetween, formatting } from "../../../editor/assist/formatting.ts";
import { edited } from "../../../editor/assist/text-edit.ts";
import { tidy } from "../../../grammar/print.ts";
import { chalkline } from "../../worked-recipe.ts";
import { recipeFiles, recipeText, worked } from "./marked.ts";

test("a tidy recipe needs no edits", () => {
  expect(formatting(worked("chalkline 1\nunits cm\n"))).toEqual({ edits: [] });
});

test("only what is untidy is changed", () => {
  const text = "chalkline 1\nunits   cm\nlet a = 1 cm\n\n\n\nlet b  =  2 cm\n";
  const told = formatting(worked(text));
  if (!("edits" in told)) throw new Error("it was refused");
  expect(edited(text, told.edits)).toBe("chalkline 1\nunits cm\nlet a = 1 cm\n\nlet b = 2 cm\n");
  const touched = told.edits.map(({ from, to }) => text.slice(from, to)).join("");
  expect(touched.trim()).not.toMatch(/chalkline|let a/);
});

test("a recipe that cannot be read whole is left alone, and the reason is told", () => {
  const told = formatting(worked("chalkline 1\nlet a = = 1 cm\n"));
  expect(told).toHaveProperty("refused");
  expect("refused" in told && told.refused).toContain("line 2");
});

test("a recipe with a mistake that has nothing to do with its words is tidied all the same", () => {
  const told = formatting(worked("chalkline 1\nlet a  = nowhere\n"));
  expect("edits" in told && told.edits).toHaveLength(1);
});

test("edits bring about the tidy text, whatever a recipe looked like before", () => {
  for (const file of recipeFiles) {
    const text = recipeText(file);
    const { tree, forms } = chalkline.parse({ file, text });
    const after = tidy(tree, forms);
    // Untidy in every third line, with blank lines where none belong and some lines out of their place.
    const before = text
      .split("\n")
      .flatMap((line, index) => (index % 3 === 0 ? [`  ${line}  `, ""] : index % 7 === 0 ? [] : [line]))
      .join("\n");
    const edits = changesBetween(before, after, file);
    expect(edited(before, edits)).toBe(after);
    edits.forEach((edit, index) => {
      expect(edit.from).toBeLessThanOrEqual(edit.to);
      if (index > 0) expect(edits[index - 1]!.to).toBeLessThanOrEqual(edit.from);
    });
  }
});
