// Text made fit for lettering: no sign that is not for reading, and letters that the font lacks written as their numbers.
import type { Drawing, Text } from "../drawing/drawing.ts";
import type { Lettering } from "./lettering.ts";

/** The text with every character that the face lacks as its number, such as U+524D. */
export const written = (text: string, weight: Text["weight"], lettering: Lettering): string =>
  [...quiet(text)].map((character) => (lettering[weight].glyph(character) ? character : numberOf(character))).join("");

/** The characters of a drawing that the font lacks, each once, in the order in which they come. */
export const lacking = (drawings: readonly Drawing[], lettering: Lettering): string[] => [
  ...new Set(
    drawings.flatMap(({ groups }) =>
      groups.flatMap(({ texts }) =>
        texts.flatMap(({ text, weight }) =>
          [...quiet(text)].filter((character) => !lettering[weight].glyph(character)),
        ),
      ),
    ),
  ),
];

/** How a character is called by its number: U+524D. */
export const numberOf = (character: string): string =>
  `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;

/** The text with breaks as blanks, and without controls and signs that turn the direction of reading. */
export const quiet = (text: string): string => text.replace(/[\t\n\r]+/g, " ").replace(unreadable, "");

const unreadable = /[\p{Cc}\p{Cf}\p{Cs}\p{Noncharacter_Code_Point}]/gu;
