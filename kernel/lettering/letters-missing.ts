// What a recipe says in letters that a drawing cannot set, told at the recipe's own lines.
import type { Diagnostic, Where } from "../../grammar/diagnostic.ts";
import { lineOf, type SourceTexts } from "../../grammar/source.ts";
import type { Garment } from "../working.ts";
import { isJoined, numberOf } from "./readable.ts";

/** Findings where the recipe writes these characters into a title, a name, an order or a label, and those it has from elsewhere. */
export const lettersMissing = (
  characters: readonly string[],
  garment: Garment,
  texts: SourceTexts,
): { readonly findings: readonly Diagnostic[]; readonly elsewhere: readonly string[] } => {
  const wordings = wordingsOf(garment, texts);
  // A label that several pieces share is written once.
  const found = new Map<string, Diagnostic>();
  const told = new Set<string>();
  for (const { text, where } of wordings) {
    const own = characters.filter((character) => says(text, character));
    if (own.length === 0) continue;
    for (const character of own) told.add(character);
    const stretch = narrowed(where, own, texts);
    found.set(`${stretch.file} ${stretch.from} ${stretch.to}`, missing(own, stretch));
  }
  return {
    findings: [...found.values()].sort((a, b) => a.where.line - b.where.line),
    elsewhere: characters.filter((character) => !told.has(character)),
  };
};

/** Words that a drawing shows, and the line that they stem from. */
interface Wording {
  readonly text: string;
  readonly where: Where;
}

const wordingsOf = ({ title, file, pieces, cuts }: Garment, texts: SourceTexts): Wording[] => [
  ...titleLine(file, texts).map((where) => ({ text: title, where })),
  ...[...pieces.values()].flatMap(({ name, drawnBy, labels }) => [
    { text: name, where: drawnBy },
    ...labels.map((label) => ({ text: label.text, where: label.drawnBy })),
  ]),
  ...cuts.map(({ fabric, drawnBy }) => ({ text: fabric, where: drawnBy })),
];

/** The line that begins with `recipe`; it may be missing. */
const titleLine = (file: string, texts: SourceTexts): Where[] => {
  const source = texts.get(file);
  const found = source && /^[ \t]*recipe[ \t][^\n]*/m.exec(source.text);
  if (!source || !found) return [];
  const [from, to] = [found.index, found.index + found[0].trimEnd().length];
  return [{ file, from, to, line: lineOf(source.starts, from) }];
};

/** Names and orders are printed in capitals, so that a small letter may be what is missing as a capital. */
const says = (text: string, character: string): boolean =>
  text.includes(character) || text.toUpperCase().includes(character);

/** The stretch from the first of the characters to the last, where they are written as they are. */
const narrowed = (where: Where, characters: readonly string[], texts: SourceTexts): Where => {
  const source = texts.get(where.file);
  if (!source) return where;
  const written = [...source.text.slice(where.from, where.to).matchAll(/./gsu)].filter(([character]) =>
    characters.some((each) => says(character, each)),
  );
  const [first, last] = [written[0], written.at(-1)];
  if (!first || !last) return where;
  const [from, to] = [where.from + first.index, where.from + last.index + last[0].length];
  return { ...where, from, to, line: lineOf(source.starts, from) };
};

const missing = (characters: readonly string[], where: Where): Diagnostic => {
  const [joined, strange] = [characters.filter(isJoined), characters.filter((each) => !isJoined(each))];
  const numbers = (some: readonly string[]): string => some.map((each) => `${each} as ${numberOf(each)}`).join(", ");
  const sentences = [
    ...(strange.length > 0
      ? [`The font of the drawing lacks letters, and they are written by number: ${numbers(strange)}.`]
      : []),
    ...(joined.length > 0
      ? [
          `Letters that join or run from right to left would come out wrong, and are written by number: ${numbers(joined)}.`,
        ]
      : []),
  ];
  return {
    code: "letter-missing",
    severity: "warning",
    where,
    message: sentences.join(" "),
    hint: "Write the words in Latin, Greek or Cyrillic letters.",
  };
};
