// The values that a report tells: the recipe's own, and the body that it and all it uses are drafted for.
import type { Evaluated, NamedValue } from "../evaluate.ts";
import { measuresAsked } from "../measures-asked.ts";

/** The recipe's values by name, in its order; then the measures that only used recipes ask for. */
export const toldValues = (evaluated: Evaluated): ReadonlyMap<string, NamedValue> => {
  const told = new Map(evaluated.values);
  for (const [name, value] of measuresAsked(evaluated)) if (!told.has(name)) told.set(name, value);
  return told;
};
