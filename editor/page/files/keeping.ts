// Keeping what is on the table: saving it, drafts of it, and what happens when somebody else changes the file meanwhile.
// Nothing is ever written over, on the disk or on the table, without the user's word.
import { effect, signal } from "@preact/signals";
import { ask, failure, file, held, lay, savedText, shelved, text } from "../desk.ts";
import type { KernelLine } from "../worker/kernel-line.ts";
import type { FileText } from "../worker/spoken.ts";
import { type Draft, draftOf, keepDraft } from "./drafts.ts";
import type { Home, KeptHere } from "./home.ts";
import { clock, note, noteVersions } from "./versions.ts";

/** A choice that only the user can make. */
export type Choice =
  /** The file on the disk is another than the one that was opened; null when it is gone. */
  | { readonly kind: "changed-outside"; readonly theirs: KeptHere | null }
  /** There is a draft that was never saved. */
  | { readonly kind: "draft"; readonly draft: Draft };

export const choice = signal<Choice | undefined>(undefined);
/** "Saved", for a moment. */
export const notice = signal("");

let home: Home | undefined;
let line: KernelLine | undefined;
/** Tells the content on the disk that the text on the table was opened from or saved as. */
let mark: string | null = null;

// How often the browser keeps a draft, and how often the disk is looked at, ms.
const draftEvery = 1000;
const lookEvery = 2000;

/** Settles in a home: its recipes go on the shelf, and drafts and changes outside are seen to from now on. */
export const settle = (newHome: Home, kernelLine: KernelLine): void => {
  home = newHome;
  line = kernelLine;
  shelvedMarks = new Map(newHome.recipes.map((recipe) => [recipe.file, recipe.mark]));
  shelve(newHome.recipes);
  noteVersions();
  let timer: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    const draft = { file: file.value, text: text.value, over: savedText.value };
    clearTimeout(timer);
    if (draft.file !== "") timer = setTimeout(() => void keepDraft(newHome.name, draft), draftEvery);
  });
  // A window that is being closed or put aside keeps its draft at once.
  addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden") void keepNow();
  });
  addEventListener("pagehide", () => void keepNow());
  if (newHome.saves) setInterval(() => void lookOutside(), lookEvery);
};

/** What was never saved, by its name: it stays within reach of the shelf when something else is opened. */
const unsaved = new Map<string, string>();

const keepNow = async (): Promise<void> => {
  const [name, content] = [file.peek(), text.peek()];
  if (name !== "" && (unsaved.has(name) || !shelved.peek().some((recipe) => recipe.file === name))) {
    unsaved.set(name, content);
    shelve([...shelved.peek().filter((recipe) => recipe.file !== name), { file: name, text: content }].sort(byFile));
  }
  if (home && file.peek() !== "")
    await keepDraft(home.name, { file: file.peek(), text: text.peek(), over: savedText.peek() });
};

const shelve = (recipes: readonly FileText[]): void => {
  shelved.value = recipes;
  line?.shelve(recipes);
};

/** Opens one of the shelf's recipes; a draft of it is offered. */
export const open = async (name: string): Promise<void> => {
  if (!home) return;
  failure.value = "";
  await keepNow();
  const own = unsaved.get(name);
  if (own !== undefined) {
    layNew(name, own);
    return;
  }
  const kept = (await home.read(name)) ?? home.recipes.find((recipe) => recipe.file === name);
  if (!kept) {
    failure.value = `${name} cannot be read any more.`;
    return;
  }
  mark = kept.mark;
  lay(name, kept.text);
  choice.value = undefined;
  const draft = await draftOf(home.name, name);
  if (draft && draft.text !== kept.text && file.peek() === name) choice.value = { kind: "draft", draft };
};

/** Lays a text on the table that is no file of the shelf yet. */
export const openText = (name: string, content: string): void => {
  void keepNow();
  failure.value = "";
  mark = null;
  lay(name, content);
  choice.value = undefined;
};

/** Lays a text of the page's own making on the table, under a name that nothing has yet; it counts as changed until it is saved. */
export const openNew = (wanted: string, content: string): void => {
  void keepNow();
  failure.value = "";
  const taken = new Set([file.peek(), ...shelved.peek().map((recipe) => recipe.file)]);
  let name = wanted;
  for (let number = 2; taken.has(name); number += 1) name = wanted.replace(/(?:\.chalk)?$/, `-${number}.chalk`);
  layNew(name, content);
};

