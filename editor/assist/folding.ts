// Stretches of lines that an editor can fold away: blocks, and runs of comments.
import { lineOf, lineStarts } from "../../grammar/source.ts";
import type { WorkedText } from "./worked-text.ts";
import { written } from "./written.ts";

/** Lines from 1; the first stays in sight. */
export interface Fold {
  readonly fromLine: number;
  readonly toLine: number;
  readonly kind: "block" | "comments";
}

/** All folds, in the order of their first lines. */
export const folding = (worked: WorkedText): Fold[] => {
  const { text } = worked.source;
  const starts = lineStarts(text);
  const { lines, comments } = written(worked);
  const blocks = lines.flatMap(({ from, block }): Fold[] => {
    if (!block) return [];
    const isClosed = block.to <= text.length;
    const fromLine = lineOf(starts, from);
    // The line of the closing brace stays in sight too.
    const toLine = isClosed ? lineOf(starts, block.to - 1) - 1 : lineOf(starts, text.trimEnd().length);
    return toLine > fromLine ? [{ fromLine, toLine, kind: "block" }] : [];
  });
  const alone = comments.flatMap(({ from }) => {
    const line = lineOf(starts, from);
    return text.slice(starts[line - 1], from).trim() === "" ? [line] : [];
  });
  return [...blocks, ...runs(alone)].sort((a, b) => a.fromLine - b.fromLine || b.toLine - a.toLine);
};

/** Two or more comments on lines that follow one another. */
const runs = (lines: readonly number[]): Fold[] => {
  const found: Fold[] = [];
  for (let index = 0; index < lines.length; ) {
    let last = index;
    while (lines[last + 1] === lines[last]! + 1) last += 1;
    if (last > index) found.push({ fromLine: lines[index]!, toLine: lines[last]!, kind: "comments" });
    index = last + 1;
  }
  return found;
};
