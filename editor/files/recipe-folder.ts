// One folder of recipes that is open in the editor: nothing outside it is listed, read or written, and only .chalk files are.
import { createHash } from "node:crypto";
import { realpathSync, statSync } from "node:fs";
import { basename, dirname, isAbsolute, join, relative, sep } from "node:path";
import type { Unreadable } from "../../kernel/sources.ts";
import { findRecipes } from "./find-recipes.ts";
import { ChangedMeanwhile } from "./not-saved.ts";
import { realPathOf } from "./open-file.ts";
import { readText, textOf } from "./read-text.ts";
import { saveAll } from "./save.ts";
import { unreadable } from "./unreadable.ts";
import { refusedPath } from "./written-path.ts";

/** A recipe as it lies on the disk; the mark tells one content from another. */
export interface KeptRecipe {
  readonly file: string;
  readonly text: string;
  readonly mark: string;
}

/** What came of saving: the new mark, or what lies on the disk instead of what was expected there. */
export type Saved = { readonly mark: string } | { readonly differs: KeptRecipe | null } | Unreadable;

export interface RecipeFolder {
  /** The folder's own name. */
  readonly name: string;
  /** Every recipe that can be read, by its path from the folder with / between the parts. */
  all(): KeptRecipe[];
  /** The mark of every recipe that can be read; files that nobody has touched since the last time are not read again. */
  marks(): ReadonlyMap<string, string>;
  read(file: string): KeptRecipe | Unreadable;
  /** Writes a recipe when the disk still holds what is marked `was`; null says that there was no file. */
  save(file: string, text: string, was: string | null): Saved;
}

// More recipes than a workroom has, and an end for a folder that is full of them.
const mostRecipes = 2000;

// Somebody is writing the file, or the system is out of file handles.
const passing: ReadonlySet<string> = new Set(["file-changing", "file-unreadable"]);

/** Opens a folder; `folder` is there and is one. */
export const recipeFolder = (folder: string): RecipeFolder => {
  const root = realpathSync(folder);

  const read = (file: string): KeptRecipe | Unreadable => {
    const path = pathOf(file);
    if (typeof path !== "string") return path;
    const content = readText(path, file, (handle) => {
      const real = realPathOf(handle, path);
      return real !== undefined && isInside(relative(root, real)) ? undefined : outside(file);
    });
    return "problem" in content ? content : { file, text: content.text, mark: markOf(content.text) };
  };

  /** The path on the disk that a file name means; its folder has to be there and to lie inside. */
  const pathOf = (file: string): string | Unreadable => {
    const refused = refusedPath(file);
    if (refused) return refused;
    const path = join(root, ...file.split("/"));
    if (!isInside(relative(root, path))) return outside(file);
    const real = realOrUndefined(path);
    if (real !== undefined) return isInside(relative(root, real)) && real.endsWith(".chalk") ? real : outside(file);
    const above = realOrUndefined(dirname(path));
    if (above === undefined) return unreadable("file-missing", `There is no folder for ${file}.`);
    return above === root || isInside(relative(root, above)) ? join(above, basename(path)) : outside(file);
  };

  /** Every recipe's name here, with its path on the disk. */
  const found = (): { readonly file: string; readonly path: string }[] =>
    findRecipes(root)
      .slice(0, mostRecipes)
      .map((path) => ({ file: relative(root, path).split(sep).join("/"), path }));

  const marked = new Map<string, { readonly touched: string; readonly mark: string }>();
  const markAt = (file: string, path: string): string | undefined => {
    const touched = touchedAt(path);
    const known = marked.get(file);
    if (known && touched !== undefined && known.touched === touched) return known.mark;
    const content = read(file);
    // What cannot be read just now is not gone: the next look will tell.
    if ("problem" in content) return passing.has(content.problem.code) ? known?.mark : undefined;
    if (touched !== undefined) marked.set(file, { touched, mark: content.mark });
    return content.mark;
  };

  return {
    name: basename(root),
    all: () =>
      found().flatMap(({ file }) => {
        const content = read(file);
        return "problem" in content ? [] : [content];
      }),
    marks: () =>
      new Map(
        found().flatMap(({ file, path }) => {
          const mark = markAt(file, path);
          return mark === undefined ? [] : [[file, mark] as const];
        }),
      ),
    read,
    save(file, text, was) {
      const path = pathOf(file);
      if (typeof path !== "string") return path;
      const kept = asItWillBeRead(text, file);
      if ("problem" in kept) return kept;
      const there = statSync(path, { throwIfNoEntry: false }) ? read(file) : null;
      if (there && "problem" in there) return there;
      if ((there?.mark ?? null) !== was) return { differs: there };
      try {
        saveAll([{ path, content: text, was: there ? { text: there.text } : "no file" }]);
      } catch (error) {
        if (!(error instanceof ChangedMeanwhile)) throw error;
        // Somebody wrote while we did: the user is asked, as when it had been before.
        const now = statSync(path, { throwIfNoEntry: false }) ? read(file) : null;
        return now && "problem" in now ? now : { differs: now };
      }
      return { mark: markOf(kept.text) };
    },
  };
};

/** A text as reading the file will give it; refused where it would not be read, or come back as another. */
const asItWillBeRead = (text: string, file: string): { readonly text: string } | Unreadable => {
  const nullAt = text.indexOf("\0");
  if (nullAt >= 0)
    return unreadable(
      "file-not-text",
      `${file} was not saved: its line ${lineAt(text, nullAt)} holds a null character, and no text file does. Take it out.`,
    );
  const kept = textOf(Buffer.from(text), file);
  // A letter of two halves, of which one was lost, is written as a mark of replacement.
  const broken = "problem" in kept ? -1 : text.search(/\p{Surrogate}/u);
  if (broken < 0) return kept;
  return unreadable(
    "file-not-text",
    `${file} was not saved: its line ${lineAt(text, broken)} holds half a letter, which no file can keep. Take it out.`,
  );
};

const lineAt = (text: string, offset: number): number => text.slice(0, offset).split("\n").length;

/** Tells one content from another. */
export const markOf = (text: string): string => createHash("sha256").update(text).digest("hex").slice(0, 24);

/** Whatever the system changes when a file is written or another is put in its place; undefined where it is gone. */
const touchedAt = (path: string): string | undefined => {
  const facts = statSync(path, { bigint: true, throwIfNoEntry: false });
  return facts && [facts.dev, facts.ino, facts.size, facts.mtimeNs, facts.ctimeNs].join(" ");
};

const outside = (file: string): Unreadable =>
  unreadable("file-outside", `${file} lies outside the folder that is open.`);

const realOrUndefined = (path: string): string | undefined => {
  try {
    return realpathSync(path);
  } catch {
    return undefined;
  }
};

const isInside = (within: string): boolean =>
  within !== "" && within !== ".." && !within.startsWith(`..${sep}`) && !isAbsolute(within);
