// What every output has to hold to: figures that are numbers, and no word that JavaScript writes in place of a value.
import { holds } from "./target.ts";

/** Throws at the first number in data that is none. */
export const finite = (data: unknown, what: string): void => {
  const seen = new Set<unknown>();
  const within = (value: unknown, way: string): void => {
    if (typeof value === "number")
      holds(Number.isFinite(value), `${what}: a number is not finite`, `${way} is ${value}`);
    if (typeof value !== "object" || value === null || seen.has(value)) return;
    seen.add(value);
    if (value instanceof Map) for (const [key, each] of value) within(each, `${way}/${String(key)}`);
    else if (Array.isArray(value)) for (const [index, each] of value.entries()) within(each, `${way}/${index}`);
    else for (const [key, each] of Object.entries(value)) within(each, `${way}/${key}`);
  };
  within(data, "");
};

// Letters may stand right before a number: MNaN in a path, PUNaN for a plotter.
const slips = /NaN|Infinity|undefined|\[object \w+\]/;

/** Throws where an output holds a word that stands for no value, unless the recipe itself says it. */
export const plainlyTold = (output: string, recipe: string, what: string): void => {
  const found = slips.exec(output);
  if (!found || recipe.includes(found[0])) return;
  holds(false, `${what}: ${found[0]} is written`, output.slice(Math.max(0, found.index - 60), found.index + 60));
};