const layNew = (name: string, content: string): void => {
  mark = null;
  lay(name, content);
  savedText.value = "";
  choice.value = undefined;
};

/** Saves what is on the table; when the disk holds something else, the user is asked. */
export const save = async (): Promise<void> => {
  if (!home) return;
  const [name, content] = [file.peek(), text.peek()];
  const saved = await home.save(name, content, mark);
  if ("mark" in saved) {
    mark = saved.mark;
    unsaved.delete(name);
    shelvedMarks.set(name, saved.mark);
    if (file.peek() === name) savedText.value = content;
    shelve([...shelved.peek().filter((recipe) => recipe.file !== name), { file: name, text: content }].sort(byFile));
    await keepDraft(home.name, { file: name, text: content, over: content });
    note(`as saved at ${clock()}`, content);
    say(home.saves ? "Saved" : "Handed over as a file");
  } else if ("differs" in saved) choice.value = { kind: "changed-outside", theirs: saved.differs };
  else failure.value = saved.problem;
};

const byFile = (a: FileText, b: FileText): number => (a.file < b.file ? -1 : 1);

const say = (words: string): void => {
  notice.value = words;
  setTimeout(() => {
    if (notice.peek() === words) notice.value = "";
  }, 3000);
};

/** Looks whether somebody else has changed files of the folder. */
const lookOutside = async (): Promise<void> => {
  if (!home || document.visibilityState === "hidden" || choice.peek()) return;
  const name = file.peek();
  const before = mark;
  const marks = await home.marks();
  // Meanwhile another file may have been opened, or this one saved.
  if (!marks || file.peek() !== name || mark !== before) return;
  const now = marks.get(name) ?? null;
  if (now !== mark && mark !== null) {
    const theirs = now === null ? null : ((await home.read(name)) ?? null);
    if (file.peek() === name && mark === before) changedOutside(theirs);
  }
  await refreshShelf(marks, name);
};

const changedOutside = (theirs: KeptHere | null): void => {
  // Nothing was typed here: what lies on the disk now is shown, and undo still leads back.
  if (theirs && theirs.text === text.peek()) {
    mark = theirs.mark;
    savedText.value = theirs.text;
  } else choice.value = { kind: "changed-outside", theirs };
};

/** Tells what the shelf holds of each file. */
let shelvedMarks = new Map<string, string | null>();

const refreshShelf = async (marks: ReadonlyMap<string, string>, open: string): Promise<void> => {
  const changed = [...marks].filter(([name, now]) => name !== open && shelvedMarks.get(name) !== now);
  if (changed.length === 0 || !home) return;
  const read = await Promise.all(changed.map(([name]) => home!.read(name)));
  for (const [name, now] of changed) shelvedMarks.set(name, now);
  const fresh = read.flatMap((recipe) => (recipe ? [recipe] : []));
  const names = new Set(fresh.map((recipe) => recipe.file));
  shelve([...shelved.peek().filter((recipe) => !names.has(recipe.file)), ...fresh].sort(byFile));
};

/** The user's word on a choice: the other text takes the place of the one on the table, by an edit that can be undone. */
export const takeTheirs = (put: (text: string) => void): void => {
  const asked = choice.peek();
  choice.value = undefined;
  held.value = undefined;
  if (asked?.kind === "draft") put(asked.draft.text);
  if (asked?.kind !== "changed-outside") return;
  mark = asked.theirs?.mark ?? null;
  if (!asked.theirs) return;
  savedText.value = asked.theirs.text;
  put(asked.theirs.text);
};

/** What is on the table stays; saving it now writes over what lies on the disk, which the user has seen. */
export const keepMine = (): void => {
  const asked = choice.peek();
  choice.value = undefined;
  held.value = undefined;
  if (asked?.kind === "changed-outside") {
    mark = asked.theirs?.mark ?? null;
    savedText.value = asked.theirs?.text ?? "";
  } else if (asked && home) void keepDraft(home.name, { ...asked.draft, text: asked.draft.over });
};

/** Holds the drawing against the other text, so that the user sees what differs before choosing. */
export const compareTheirs = async (): Promise<void> => {
  const asked = choice.peek();
  const other = asked?.kind === "draft" ? asked.draft.text : asked?.theirs?.text;
  if (other === undefined) return;
  const picture = await ask("pictureOfText", { text: other });
  if (picture) held.value = { name: asked?.kind === "draft" ? "the draft" : "the file on the disk", picture };
};
