// The recipes of one folder, as the kernel reads them: nothing outside that folder is ever read for a `use`.
import { readdirSync, realpathSync, statSync } from "node:fs";
import { basename, dirname, isAbsolute, relative, resolve, sep } from "node:path";
import { listWithOr, nearest } from "../../grammar/nearest.ts";
import { type SourceText, sourceText } from "../../grammar/source.ts";
import type { Source, Sources, Unreadable } from "../../kernel/sources.ts";
import { realPathOf } from "./open-file.ts";
import { cannotRead, readText, textOf } from "./read-text.ts";
import { unreadable } from "./unreadable.ts";
import { refusedPath } from "./written-path.ts";

/** How findings name the recipe that came through standard input. */
export const standardInput = "<stdin>";

/** A recipe that was opened, the way to those it uses, and every text read so far by the name findings use. */
export interface OpenedRecipe {
  readonly source: Source;
  readonly sources: Sources;
  readonly texts: ReadonlyMap<string, SourceText>;
}

/** Opens the recipe that the user named. `root` widens the folder it may use others from; where not said, it is the recipe's own. */
export const openRecipe = (path: string, root: string | undefined): OpenedRecipe | Unreadable => {
  const read = readText(path, path);
  if ("problem" in read) return read;
  let real: string;
  try {
    real = realpathSync(path);
  } catch (error) {
    // It was there a moment ago, and what was read may be half of what its writer meant.
    return cannotRead(error, path);
  }
  return opened({ file: shownName(real), text: read.text }, dirname(real), root, real);
};

/** Opens a recipe whose bytes came through standard input; it uses others from the working directory. */
export const openBytes = (bytes: Uint8Array, root: string | undefined): OpenedRecipe | Unreadable => {
  const read = textOf(bytes, "standard input");
  if ("problem" in read) return read;
  return opened({ file: standardInput, text: read.text }, realpathSync("."), root, undefined);
};

/** A file by its path from the working directory where it lies under it, with / on every system; else by its whole path. */
export const shownName = (real: string): string => {
  const within = relative(realpathSync("."), real);
  return isInside(within) ? within.split(sep).join("/") : real;
};

const opened = (
  source: Source,
  folder: string,
  rootGiven: string | undefined,
  real: string | undefined,
): OpenedRecipe | Unreadable => {
  const root = rootGiven === undefined ? folder : realFolder(rootGiven);
  if (typeof root !== "string") return root;
  if (real !== undefined && !isInside(relative(root, real))) {
    return unreadable("root-elsewhere", `${source.file} does not lie in the folder ${rootGiven} that --root names.`);
  }
  const texts = new Map([[source.file, sourceText(source.text)]]);
  const foldersOf = new Map([[source.file, folder]]);
  const read = (path: string, from: string): Source | Unreadable => {
    const found = usedFile(path, foldersOf.get(from) ?? folder, root);
    if (typeof found !== "string") return found;
    const file = found === real ? source.file : shownName(found);
    const known = texts.get(file);
    if (known) return { file, text: known.text };
    const content = readText(found, path, (handle) => leftRoot(handle, found, root, path));
    if ("problem" in content) return content;
    texts.set(file, sourceText(content.text));
    foldersOf.set(file, dirname(found));
    return { file, text: content.text };
  };
  return { source, sources: { read }, texts };
};

const realFolder = (path: string): string | Unreadable => {
  try {
    const real = realpathSync(path);
    if (statSync(real).isDirectory()) return real;
  } catch {
    // Said below.
  }
  return unreadable("root-missing", `There is no folder ${path}, which --root names.`);
};

/** The real path of the file that a `use` line means; it ends in .chalk and lies in the root folder. */
const usedFile = (path: string, folder: string, root: string): string | Unreadable => {
  const refused = refusedPath(path);
  if (refused) return refused;
  const meant = resolve(folder, path);
  if (!isInside(relative(root, meant))) return outside(path);
  let real: string;
  try {
    real = realpathSync(meant);
  } catch {
    return missing(path, meant, root);
  }
  if (!isInside(relative(root, real))) return outside(path);
  if (!real.endsWith(".chalk"))
    return unreadable("use-ending", `${path} is a link to a file that does not end in .chalk.`);
  return real;
};

const outside = (path: string): Unreadable =>
  unreadable("use-outside", `${path} lies outside the folder that recipes are read from.`, {
    hint: "Move the recipe into that folder, or open this one with --root and a folder that holds both.",
  });

const missing = (path: string, meant: string, root: string): Unreadable => {
  const near = nearest(basename(meant, ".chalk"), recipeNamesIn(dirname(meant), root)).map((name) => `${name}.chalk`);
  const hint = near.length === 0 ? {} : { hint: `Did you mean ${listWithOr(near)}?` };
  return unreadable("file-missing", `There is no file ${path}.`, hint);
};

const recipeNamesIn = (folder: string, root: string): string[] => {
  try {
    if (!isInside(relative(root, realpathSync(folder)), true)) return [];
    return readdirSync(folder).flatMap((name) => (name.endsWith(".chalk") ? [basename(name, ".chalk")] : []));
  } catch {
    return [];
  }
};

// Between asking for the real path and opening it, a link could have been turned to point elsewhere: what counts is
// where the open file lies.
const leftRoot = (handle: number, expected: string, root: string, path: string): Unreadable | undefined => {
  const real = realPathOf(handle, expected);
  return real !== undefined && isInside(relative(root, real)) ? undefined : outside(path);
};

const isInside = (within: string, orItself = false): boolean =>
  within === "" ? orItself : within !== ".." && !within.startsWith(`..${sep}`) && !isAbsolute(within);
