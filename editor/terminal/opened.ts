// Opens what the command line names: a file, a folder full of recipes, or standard input.
import { statSync } from "node:fs";
import { limits } from "../../grammar/limits.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import { findRecipes } from "../files/find-recipes.ts";
import { type OpenedRecipe, openBytes, openRecipe } from "../files/recipe-files.ts";
import { unreadable } from "../files/unreadable.ts";
import { inputBytes } from "./input-bytes.ts";

/** The recipe at a path, or on standard input where the path is `-`. */
export const openNamed = async (path: string, root: string | undefined): Promise<OpenedRecipe | Unreadable> => {
  if (path !== "-") return openRecipe(path, root);
  const read = await inputBytes(limits.fileBytes);
  return "problem" in read ? read : openBytes(read.bytes, root);
};

/** A path that may have been a folder, and what stands for it: recipes, or the reason why there are none. */
export type Named = { readonly path: string } | { readonly path: string; readonly problem: Unreadable["problem"] };

/** The recipes that a list of paths means; a folder stands for all recipes in it. */
export const namedRecipes = (paths: readonly string[]): Named[] => [
  ...new Map(paths.flatMap(namedBy).map((named) => [named.path, named])).values(),
];

const namedBy = (path: string): Named[] => {
  if (path === "-" || !isFolder(path)) return [{ path }];
  const found = findRecipes(path);
  if (found.length > 0) return found.map((each) => ({ path: each }));
  return [{ path, ...unreadable("folder-empty", `There is no .chalk file in the folder ${path}.`) }];
};

/** Whether a folder lies at a path. */
export const isFolder = (path: string): boolean => {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
};
