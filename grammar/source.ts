// A recipe's text by its lines: which line and column an offset lies on, and where a line begins and ends.

/** A text with the offsets at which its lines begin. */
export interface SourceText {
  readonly text: string;
  readonly starts: readonly number[];
}

/** The texts of the files that findings may point into, by the name findings use. */
export type SourceTexts = ReadonlyMap<string, SourceText>;

export const sourceText = (text: string): SourceText => ({ text, starts: lineStarts(text) });

/** The offsets at which the lines of a text begin, the first of them 0. */
export const lineStarts = (text: string): number[] => {
  const starts = [0];
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
};

/** Which of the lines an offset lies on, counted from 1; `starts` is where they begin. */
export const lineOf = (starts: readonly number[], offset: number): number => {
  let low = 0;
  let high = starts.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (starts[middle]! <= offset) low = middle;
    else high = middle;
  }
  return low + 1;
};

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
