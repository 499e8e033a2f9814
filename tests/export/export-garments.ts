// What the tests of exchange files draw: made pieces, recipes, and a garment whose every word is meant to break a file.
import { draw } from "../../kernel/drawing/draw.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { garmentsOf, type SizedGarment, type SizeTable, sizeTables } from "../../kernel/sizes/size-tables.ts";
import type { Garment } from "../../kernel/working.ts";
import { at, nowhere } from "../cloth/made-piece.ts";
import { back, beltLoop, cutOf, garmentOf } from "../drawing/made-garment.ts";
import { chalkline, recipeSources, workedRecipe } from "../worked-recipe.ts";

const controls = Array.from({ length: 32 }, (_, code) => String.fromCharCode(code)).join("");

/** Words that would end a line, begin a tag, end the file, or be longer than any reader wants. */
export const hostileWords: readonly string[] = [
  `controls ${controls} end`,
  "hem\n  0\nEOF\n",
  "hem\r\n  0\r\nENDSEC\r\n  0\r\nEOF",
  "10000 letters ".padEnd(10_000, "x"),
  "thread 🧵 and 𠀀",
  "\\U+000A  0\\U+000AEOF",
  "%%u%%d %%% ^J ^M",
  "halves \ud800 and \udc00",
  "\u202eturned round\u2066",
  "{\\fArial|b0;\\P}",
];

/** A garment with those words as its title, as a piece's name, as a cloth, and as labels with and without a place. */
export const hostileGarment = (word: string): Garment => {
  const piece = {
    ...back,
    name: word,
    labels: [
      { text: word, drawnBy: nowhere },
      { text: word, at: at(100, 600), drawnBy: nowhere },
    ],
  };
  return { ...garmentOf([piece], [cutOf(word, 2, word)]), title: word };
};

export const vest: Garment = garmentOf(
  [back, beltLoop],
  [cutOf("back", 1), cutOf("back", 1, "lining"), cutOf("belt-loop", 4)],
);

export const recipeGarment = (file: string): Garment => workedRecipe(file).garment;

export const sheetOf = (garment: Garment): Drawing => draw(garment).sheet;

/** The size tables of a recipe and of those it uses. */
export const sizeTablesOf = (file: string): SizeTable[] => {
  const source = recipeSources.read(file, "");
  if ("problem" in source) throw new Error(source.problem.message);
  return sizeTables(chalkline, source, { sources: recipeSources });
};

/** The garments of the first of them. */
export const sizesOf = (file: string): SizedGarment[] => garmentsOf(sizeTablesOf(file)[0]!);
