// What a run throws: spoiled recipes, mixed examples, soup and spoiled drawings in turn, the same for the same seed.
import fc from "fast-check";
import { mixedExample } from "./example-recipes.ts";
import { plainRecipe } from "./seed-recipes.ts";
import { soup } from "./soup.ts";
import { spoiledRecipe } from "./spoiled.ts";
import { spoiledDrawing } from "./spoiled-drawings.ts";
import type { Subject } from "./target.ts";

const anyRecipe: fc.Arbitrary<Subject> = fc.oneof(
  { arbitrary: spoiledRecipe, weight: 3 },
  { arbitrary: mixedExample, weight: 3 },
  { arbitrary: soup, weight: 2 },
);

const anything: fc.Arbitrary<Subject> = fc.oneof(
  { arbitrary: anyRecipe, weight: 2 },
  { arbitrary: spoiledDrawing(plainRecipe), weight: 1 },
);

/** So many recipes of a seed. */
export const recipesToTry = (count: number, seed: number): Subject[] => fc.sample(anyRecipe, { numRuns: count, seed });

/** So many recipes and drawings of a seed. */
export const textsToTry = (count: number, seed: number): Subject[] => fc.sample(anything, { numRuns: count, seed });
