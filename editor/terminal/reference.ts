// The reference as the terminal shows it: every statement, step, function and check.
import { signature } from "../../grammar/phrase.ts";
import type { Vocabulary } from "../../kernel/kernel.ts";
import { type Entry, entries, type WordedSlot } from "../../kernel/manual/entry.ts";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, words } from "../../kernel/report/table.ts";
import { wrapped } from "../../kernel/report/wrapped.ts";

/** All names with what they are for, kind by kind. */
export const referenceList = (vocabulary: Vocabulary, width: number): SaidLine[] => {
  const all = entries(vocabulary);
  const lists = [
    { heading: "Statements", listed: all.filter(({ kind }) => kind === "statement") },
    {
      heading: "Steps in a piece",
      listed: all.filter(({ kind, belongs }) => kind === "step" && belongs === "in a piece"),
    },
    {
      heading: "Steps of the garment",
      listed: all.filter(({ kind, belongs }) => kind === "step" && belongs === "of the garment"),
    },
    { heading: "Functions in values", listed: all.filter(({ kind }) => kind === "function") },
    { heading: "Checks", listed: all.filter(({ kind }) => kind === "check") },
  ];
  const rows = (listed: readonly Entry[]) =>
    listed.map(({ kind, name, forms, summary }) => [kind === "function" ? forms[0]! : name, summary] as const);
  return [
    ...lists.flatMap(({ heading, listed }) => [[strong(heading)], ...entryLines(rows(listed), width), blank]),
    [plain("chalkline steps NAME shows one of them with its form and an example.")],
  ];
};

// A name longer than this stands on a line of its own, so that the summaries keep their room.
const nameColumn = 24;

const entryLines = (entries: readonly (readonly [string, string])[], width: number): SaidLine[] => {
  const column = Math.min(nameColumn, Math.max(...entries.map(([name]) => name.length)));
  return entries.flatMap(([name, summary]): SaidLine[] => {
    const [first = "", ...rest] = wrapped(summary, width - column - 4);
    const below = rest.map((line): SaidLine => [plain(" ".repeat(column + 4) + line)]);
    if (name.length <= column)
      return [[plain("  "), strong(name), plain(`${" ".repeat(column - name.length + 2)}${first}`)], ...below];
    return [[plain("  "), strong(name)], [plain(" ".repeat(column + 4) + first)], ...below];
  });
};

/** Everything that goes by this name; several where a word means several things. */
export const referenceFor = (name: string, vocabulary: Vocabulary, width: number): SaidLine[] =>
  entries(vocabulary)
    .filter((entry) => entry.name === name)
    .map((entry) => linesOf(entry, width))
    .flatMap((lines, index) => (index === 0 ? lines : [blank, ...lines]));

/** Every name that there is an entry for. */
export const referenceNames = (vocabulary: Vocabulary): string[] => entries(vocabulary).map(({ name }) => name);

const linesOf = (entry: Entry, width: number): SaidLine[] => {
  const { kind, name, belongs, since, forms, sentences, slots, recipes } = entry;
  const what = [`a ${kind}`, ...(belongs === "" ? [] : [belongs])].join(" ");
  const waived = kind === "check" ? [`Where it is meant to be so, write: accept ${name} on THING because "…"`] : [];
  return [
    [strong(name), quiet(`  ${what}${since === undefined ? "" : `, since ${since}`}`)],
    ...forms.map((form): SaidLine => [plain(`    ${form}`)]),
    blank,
    ...[...sentences, ...waived].flatMap((sentence) => paragraph(sentence, width)),
    ...slotLines(slots, width),
    ...recipes.flatMap(({ title, text }) => recipeLines(`${title}:`, text)),
  ];
};

const paragraph = (text: string, width: number): SaidLine[] =>
  wrapped(text, width - 2).map((line) => [plain(`  ${line}`)]);

const recipeLines = (heading: string, recipe: string): SaidLine[] => [
  blank,
  [plain(`  ${heading}`)],
  blank,
  ...recipe.split("\n").map((line): SaidLine => [plain(`    ${line}`)]),
];

const slotLines = (slots: readonly WordedSlot[], width: number): SaidLine[] => {
  if (slots.length === 0) return [];
  const written = slots.map(({ word, slot }) => [word, signature([{ kind: "slot", slot }])].filter(Boolean).join(" "));
  const room = Math.max(20, width - 6 - Math.max(...written.map(({ length }) => length)));
  const rows = slots.flatMap(({ slot }, at) =>
    wrapped(slot.note, room).map((line, index) => [words(index === 0 ? written[at]! : "", "quiet"), words(line)]),
  );
  return [blank, ...aligned(rows)];
};
