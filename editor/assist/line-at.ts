// Where in a recipe an offset lies: the line it belongs to, the word under it, and the words before it on that line.
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** An offset seen from the lines around it. */
export interface Spot {
  readonly offset: number;
  /** The line it stands on; undefined where a new one would begin. */
  readonly line: WrittenLine | undefined;
  /** The line in whose block it stands. */
  readonly around: WrittenLine | undefined;
  /** The word that it stands in, or right before or behind. */
  readonly word: WrittenWord | undefined;
  /** The words of the line before that word, or before the offset. */
  readonly before: readonly WrittenWord[];
}

/** The place of an offset among written lines. */
export const spotAt = (text: string, lines: readonly WrittenLine[], offset: number): Spot => {
  const index = lastFrom(lines, offset);
  const line = lines[index];
  const around = aroundAt(line, offset);
  // A line whose block has begun is done: what stands behind the { is another line.
  const isBehind = line === undefined || (line.block !== undefined && offset > line.block.from);
  if (isBehind || !reaches(text, line, offset)) return { offset, line: undefined, around, word: undefined, before: [] };
  const word = wordAt(line.words, offset);
  const before = line.words.filter(({ from, to }) => (word ? from < word.from : to <= offset));
  return { offset, line, around: line.around, word, before };
};

/** The word or number that an offset touches, or the text that it stands in. */
const wordAt = (words: readonly WrittenWord[], offset: number): WrittenWord | undefined =>
  words.find(({ text, means, from, to }) => {
    if (means === "UnclosedText") return from < offset && offset <= to;
    if (text.startsWith('"')) return from < offset && offset < to;
    return /^[\p{L}\d]/u.test(text) && from <= offset && offset <= to;
  });

/** Whether what is typed at an offset behind a line's words still belongs to the line. */
const reaches = (text: string, line: WrittenLine, offset: number): boolean => {
  if (offset <= line.to) return true;
  const between = text.slice(line.to, offset);
  if (/[{}]/.test(between)) return false;
  if (!between.includes("\n")) return !(line.isEntry && between.includes(","));
  const opened = line.words.reduce((sum, { text: sign }) => sum + (sign === "(" ? 1 : sign === ")" ? -1 : 0), 0);
  return opened > 0 || /^(?:[-+*/=<>,]|<=|>=|<>|--|and|or|not)$/.test(line.words.at(-1)!.text);
};

/** The innermost line whose block holds an offset; `line` is the last that begins before it. */
const aroundAt = (line: WrittenLine | undefined, offset: number): WrittenLine | undefined => {
  for (let each = line; each; each = each.around) {
    if (each.block && each.block.from < offset && offset < each.block.to) return each;
  }
  return undefined;
};

const lastFrom = (lines: readonly WrittenLine[], offset: number): number => {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (lines[middle]!.from <= offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
};
