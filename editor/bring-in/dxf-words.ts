// Texts of DXF as they are meant to be read: codes for signs undone, codes for lettering taken out (DXF reference, "Control
// codes"; MTEXT codes from memory).

import { drawingLimits } from "./drawing-limits.ts";

// Every letter may be written as a code, and what comes of it is cut off at the limit.
const mostLetters = 8 * drawingLimits.letters;

/** A TEXT. */
export const dxfWords = (written: string): string =>
  written
    .slice(0, mostLetters)
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)))
    .replace(/%%(\d{3}|.)/g, (whole, sign: string) => signs.get(sign.toLowerCase()) ?? whole)
    .replace(/\^([ A-Za-z[\]\\^_])/g, (_, letter: string) => (letter === " " ? "^" : " "));

/** An MTEXT, whose lines and lettering are written into it. */
export const dxfManyWords = (written: string): string =>
  dxfWords(written)
    .replace(/\\[pP]|\\~/g, " ")
    .replace(/\\[ACcFfHQTWw][^;\\{}]*;/g, "")
    .replace(/\\[LlOoKkNXx]/g, "")
    .replace(/\\S([^;]*)[#^/]([^;]*);/g, "$1/$2")
    .replace(/\\([\\{}])/g, "\u0000$1")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the sign set just above, which no text of a file holds.
    .replace(/(\u0000)?[{}]/g, (brace, kept: string | undefined) => (kept === undefined ? "" : brace.slice(1)))
    .replaceAll("\u0000", "");

const signs: ReadonlyMap<string, string> = new Map([
  ["d", "°"],
  ["p", "±"],
  ["c", "⌀"],
  ["%", "%"],
  ["u", ""],
  ["o", ""],
  ["k", ""],
]);
