// The one line out of a step's example that shows how it is written, for findings about a line that does not fit.
import type { Form } from "../grammar/phrase.ts";

/** The first line of an example that has this form; undefined where none has. */
export const exampleLine = (example: string, { verb, clauses }: Form): string | undefined => {
  const needed = clauses.filter(({ optional }) => !optional).map(({ word }) => word);
  return example
    .split("\n")
    .map((line) => line.replace(/#.*/, "").replace(/\s+/g, " ").trim())
    .find((line) => {
      const words = line.split(" ");
      return words[0] === verb && needed.every((word) => words.includes(word));
    });
};
