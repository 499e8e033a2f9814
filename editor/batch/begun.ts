// Where a batch begins: at its first row, or behind the last one that the journal in its folder has; never in the results of another.
import { createHash, randomUUID } from "node:crypto";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import type { BodiesFile } from "./bodies-file.ts";
import { beginJournal, type Journal, type JournalHead, readJournal } from "./journal.ts";
import type { Parcel } from "./parcel.ts";
import { isRowFolder } from "./row-folder.ts";

/** A journal to go on with, behind its last whole line. */
export interface Begun extends Journal {
  readonly bytes: number;
}

/** The journal and the drawings of a batch, in its folder. */
export const journalIn = (folder: string): string => join(folder, "batch.journal");
export const drawingsIn = (folder: string): string => join(folder, "drawings");

/** The journal to go on with, or a new one; a sentence where the folder holds the results of something else. */
export const begunIn = (folder: string, parcel: Parcel, bodies: BodiesFile): Begun | string => {
  const head = headOf(parcel, bodies);
  const before = readJournal(journalIn(folder));
  if (typeof before === "string") return `${before} --anew begins again, in its place.`;
  if (!before) return beginJournal(journalIn(folder), head);
  const changed = whatChanged(before.head, head);
  if (changed === undefined) return before;
  return `${folder} holds the results of another batch: ${changed}. Give another folder with --out, or --anew to begin again in this one.`;
};

/** A new journal, whatever lies in the folder. */
export const begunAnew = (folder: string, parcel: Parcel, bodies: BodiesFile): Begun => {
  // Drawings of another batch could be taken for those of this one, and be cut.
  removeRowFolders(drawingsIn(folder));
  return beginJournal(journalIn(folder), headOf(parcel, bodies));
};

const headOf = (
  { program, recipe, used, set, size, as, paper, headings }: Parcel,
  bodies: BodiesFile,
): JournalHead => ({
  run: randomUUID(),
  program,
  file: recipe.file,
  recipe: digestOf([recipe.text, ...used.flatMap(({ path, from, text }) => [path, from, text])]),
  bodies: bodies.digest,
  options: JSON.stringify({ set, size, as: [...as].sort(), paper: [...paper].sort(), headings: digestOf(headings) }),
});

const digestOf = (texts: readonly string[]): string => createHash("sha256").update(JSON.stringify(texts)).digest("hex");

const whatChanged = (before: JournalHead, now: JournalHead): string | undefined => {
  if (before.file !== now.file) return `it was begun with the recipe ${before.file}, and this is ${now.file}`;
  if (before.recipe !== now.recipe) return "the recipe, or one that it uses, has been changed since";
  if (before.bodies !== now.bodies) return "the table of bodies is another one, or has been changed since";
  // Before the options, among which are the columns of the results: another build may have others.
  if (before.program !== now.program)
    return `it was begun by another build of Chalkline (${before.program}), and this is ${now.program}`;
  return before.options === now.options ? undefined : "it was begun with other options";
};

/** Removes the folders of rows, which a batch made, and nothing else. */
const removeRowFolders = (folder: string): void => {
  let names: readonly string[];
  try {
    names = readdirSync(folder);
  } catch {
    // There are no drawings.
    return;
  }
  for (const name of names) if (isRowFolder(name)) rmSync(join(folder, name), { recursive: true, force: true });
};
