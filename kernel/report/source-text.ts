// A recipe's text with the starts of its lines, for whoever has to show a stretch of it.
import { lineOf, lineStarts } from "../../grammar/parse.ts";

export interface SourceText {
  readonly text: string;
  readonly starts: readonly number[];
}

/** The texts of the files that findings may point into, by the name findings use. */
export type SourceTexts = ReadonlyMap<string, SourceText>;

export const sourceText = (text: string): SourceText => ({ text, starts: lineStarts(text) });

/** Line and column of an offset, both from 1; columns count UTF-16 units, as editors do. */
export const positionIn = ({ text, starts }: SourceText, offset: number): { line: number; column: number } => {
  const at = Math.min(Math.max(offset, 0), text.length);
  const line = lineOf(starts, at);
  return { line, column: at - starts[line - 1]! + 1 };
};

/** Where a line's text begins and where it ends, its line break left out. */
export const lineStretch = ({ text, starts }: SourceText, line: number): { from: number; to: number } => {
  const from = starts[line - 1]!;
  let to = starts[line] === undefined ? text.length : starts[line]! - 1;
  if (text[to - 1] === "\r") to -= 1;
  return { from, to: Math.max(from, to) };
};
