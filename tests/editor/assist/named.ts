// Recipes with marks in them, for tests of names: `|` is the cursor, and answers are told as the words they point at.
import type { Source } from "../../../kernel/sources.ts";
import { type Marked, marked } from "./marked.ts";

/** "12 hem": a stretch as its line, from 1, and its words. */
export const told = (text: string, { from, to }: { readonly from: number; readonly to: number }): string =>
  `${text.slice(0, from).split("\n").length} ${text.slice(from, to)}`;

/** A marked recipe that lies among these others, which may use it and one another by their names. */
export const markedAmong = (recipe: string, others: readonly Source[], file = "test.chalk"): Marked => {
  const { worked, offset } = marked(recipe, file);
  const texts = new Map([...others, worked.source].map((source) => [source.file, source]));
  const sources = {
    read: (path: string) => texts.get(path) ?? { problem: { code: "none", message: `There is no ${path}.` } },
  };
  const circumstances = { sources };
  return {
    worked: { ...worked, sources, circumstances, outcome: worked.kernel.work(worked.source, circumstances) },
    offset,
  };
};

/** A square with its edges named, for the pieces of these tests. */
export const square = `  point A = (0 cm, 0 cm)
  point B = A right 20 cm
  point C = B down 30 cm
  point D = A down 30 cm
  line top = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline top, side, hem, center
`;
