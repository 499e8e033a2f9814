// A text broken into lines of a given width, at its blanks.
import { columnsOf } from "./readable.ts";

/** The text's lines, none wider than `width` unless a single word is; a number stays with its unit. */
export const wrapped = (text: string, width: number): string[] => {
  const lines: string[] = [];
  let line = "";
  for (const word of wordsOf(text)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (line !== "" && columnsOf(longer) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return line === "" ? lines : [...lines, line];
};

// "12 3/8 in" is one word.
const wordsOf = (text: string): string[] =>
  text
    .replace(/(\d) (?=(?:\d+\/\d+|mm|cm|cm2|m|in|in2|ft|yd|deg)(?![\p{L}\d]))/gu, "$1\u00a0")
    .split(/[^\S\u00a0]+/)
    .filter((each) => each !== "")
    .map((each) => each.replaceAll("\u00a0", " "));
