// Recipes to try things on: those of recipes/, and those on the test pages that can be read.
import { readdirSync, readFileSync } from "node:fs";
import { pageOf } from "../pages/page.ts";
import { textOf } from "../pages/worked-page.ts";
import { parse } from "./told.ts";

const read = (folder: URL, ending: string): { name: string; text: string }[] =>
  readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(ending))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(name, folder), "utf8") }));

/** Every recipe for people to use. */
export const recipes = read(new URL("../../recipes/", import.meta.url), ".chalk");

/** Every recipe of every test page, mistakes and all. */
export const pageRecipes = read(new URL("../pages/", import.meta.url), ".md").flatMap(({ name, text }) => {
  const page = pageOf(text);
  return page.cases.map((each) => ({ name: `${name}:${each.recipe.line}`, text: textOf(page, each), page, each }));
});

/** Those that are read without a mistake: only they can be tidied. */
export const readable = [...recipes, ...pageRecipes].filter(
  ({ text }) => parse({ file: "test.chalk", text }).diagnostics.length === 0,
);
