// Which body measures a recipe asks for: its own, and those of all recipes that it uses.
import type { Evaluated, NamedValue } from "./evaluate.ts";

/** The measures by name, the recipe's own first; where two recipes ask for the same one, the outer one's word counts. */
export const measuresAsked = ({ values, uses }: Evaluated): ReadonlyMap<string, NamedValue> => {
  const measures = new Map([...values].filter(([, { kind }]) => kind === "measure"));
  for (const used of uses.values()) {
    for (const [name, value] of measuresAsked(used)) if (!measures.has(name)) measures.set(name, value);
  }
  return measures;
};
