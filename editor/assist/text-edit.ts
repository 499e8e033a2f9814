// A change of a text, as editors apply it.
import type { Stretch } from "../../grammar/tree.ts";

/** A stretch of a text, and what is to stand there; several parts of one change speak of the text before all of them. */
export interface TextPart extends Stretch {
  readonly text: string;
}

/** The same in one of several files. */
export interface TextEdit extends TextPart {
  readonly file: string;
}

/** A text after these edits, which do not overlap. */
export const edited = (text: string, edits: readonly TextPart[]): string =>
  [...edits]
    .sort((a, b) => b.from - a.from || b.to - a.to)
    .reduce((now, { from, to, text: put }) => now.slice(0, from) + put + now.slice(to), text);
