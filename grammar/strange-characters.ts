// Characters that have no place in a recipe: those that a word processor, a phone or another program puts in the place of
// the plain one, and invisible ones that make a line look different from what it says.

import type { More } from "./diagnostic.ts";
import type { Token } from "./tokens.ts";
import type { Stretch } from "./tree.ts";

/** Marks of the Unicode bidirectional algorithm that reorder what is shown (CVE-2021-42574). */
const reordering = /[\u202a-\u202e\u2066-\u2069]/;

// Controls other than tab and line end, and what some editors show as the end of a line where the recipe goes on: with these a
// comment may look like a step, and a terminal that shows the text is steered by it.
const hidden = /[\u202a-\u202e\u2066-\u2069\u2028\u2029]|(?![\t\n\r])\p{Cc}|\r(?!\n)/gu;

export const isHiddenMark = (character: string): boolean => character.search(hidden) >= 0;

/** Where marks stand that make the text look like another; they are refused everywhere, in comments and texts too. */
export const hiddenMarks = (text: string): number[] => [...text.matchAll(hidden)].map(({ index }) => index);

/** What to say of such a mark. */
export const hiddenMark = (from: number, text: string): [string, Stretch, string, More] => {
  const mark = text.charAt(from);
  const does = reordering.test(mark)
    ? "that changes the order in which the line is shown"
    : "that some programs take for a command or for the end of the line";
  const message = `Here stands an invisible character, ${codeOf(mark)}, ${does}.`;
  return ["character-hidden", { from, to: from + 1 }, message, { hint: "Take it out.", replace: "" }];
};

/** What to say of a character that no line may hold. */
export const strangeCharacter = (token: Token, text: string): [Token, string, More] => [
  token,
  `The character ${visible(token.image)} cannot stand here.`,
  mending(token, text),
];

const plainFor: ReadonlyMap<string, string> = new Map([
  ["\u2032", " ft"],
  ["\u2033", " in"],
  ["\u2010", "-"],
  ["\u2011", "-"],
  ["\u2012", "-"],
  ["\u2013", "-"],
  ["\u2014", "-"],
  ["\u2212", "-"],
  ["_", "-"],
  [":", " ="],
  ["\u00d7", "*"],
  ["\u00b7", "*"],
  ["\u00f7", "/"],
  ["\u2044", "/"],
  ["\u00b0", " deg"],
  ["\u2264", "<="],
  ["\u2265", ">="],
  ["\u2260", "<>"],
  ["\u2003", " "],
  ["\u2009", " "],
  ["\u202f", " "],
  ["\u200b", ""],
  ["\u00ad", ""],
]);

const fractions: ReadonlyMap<string, string> = new Map([
  ["\u00bc", "1/4"],
  ["\u00bd", "1/2"],
  ["\u00be", "3/4"],
  ["\u2153", "1/3"],
  ["\u2154", "2/3"],
  ["\u215b", "1/8"],
  ["\u215c", "3/8"],
  ["\u215d", "5/8"],
  ["\u215e", "7/8"],
]);

/** A text between quotation marks of another kind, on one line. */
const otherQuotes =
  /[\u2018\u2019\u201c-\u201e\u00ab\u00bb']([^\u2018\u2019\u201c-\u201e\u00ab\u00bb'"\\\n]*)[\u2018\u2019\u201c\u201d\u00ab\u00bb"']/y;

const mending = (token: Token, text: string): More => {
  const { image, startOffset: from } = token;
  const before = text.slice(text.lastIndexOf("\n", from - 1) + 1, from);
  const fraction = fractions.get(image);
  if (fraction !== undefined) return write(/\d$/.test(before) ? ` ${fraction}` : fraction);
  otherQuotes.lastIndex = from;
  const quoted = otherQuotes.exec(text);
  if (quoted) return { ...write(`"${quoted[1]!}"`), over: { from, to: from + quoted[0].length } };
  const spaces = image === "%" ? /\d( +)$/.exec(before)?.[1]?.length : undefined;
  if (spaces !== undefined) {
    return { hint: "Write the % right behind its number.", replace: "%", over: { from: from - spaces, to: from + 1 } };
  }
  if (image === "!" && text.charAt(from + 1) === "=") return { ...write("<>"), over: { from, to: from + 2 } };
  if (image === ";") return isInBrackets(before) ? write(",") : { hint: "Start a new line instead.", replace: "\n" };
  const plain = plainFor.get(image);
  if (plain === undefined) return {};
  if (plain === "") return { hint: "Take it out.", replace: "" };
  if (plain === " ") return { hint: "Write a plain space instead.", replace: " " };
  return write(plain);
};

const isInBrackets = (before: string): boolean => before.split("(").length > before.split(")").length;

const write = (plain: string): More => ({ hint: `Write ${plain.trim()} instead.`, replace: plain });

const visible = (character: string): string =>
  /[\p{L}\p{N}\p{P}\p{S}]/u.test(character) ? character : codeOf(character);

const codeOf = (character: string): string =>
  `U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;
