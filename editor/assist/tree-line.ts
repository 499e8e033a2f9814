// The line of the tree that begins at an offset.
import type { Line, RecipeTree } from "../../grammar/tree.ts";
import { linesWithin } from "../../grammar/within.ts";

/** The statement whose first word stands at this offset; undefined for what could not be read as a line at all. */
export const treeLine = (tree: RecipeTree, from: number): Line | undefined => {
  const known = kept.get(tree);
  if (known) return known.get(from);
  const lines = new Map(linesWithin(tree.lines).map((line) => [line.from, line]));
  kept.set(tree, lines);
  return lines.get(from);
};

const kept = new WeakMap<RecipeTree, Map<number, Line>>();
