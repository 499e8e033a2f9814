// Opens what the command line names: a file, a folder full of recipes, or standard input.
import { statSync } from "node:fs";
import { limits } from "../../grammar/limits.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import { findRecipes } from "../files/find-recipes.ts";
import { type OpenedRecipe, openBytes, openRecipe } from "../files/recipe-files.ts";
import { unreadable } from "../files/unreadable.ts";

/** The recipe at a path, or on standard input where the path is `-`. */
export const openNamed = async (path: string, root: string | undefined): Promise<OpenedRecipe | Unreadable> => {
  if (path !== "-") return openRecipe(path, root);
  try {
    return openBytes(await inputBytes(), root);
  } catch {
    // A folder as standard input, say.
    return unreadable("file-unreadable", "Standard input cannot be read.");
  }
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

const inputBytes = async (): Promise<Uint8Array> => {
  const chunks: Buffer[] = [];
  let length = 0;
  for await (const chunk of process.stdin) {
    chunks.push(chunk);
    length += chunk.length;
    // One byte too many is enough to say so.
    if (length > limits.fileBytes) break;
  }
  return Buffer.concat(chunks);
};
