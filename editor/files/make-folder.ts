// Makes folders, and takes away again those that were made for nothing.
import { mkdirSync, rmdirSync, statSync } from "node:fs";
import { dirname } from "node:path";
import { systemCode } from "./why-refused.ts";

/**
 * Makes a folder and those above it, where they are not there, and tells which it made, the innermost first. Throws the system's
 * error, and none of them is left then. Node's own way of doing so turns in circles where the system lets nobody make a folder and
 * says that it is not there (/proc).
 */
export const makeFolder = (path: string): string[] => {
  try {
    mkdirSync(path);
    return [path];
  } catch (error) {
    if (isFolder(path)) return [];
    const above = dirname(path);
    if (systemCode(error) !== "ENOENT" || above === path || isFolder(above)) throw error;
    const made = makeFolder(above);
    try {
      mkdirSync(path);
    } catch (within) {
      if (isFolder(path)) return made;
      removeEmpty(made);
      throw within;
    }
    return [path, ...made];
  }
};

/** Takes folders away, the innermost first, as long as nobody has put anything into them. */
export const removeEmpty = (folders: readonly string[]): void => {
  try {
    for (const each of folders) rmdirSync(each);
  } catch {
    // It is no longer ours alone.
  }
};

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
