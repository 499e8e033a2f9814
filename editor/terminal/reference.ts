// The reference as the terminal shows it: every statement, step, function and check, out of their declarations.
import { type Part, type Slot, signature } from "../../grammar/phrase.ts";
import { type Statement, statements } from "../../grammar/statements.ts";
import type { Check } from "../../kernel/check.ts";
import { type FunctionEntry, functions } from "../../kernel/functions.ts";
import type { Vocabulary } from "../../kernel/kernel.ts";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, words } from "../../kernel/report/table.ts";
import { wrapped } from "../../kernel/report/wrapped.ts";
import type { Step } from "../../kernel/step.ts";

/** All names with what they are for, kind by kind. */
export const referenceList = ({ steps, checks }: Vocabulary, width: number): SaidLine[] => {
  const lists = [
    { heading: "Statements", entries: statements.map(({ verb, summary }) => [verb, summary] as const) },
    { heading: "Steps in a piece", entries: stepEntries(steps, "piece") },
    { heading: "Steps of the garment", entries: stepEntries(steps, "garment") },
    {
      heading: "Functions in values",
      entries: [...functions.values()].map(({ form, summary }) => [form, summary] as const),
    },
    { heading: "Checks", entries: checks.map(({ name, title }) => [name, title] as const) },
  ];
  return [
    ...lists.flatMap(({ heading, entries }) => [[strong(heading)], ...entryLines(entries, width), blank]),
    [plain("chalkline steps NAME shows one of them with its form and an example.")],
  ];
};

const stepEntries = (steps: readonly Step[], on: Step["on"]): (readonly [string, string])[] =>
  steps.flatMap((step) => (step.on === on ? [[step.name, step.summary] as const] : []));

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
export const referenceFor = (name: string, { steps, checks }: Vocabulary, width: number): SaidLine[] => {
  const found = [
    ...statements.filter(({ verb }) => verb === name).map((entry) => statementEntry(entry, width)),
    ...steps.filter((step) => step.name === name).map((step) => stepEntry(step, width)),
    ...[...functions.values()].filter((entry) => entry.name === name).map((entry) => functionEntry(entry, width)),
    ...checks.filter((check) => check.name === name).map((check) => checkEntry(check, width)),
  ];
  return found.flatMap((lines, index) => (index === 0 ? lines : [blank, ...lines]));
};

/** Every name that there is an entry for. */
export const referenceNames = ({ steps, checks }: Vocabulary): string[] => [
  ...statements.map(({ verb }) => verb),
  ...steps.map(({ name }) => name),
  ...functions.keys(),
  ...checks.map(({ name }) => name),
];

const statementEntry = ({ verb, parts, summary, place, block, parameters }: Statement, width: number): SaidLine[] => [
  [strong(verb), quiet(`  a statement${place === "garment" ? " of the whole recipe" : ""}`)],
  [plain(`    ${signature(parts)}${parameters ? " (KIND NAME = DEFAULT, …)" : ""}${block ? " { … }" : ""}`)],
  blank,
  ...paragraph(summary, width),
  ...slotLines([parts], verb, width),
];

const stepEntry = ({ name, on, since, summary, details, phrases, example }: Step, width: number): SaidLine[] => [
  [strong(name), quiet(`  a step ${on === "piece" ? "in a piece" : "of the garment"}, since ${since}`)],
  ...phrases.map(({ parts }): SaidLine => [plain(`    ${signature(parts)}`)]),
  blank,
  ...paragraph(summary, width),
  ...(details === undefined ? [] : paragraph(details, width)),
  ...slotLines(
    phrases.map(({ parts }) => parts),
    name,
    width,
  ),
  ...recipeLines("For example:", example),
];

const functionEntry = ({ name, form, summary }: FunctionEntry, width: number): SaidLine[] => [
  [strong(name), quiet("  a function in values")],
  [plain(`    ${form}`)],
  blank,
  ...paragraph(`Gives ${summary}.`, width),
];

const checkEntry = ({ name, since, title, why, passes, fails }: Check, width: number): SaidLine[] => [
  [strong(name), quiet(`  a check of every garment, since ${since}`)],
  blank,
  ...paragraph(title, width),
  ...paragraph(why, width),
  ...paragraph(`Where it is meant to be so, write: accept ${name} on THING because "…"`, width),
  ...recipeLines("Passes:", passes),
  ...recipeLines("Fails:", fails),
];

const paragraph = (text: string, width: number): SaidLine[] =>
  wrapped(text, width - 2).map((line) => [plain(`  ${line}`)]);

const recipeLines = (heading: string, recipe: string): SaidLine[] => [
  blank,
  [plain(`  ${heading}`)],
  blank,
  ...recipe
    .trim()
    .split("\n")
    .map((line): SaidLine => [plain(`    ${line}`)]),
];

const slotLines = (forms: readonly (readonly Part[])[], verb: string, width: number): SaidLine[] => {
  const slots = slotsIn(forms, verb);
  if (slots.length === 0) return [];
  const room = Math.max(20, width - 6 - Math.max(...slots.map(([written]) => written.length)));
  const rows = slots.flatMap(([written, note]) =>
    wrapped(note, room).map((line, index) => [words(index === 0 ? written : "", "quiet"), words(line)]),
  );
  return [blank, ...aligned(rows)];
};

/** Every slot once, as it is written behind its clause word, and what stands in it. */
const slotsIn = (forms: readonly (readonly Part[])[], verb: string): [string, string][] => {
  const found = new Map<string, string>();
  const add = (word: string, slot: Slot): void => {
    const sign = signature([{ kind: "slot", slot }]);
    found.set(word === "" || word === verb ? sign : `${word} ${sign}`, slot.note);
  };
  const walk = (parts: readonly Part[]): void => {
    let word = "";
    for (const part of parts) {
      if (part.kind === "words") word = part.words.at(-1) === "=" ? "" : (part.words.at(-1) ?? "");
      else if (part.kind === "optional") walk(part.parts);
      else {
        add(word, part.slot);
        word = "";
      }
    }
  };
  for (const parts of forms) walk(parts);
  return [...found];
};
