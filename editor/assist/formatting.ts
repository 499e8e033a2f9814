// The tidy form of a recipe as the smallest edits that bring it about, so that cursors and folds stay where they are.
import { tidy } from "../../grammar/print.ts";
import type { TextEdit } from "./text-edit.ts";
import type { WorkedText } from "./worked-text.ts";
import { written } from "./written.ts";

/** Edits, or one sentence that says why there are none. */
export type Formatting = { readonly edits: readonly TextEdit[] } | { readonly refused: string };

/** Edits that make the recipe tidy; none where it is. A recipe that cannot be read whole is left as it is, and says why. */
export const formatting = (worked: WorkedText): Formatting => {
  const { kernel, source, outcome } = worked;
  // Where nothing at all is to be said of the recipe, it was read whole.
  const isClean = outcome.diagnostics.length === 0;
  const { tree, diagnostics, untold, forms } = isClean
    ? { tree: outcome.tree, diagnostics: [], untold: 0, forms: written(worked).forms }
    : kernel.parse(source);
  const [first] = diagnostics;
  if (first) {
    const count = diagnostics.length + untold;
    const others = count > 1 ? `, and ${count - 1} more` : "";
    return {
      refused: `Only a recipe that can be read whole is tidied: line ${first.where.line} cannot be${others}. ${first.message}`,
    };
  }
  return { edits: changesBetween(source.text, tidy(tree, forms), source.file) };
};

/** Edits of whole lines, a run of lines that differ giving one each; within it only what differs between the two ends. */
export const changesBetween = (before: string, after: string, file: string): TextEdit[] => {
  if (before === after) return [];
  const [old, now] = [linesWithEnds(before), linesWithEnds(after)];
  const edits: TextEdit[] = [];
  let [at, index, other] = [0, 0, 0];
  while (index < old.length || other < now.length) {
    if (index < old.length && old[index] === now[other]) {
      at += old[index]!.length;
      [index, other] = [index + 1, other + 1];
      continue;
    }
    const [skipOld, skipNow] = nextShared(old, now, index, other);
    const [from, put] = [old.slice(index, index + skipOld).join(""), now.slice(other, other + skipNow).join("")];
    edits.push(trimmed({ file, from: at, to: at + from.length, text: put }, from));
    at += from.length;
    [index, other] = [index + skipOld, other + skipNow];
  }
  return edits;
};

const linesWithEnds = (text: string): string[] => text.match(/[^\n]*\n|[^\n]+$/g) ?? [];

// Tidying moves lines by no more than this; what lies further apart is one edit.
const reach = 40;

/** How many lines on either side differ before the two run together again. */
const nextShared = (old: readonly string[], now: readonly string[], index: number, other: number): [number, number] => {
  for (let total = 1; total <= reach; total += 1)
    for (let skip = 0; skip <= total; skip += 1) {
      const [left, right] = [index + skip, other + total - skip];
      const isShared = left < old.length && right < now.length && old[left] === now[right] && old[left]!.trim() !== "";
      if (isShared) return [skip, total - skip];
    }
  // One line for one line, where both have one left.
  return index < old.length && other < now.length ? [1, 1] : [old.length - index, now.length - other];
};

/** An edit without what stays the same at its two ends. */
const trimmed = (edit: TextEdit, from: string): TextEdit => {
  const { text } = edit;
  const most = Math.min(from.length, text.length);
  let [start, end] = [0, 0];
  while (start < most && from[start] === text[start]) start += 1;
  while (end < most - start && from[from.length - 1 - end] === text[text.length - 1 - end]) end += 1;
  return { ...edit, from: edit.from + start, to: edit.to - end, text: text.slice(start, text.length - end) };
};
