// Two texts worked by kernels of their own, so that nothing is shared between the sides, and compared.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import type { ChangedPiece, Comparison } from "../../kernel/compare/comparison.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { recipeSources } from "../worked-recipe.ts";

const recipes = fileURLToPath(new URL("../../recipes", import.meta.url));

/** All recipes, by their way from recipes/. */
export const recipeFiles = readdirSync(recipes, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".chalk"))
  .sort();

export const recipeText = (file: string): string => readFileSync(join(recipes, file), "utf8");

/** A recipe worked by a kernel that has seen nothing before. */
export const workedAfresh = (text: string, file = "test.chalk"): Outcome =>
  kernel(vocabulary).work({ file, text }, { sources: recipeSources });

export const compared = (before: string, after: string, file?: string): Comparison =>
  compareGarments(workedAfresh(before, file), workedAfresh(after, file));

export const pieceOf = (comparison: Comparison, name: string): ChangedPiece =>
  comparison.pieces.find((piece) => piece.name === name)!;

/** A rectangle of 300 x 1000 mm with a place in its middle. */
export const apron = `chalkline 1
recipe "Usher's apron"
units cm
param wide = 30 cm from 10 cm to 60 cm "width"
param long = 100 cm from 50 cm to 150 cm "length"
piece panel {
  point A = (0, 0)
  point B = A right wide
  point C = B down long
  point D = A down long
  point pocket = A right 10 cm down 20 cm
  line waist = A to B
  line side = B to C
  line hem = D to C
  line center = A to D
  outline waist, side, hem, center
  mark hem as hem
  grain along center
  notch side at 20 cm
  allow side, waist by 1 cm
  allow hem by 3 cm
}
`;
