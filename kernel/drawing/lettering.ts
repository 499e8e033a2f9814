// How much room lettering takes. Fonts differ, so widths are on the generous side of the usual sans-serif ones.
import type { Box } from "./box.ts";
import { inTurned } from "./box.ts";
import type { Text } from "./drawing.ts";

/** How wide a text is, mm; an estimate that most sans-serif fonts stay under. */
export const textWidth = (text: string, size: number, weight: Text["weight"]): number => {
  let width = 0;
  for (const character of text) width += characterWidth(character);
  return width * size * (weight === "bold" ? boldness : 1);
};

/** A text broken into lines no wider than so many mm; a word that is wider is broken where it must be. */
export const wrapped = (text: string, size: number, weight: Text["weight"], widest: number): string[] =>
  text.split(/\r\n|\r|\n/).flatMap((line) => wrappedLine(line, size, weight, widest));

/** The room a text takes, from its descenders to its capitals. */
export const boxOf = ({ text, at, size, turn, align, weight }: Text): Box => {
  const width = textWidth(text, size, weight);
  const middle = { start: width / 2, middle: 0, end: -width / 2 }[align];
  const center = inTurned(at, turn, { x: middle, y: ((descent - ascent) / 2) * size });
  return { center, turn, halfWidth: width / 2, halfHeight: ((ascent + descent) / 2) * size };
};

/** Height of capitals over the baseline, and depth of descenders under it, as a ratio of the size. */
export const ascent = 0.76;
export const descent = 0.24;

// Widths as a ratio of the size, measured by eye on common sans-serif fonts and rounded up.
const widths = new Map<string, number>(
  (
    [
      ["ijl'|!.,:;", 0.34],
      ['Ift[]()/\\ -`"·', 0.42],
      ["r*^", 0.46],
      ["sczxvykJ", 0.58],
      ["abdeghnopqu?_", 0.65],
      ["0123456789$FELTZ", 0.66],
      ["SXYPVAKBCR", 0.72],
      ["DGHNOQUw&+=<>~", 0.84],
      ["mMW%@—", 1.02],
    ] as const
  ).flatMap(([characters, width]) => [...characters].map((character) => [character, width] as const)),
);
const otherWidth = 0.8;
const fullWidth = 1.1;
const boldness = 1.12;

const characterWidth = (character: string): number => {
  const known = widths.get(character);
  if (known !== undefined) return known;
  const code = character.codePointAt(0)!;
  // Marks that stand on the letter before them take no room; scripts from Hangul on, and pictures, take a full square.
  if (code >= 0x300 && code <= 0x36f) return 0;
  return code >= 0x1100 ? fullWidth : otherWidth;
};

const wrappedLine = (line: string, size: number, weight: Text["weight"], widest: number): string[] => {
  const lines: string[] = [];
  let current = "";
  for (const word of line.split(/\s+/).flatMap((whole) => brokenWord(whole, size, weight, widest))) {
    const longer = current === "" ? word : `${current} ${word}`;
    if (current !== "" && textWidth(longer, size, weight) > widest) {
      lines.push(current);
      current = word;
    } else current = longer;
  }
  return current === "" ? lines : [...lines, current];
};

/** A word that is too wide, broken after its hyphens, and elsewhere only where a part is too wide by itself. */
const brokenWord = (word: string, size: number, weight: Text["weight"], widest: number): string[] => {
  if (textWidth(word, size, weight) <= widest) return [word];
  const pieces: string[] = [];
  let piece = "";
  let width = 0;
  const put = (text: string, more: number): void => {
    if (piece !== "" && width + more > widest) {
      pieces.push(piece);
      piece = "";
      width = 0;
    }
    piece += text;
    width += more;
  };
  for (const part of word.split(/(?<=-)/)) {
    const whole = textWidth(part, size, weight);
    if (whole <= widest) put(part, whole);
    else for (const character of part) put(character, textWidth(character, size, weight));
  }
  return [...pieces, piece];
};
