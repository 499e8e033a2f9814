// A recipe of recipes/, worked, for tests that hold its pieces against values from outside.
import { readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { pathLength } from "../kernel/geometry/arc-length.ts";
import type { Point } from "../kernel/geometry/point.ts";
import { type Circumstances, kernel, type Outcome } from "../kernel/kernel.ts";
import type { Sources } from "../kernel/sources.ts";
import { vocabulary } from "../kernel/vocabulary.ts";

const recipes = fileURLToPath(new URL("../recipes", import.meta.url));

export const chalkline = kernel(vocabulary);

/** Reads recipes as if recipes/ were the root. */
export const recipeSources: Sources = {
  read: (path, from) => {
    const file = relative(recipes, resolve(recipes, dirname(from), path));
    return { file, text: readFileSync(join(recipes, file), "utf8") };
  },
};

/** The recipe in this file of recipes/. */
export const workedRecipe = (file: string, circumstances: Circumstances = {}): Outcome =>
  chalkline.work(
    { file, text: readFileSync(join(recipes, file), "utf8") },
    { sources: recipeSources, ...circumstances },
  );

/** A recipe written in the test, which may use those of recipes/. */
export const workedText = (text: string, circumstances: Circumstances = {}): Outcome =>
  chalkline.work({ file: "test.chalk", text }, { sources: recipeSources, ...circumstances });

export const lengthOf = ({ garment }: Outcome, piece: string, edge: string): number =>
  pathLength(garment.pieces.get(piece)!.edges.get(edge)!.path);

export const placeOf = ({ garment }: Outcome, piece: string, place: string): Point =>
  garment.pieces.get(piece)!.places.get(place)!.point;
