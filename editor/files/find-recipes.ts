// The recipes in a folder and the folders below it, in an order that is the same everywhere.
import { type Dirent, readdirSync } from "node:fs";
import { join } from "node:path";
import { systemCode } from "./why-refused.ts";

// Deeper than any workroom files its recipes, and an end for a folder that somebody made to have none.
const deepest = 32;

/** Paths of all .chalk files under a folder; hidden folders, installed packages and links are passed by. */
export const findRecipes = (folder: string, depth = 0): string[] =>
  entriesOf(folder).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      const isPassedBy = entry.name.startsWith(".") || entry.name === "node_modules" || depth >= deepest;
      return isPassedBy ? [] : findRecipes(path, depth + 1);
    }
    return entry.isFile() && entry.name.endsWith(".chalk") ? [path] : [];
  });

const passedBy: ReadonlySet<string> = new Set(["EACCES", "EPERM", "ENOENT", "ENOTDIR", "ELOOP", "ENAMETOOLONG"]);

const entriesOf = (folder: string): Dirent[] => {
  try {
    return readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  } catch (error) {
    // A folder that may not be looked into holds nothing for us, nor does one that has just gone. But where the system is out of
    // file handles, say, recipes that are there must not count as missing.
    if (!passedBy.has(systemCode(error) ?? "")) throw error;
    return [];
  }
};
