// A recipe written in a test, worked, and the lines of its text by what stands on them.
import { kernel, type Outcome } from "../../../kernel/kernel.ts";
import type { Sources } from "../../../kernel/sources.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";

const chalk = kernel(vocabulary);

/** Works a text that may use the recipe `block.chalk`. */
export const worked = (text: string, block = ""): Outcome => {
  const sources: Sources = { read: (path) => ({ file: path, text: block }) };
  return chalk.work({ file: "test.chalk", text }, { sources });
};

/** The number of the first line that holds these words. */
export const lineOf = (text: string, words: string): number =>
  text.split("\n").findIndex((line) => line.includes(words)) + 1;

/** A panel of 20 by 30 cm with a waist dart, a grain line and a drill hole. */
export const panel = `chalkline 1
recipe "Panel"
units cm
piece panel {
  line waist = (0, 0) to (20 cm, 0)
  line side  = (20 cm, 0) to (20 cm, 30 cm)
  line hem   = (0, 30 cm) to (20 cm, 30 cm)
  line fold  = (0, 0) to (0, 30 cm)
  outline waist, side, hem, fold
  mark fold as fold
  point A = (5 cm, 20 cm)
  dart tuck = waist at 10 cm width 2 cm to (10 cm, 9 cm)
  notch side at 10 cm
  drill A
  grain along fold
  allow waist, side, hem by 1 cm
}
`;
