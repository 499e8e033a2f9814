// Which text a pattern was drawn from, in seven letters: no date, so that the same recipe has the same version everywhere.
import type { Evaluated } from "./evaluate.ts";
import { sha256 } from "./sha-256.ts";

/**
 * The first seven digits of the SHA-256 of a recipe's text with the texts of all recipes that it uses behind it, each once
 * and in the order in which they are first used: `cat coat.chalk blocks/straight-coat.chalk | sha256sum` begins with them.
 */
export const recipeVersion = (evaluated: Evaluated): string =>
  sha256(new TextEncoder().encode([...textsOf(evaluated, new Map()).values()].join(""))).slice(0, digits);

// Enough to tell any two versions of a recipe apart at a glance, and short enough for a belt loop.
const digits = 7;

/** Texts by file, the recipe's own first. */
const textsOf = ({ tree, uses }: Evaluated, known: Map<string, string>): ReadonlyMap<string, string> => {
  if (known.has(tree.file)) return known;
  known.set(tree.file, tree.text);
  for (const used of uses.values()) textsOf(used, known);
  return known;
};
