// A length as it is written, in the other units too.

import { numberWritten } from "../../grammar/line-parser.ts";
import { lengthIn, millimetresIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import type { WrittenLine } from "./written.ts";
import type { WrittenWord } from "./written-word.ts";

/** The length that a number and its unit make, in the recipe's units and the others; nothing for other numbers. */
export const describeNumber = ({ words }: WrittenLine, word: WrittenWord, units: Units): string[] => {
  const index = words.indexOf(word);
  const [number, unit] = word.means === "Unit" ? [words[index - 1], word] : [word, words[index + 1]];
  const one = millimetresIn.get(unit?.text ?? "");
  if (number?.means !== "Number" || unit?.means !== "Unit" || one === undefined) return [];
  const millimetres = numberWritten(number.text) * one;
  if (!Number.isFinite(millimetres)) return [];
  const others: Units[] = ["cm", "in", "mm"];
  const shown = [units, ...others.filter((each) => each !== units)].map((each) => lengthIn(millimetres, each));
  return [shown.join(" = ")];
};
