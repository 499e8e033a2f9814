// A run of lines of a piece as a step of the recipe's own, which is called where they stood.
import type { Source } from "../../../kernel/sources.ts";
import { knownAt } from "../known-names.ts";
import type { Given } from "../naming/blocks.ts";
import { meant } from "../naming/meant.ts";
import { occurrencesOf } from "../naming/occurrences.ts";
import { type Recipes, recipesAround } from "../naming/recipes.ts";
import type { WorkedText } from "../worked-text.ts";
import { type WrittenLine, written } from "../written.ts";
import type { CodeAction } from "./code-action.ts";
import { freeName } from "./free-name.ts";
import { outermost } from "./outermost.ts";

const title = "Make these lines a step of the recipe's own";

/** The selected lines as a step, still to be tried; or why they cannot be one. */
export const extractStep = (
  worked: WorkedText,
  from: number,
  to: number,
  others: readonly Source[] = [],
): CodeAction[] => {
  const run = linesWithin(worked, from, to);
  if (run.length === 0) return [];
  const made = stepOf(worked, run, others);
  if ("refused" in made) return [{ title, kind: "refactor.extract", edits: [], refused: made.refused }];
  return [{ title, kind: "refactor.extract", ...made, isUntried: true }];
};

/** The lines of one block of a piece that a selection touches, whole; none where it holds less than a line. */
const linesWithin = (worked: WorkedText, from: number, to: number): WrittenLine[] => {
  if (worked.source.text.slice(from, to).trim() === "") return [];
  const { lines } = written(worked);
  const touched = lines.filter((line) => line.from < to && from < endOf(line));
  const first = touched.find((line) => from <= line.from);
  if (!first || first.isEntry || first.verb === "else") return [];
  const run = touched.filter(({ around, from: start }) => around === first.around && start >= first.from);
  const isInPiece = run.every((line) => !line.isEntry && pieceAround(line) !== undefined);
  // Less than a whole line is a matter of words.
  return isInPiece && run.every((line) => from <= line.from && line.to <= to) ? run : [];
};

const endOf = ({ to, block }: WrittenLine): number => block?.to ?? to;

const pieceAround = (line: WrittenLine): WrittenLine | undefined => {
  let { around } = line;
  while (around && around.verb !== "piece" && around.verb !== "step") around = around.around;
  return around;
};

interface Made {
  readonly edits: CodeAction["edits"];
  readonly select: { readonly from: number; readonly to: number };
}

interface Refused {
  readonly refused: string;
}

const stepOf = (worked: WorkedText, run: readonly WrittenLine[], others: readonly Source[]): Made | Refused => {
  const { source } = worked;
  const { text, file } = source;
  const recipes = recipesAround(worked, others);
  const [first, last] = [run[0]!, run.at(-1)!];
  const stretch = { from: first.from, to: branchesEnd(worked, last) };
  const lost = usedOutside(recipes, stretch);
  if (lost !== undefined) return { refused: lost };
  const parameters = parametersFor(worked, recipes, first, stretch);
  if ("refused" in parameters) return parameters;
  const name = freeName(written(worked), "own-step");
  const end = text.startsWith("\r\n", text.indexOf("\n") - 1) ? "\r\n" : "\n";
  const top = outermost(first);
  const at = text.lastIndexOf("\n", top.from - 1) + 1;
  const start = text.lastIndexOf("\n", first.from - 1) + 1;
  const indent = text.slice(start, first.from);
  if (indent.trim() !== "") return { refused: "The first of the lines shares its row with something else." };
  const body = indented(text.slice(start, stretch.to), indent);
  const list = parameters.map(({ kind, called }) => `${kind} ${called}`).join(", ");
  const call = [name, ...parameters.map(({ called }) => `${called} ${called}`)].join(" ");
  const edits = [
    { file, from: at, to: at, text: `step ${name} (${list}) {${end}${body}${end}}${end}${end}` },
    { file, from: first.from, to: stretch.to, text: call },
  ];
  const named = at + "step ".length;
  return { edits, select: { from: named, to: named + name.length } };
};

/** An `if` ends with the last of its branches. */
const branchesEnd = (worked: WorkedText, line: WrittenLine): number => {
  const { lines } = written(worked);
  let last = line;
  for (const each of lines.slice(lines.indexOf(line) + 1))
    if (each.around === line.around) {
      if (each.verb !== "else" && each.words[0]?.text !== "else") break;
      last = each;
    }
  return endOf(last);
};

/** Names that the lines give stay inside the step, unless the outline has them at its end: they must not be wanted outside. */
const usedOutside = (recipes: Recipes, { from, to }: { from: number; to: number }): string | undefined => {
  const { opened } = recipes;
  const given = [...opened.blocks.at.values()].filter(({ word }) => from <= word.from && word.from < to);
  const staying = given.filter(({ kind }) => kind !== "edge" && kind !== "dart");
  const outside = (each: ReturnType<typeof occurrencesOf>[number]): boolean =>
    each.recipe !== opened || each.word.from < from || each.word.from >= to;
  const used = staying.length > 0 ? occurrencesOf(recipes, staying).find(outside) : undefined;
  return used && `${used.word.text} is used outside of these lines, and names that a step gives stay inside it.`;
};

interface Parameter {
  readonly kind: string;
  readonly called: string;
}

/** What the lines use of the block they stand in: a step sees no value of it, and edges and places are told by their names. */
const parametersFor = (
  worked: WorkedText,
  recipes: Recipes,
  first: WrittenLine,
  { from, to }: { from: number; to: number },
): Parameter[] | Refused => {
  const known = knownAt(worked, first.from, first.around);
  const parameters = new Map<string, Parameter>();
  for (const line of written(worked).lines) {
    if (line.from < from || line.from >= to) continue;
    for (const [at, { means, text }] of line.words.entries()) {
      if (means !== "Name" || parameters.has(text) || line.words[at - 1]?.text === ".") continue;
      const stands = meant(recipes, recipes.opened, line, at);
      if (!stands.some((given) => isOutside(recipes, given, from, to))) continue;
      const kind = known.names.get(text)?.value?.kind;
      if (kind === "dart") continue;
      if (kind === undefined || kind === "recipe")
        return { refused: `What kind of thing ${text} is cannot be told, so it cannot be handed to a step.` };
      parameters.set(text, { kind, called: text });
    }
  }
  return [...parameters.values()];
};

/** Whether a name is given in the piece around, or comes to it with a copy, and not by the lines themselves. */
const isOutside = ({ opened }: Recipes, { file, word, block, kind }: Given, from: number, to: number): boolean => {
  const isWithin = file === opened.source.file && from <= word.from && word.from < to;
  const isOfPiece = kind === "edge" || kind === "place" || kind === "dart";
  return !isWithin && (isOfPiece || (block.kind !== "file" && file === opened.source.file));
};

/** Lines moved out to two spaces. */
const indented = (lines: string, indent: string): string =>
  lines
    .split("\n")
    .map((line) => (line.startsWith(indent) ? `  ${line.slice(indent.length)}` : line))
    .join("\n");
