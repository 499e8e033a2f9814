// Names that look like other names: letters of one alphabet that pass for letters of another, so that two names are one to the eye
// (Unicode Technical Standard 39). Only names with letters beyond ASCII are looked at, and only these are spoken of.
import type { Diagnostic, Where } from "./diagnostic.ts";
import type { RecipeTree, Stretch, Word } from "./tree.ts";
import { linesWithin } from "./within.ts";

/** A warning for each name whose letters are of several alphabets, and for each that looks like a name above it. */
export const lookAlikes = ({ lines, text }: RecipeTree, where: (at: Stretch) => Where): Diagnostic[] => {
  if (!beyondAscii.test(text)) return [];
  const seen = new Map<string, Word>();
  const warned = new Set<string>();
  return linesWithin(lines)
    .flatMap(({ names }) => names)
    .flatMap((name): Diagnostic[] => {
      const shape = skeleton(name.text);
      const other = seen.get(shape);
      if (!other) seen.set(shape, name);
      if (warned.has(name.text)) return [];
      const told = other && other.text !== name.text ? looksLike(name, other, where) : mixed(name, where);
      if (told) warned.add(name.text);
      return told ? [told] : [];
    });
};

/**
 * What a name looks like: two names with the same skeleton look alike (UTS 39, 4). Of the table of confusables those are here that are
 * Latin to the eye and Cyrillic or Greek by their number, beside the full-width forms, which NFKD takes care of.
 */
export const skeleton = (name: string): string =>
  [...name.normalize("NFKD")].map((letter) => plain.get(letter) ?? letter).join("");

/** The alphabets of a name's letters, of those that have letters in common to the eye. */
export const alphabets = (name: string): string[] =>
  [...scripts].filter(([, letters]) => letters.test(name)).map(([script]) => script);

const looksLike = (name: Word, other: Word, where: (at: Stretch) => Where): Diagnostic | undefined => {
  const odd = oddLetter(name.text, other.text);
  // Two names in plain letters are as different as they are written.
  if (!beyondAscii.test(name.text + other.text)) return undefined;
  return {
    code: "name-look-alike",
    severity: "warning",
    where: where(name),
    message: `This name looks like another one and is not the same${odd}.`,
    hint: "Write both in the letters of one alphabet, or choose another name.",
    related: [{ where: where(other), message: "The other name is given here" }],
  };
};

const mixed = (name: Word, where: (at: Stretch) => Where): Diagnostic | undefined => {
  const of = alphabets(name.text);
  if (of.length < 2) return undefined;
  return {
    code: "name-mixed",
    severity: "warning",
    where: where(name),
    message: `This name has letters of several alphabets that look alike: ${of.join(" and ")}.`,
    hint: "Write it in the letters of one alphabet.",
  };
};

/** Which letter makes the difference, by its number. */
const oddLetter = (name: string, other: string): string => {
  const [letters, others] = [[...name], [...other]];
  const odd = letters.find((letter, index) => letter !== others[index] && beyondAscii.test(letter));
  return odd === undefined
    ? ""
    : `: its ${odd} is U+${odd.codePointAt(0)!.toString(16).toUpperCase().padStart(4, "0")}`;
};

const beyondAscii = /[^\p{ASCII}]/u;

const scripts: ReadonlyMap<string, RegExp> = new Map([
  ["Latin", /\p{Script=Latin}/u],
  ["Greek", /\p{Script=Greek}/u],
  ["Cyrillic", /\p{Script=Cyrillic}/u],
  ["Armenian", /\p{Script=Armenian}/u],
  ["Cherokee", /\p{Script=Cherokee}/u],
]);

// Pairs of a letter and what it looks like, after confusables.txt of UTS 39 (from memory, the letters of everyday fonts).
const plain: ReadonlyMap<string, string> = new Map(
  [
    "аa вB еe ѕs іi јj оo рp сc уy хx һh ԁd ԛq ԝw ӏl ѵv ғf АA ВB ЕE ЅS ІI ЈJ КK МM НH ОO РP СC ТT УY ХX ԌG ԚQ ԜW Ӏl",
    "αa οo ρp νv ιi κk υu γy σo ΑA ΒB ΕE ΖZ ΗH ΙI ΚK ΜM ΝN ΟO ΡP ΤT ΥY ΧX",
    "օo սu հh ցg ոn ԁd ᎪA ᏴB ᏟC ᎬE ᏀG ᎻH ᎫJ ᏦK ᏞL ᎷM ᏢP ᏚS ᎢT ᏙV ᎳW ᏃZ ıi ɑa ɡg ƖI ǀl",
  ]
    .join(" ")
    .split(" ")
    .map((pair) => [...pair] as unknown as readonly [string, string]),
);
