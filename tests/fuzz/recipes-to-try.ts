// The recipes of a run: spoiled ones, mixed examples and soup in turn, the same for the same seed.
import fc from "fast-check";
import { mixedExample } from "./example-recipes.ts";
import { soup } from "./soup.ts";
import { spoiledRecipe } from "./spoiled.ts";
import type { Subject } from "./target.ts";

const anyRecipe: fc.Arbitrary<Subject> = fc.oneof(
  { arbitrary: spoiledRecipe, weight: 3 },
  { arbitrary: mixedExample, weight: 3 },
  { arbitrary: soup, weight: 2 },
);

/** So many recipes of a seed. */
export const recipesToTry = (count: number, seed: number): Subject[] => fc.sample(anyRecipe, { numRuns: count, seed });
