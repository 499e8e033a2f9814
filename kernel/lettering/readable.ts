// Text made fit for lettering: no sign that is not for reading, and letters that cannot be set written as their numbers.
import type { Drawing, Text } from "../drawing/drawing.ts";
import type { Face, Lettering } from "./lettering.ts";

/** The text with every character that cannot be set as its number, such as U+524D. */
export const written = (text: string, weight: Text["weight"], lettering: Lettering): string =>
  [...quiet(text)]
    .map((character) => (canBeSet(character, lettering[weight]) ? character : numberOf(character)))
    .join("");

/** The characters of a drawing that cannot be set, each once, in the order in which they come. */
export const lacking = (drawings: readonly Drawing[], lettering: Lettering): string[] => [
  ...new Set(
    drawings.flatMap(({ groups }) =>
      groups.flatMap(({ texts }) =>
        texts.flatMap(({ text, weight }) =>
          [...quiet(text)].filter((character) => !canBeSet(character, lettering[weight])),
        ),
      ),
    ),
  ),
];

const canBeSet = (character: string, face: Face): boolean =>
  !isJoined(character) && face.glyph(character) !== undefined;

/** Whether a letter belongs to a script that runs from right to left, or whose letters change with their neighbors. */
export const isJoined = (character: string): boolean => joined.test(character);

// Letters are laid one beside the other from left to right, which makes nonsense of these scripts even where the font has them.
// The names are those of Unicode (UAX 24), the choice after its chapters 9 and 12 to 16, from memory.
const joined = new RegExp(
  `[${[
    ..."Adlam Arabic Hebrew Mandaic Mongolian Nko Samaritan Syriac Thaana".split(" "),
    ..."Bengali Devanagari Gujarati Gurmukhi Kannada Malayalam Oriya Sinhala Tamil Telugu".split(" "),
    ..."Balinese Javanese Khmer Lao Myanmar Thai Tibetan".split(" "),
  ]
    .map((script) => `\\p{Script=${script}}`)
    .join("")}]`,
  "u",
);

/** How a character is called by its number: U+524D. */
export const numberOf = (character: string): string =>
  `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;

/** The text with breaks as blanks, and without controls and signs that turn the direction of reading. */
export const quiet = (text: string): string => text.replace(/[\t\n\r]+/g, " ").replace(unreadable, "");

const unreadable = /[\p{Cc}\p{Cf}\p{Cs}\p{Noncharacter_Code_Point}]/gu;
