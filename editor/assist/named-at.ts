// The name under the cursor: its word, and what it stands for.
import { spotAt } from "./line-at.ts";
import type { Given } from "./naming/blocks.ts";
import { meant } from "./naming/meant.ts";
import { pathWritten, type Recipes } from "./naming/recipes.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

export interface NamedAt {
  readonly line: WrittenLine;
  readonly word: WrittenWord;
  readonly meant: readonly Given[];
}

/** The word of the opened recipe at an offset; undefined where none stands there. */
export const namedAt = ({ opened, all }: Recipes, offset: number): NamedAt | undefined => {
  const { lines, comments } = opened.written;
  if (comments.some(({ from, to }) => from <= offset && offset < to)) return undefined;
  const { line, word } = spotAt(opened.source.text, lines, offset);
  if (!line || !word) return undefined;
  return { line, word, meant: meant({ opened, all }, opened, line, line.words.indexOf(word)) };
};

/** The file that the path at an offset leads to. */
export const fileAt = ({ opened }: Recipes, offset: number): string | undefined => {
  const line = opened.written.lines.find(({ from, to }) => from <= offset && offset <= to);
  const path = line && pathWritten(line);
  return path && path.from <= offset && offset <= path.to ? opened.uses.get(line) : undefined;
};
