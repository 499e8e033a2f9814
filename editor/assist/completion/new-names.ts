// Names that a line might give: those that lines below use and nothing gives, and the body measures that are agreed upon.
import { bodyMeasures } from "../../../kernel/body-measures.ts";
import type { Evaluated } from "../../../kernel/evaluate.ts";
import { functions } from "../../../kernel/functions.ts";
import { valueInWords } from "../../../kernel/report/amounts.ts";
import { namesGivenBy } from "../giving.ts";
import type { Known } from "../known-names.ts";
import type { Spot } from "../line-at.ts";
import type { WorkedText } from "../worked-text.ts";
import { type WrittenLine, written } from "../written.ts";
import { hole, type Suggested } from "./suggested.ts";

/** Names for the place of a new name. */
export const newNames = (worked: WorkedText, spot: Spot, known: Known): Suggested[] => {
  const missing = namesMissing(worked, spot, known).map((label, index) => ({
    label,
    kind: "name" as const,
    detail: "used below, and given by no line yet",
    rank: index / 1000,
  }));
  if (spot.line?.verb === "measure") return [...measuresMissing(worked, known), ...missing];
  const said = new Set(missing.map(({ label }) => label));
  return [...missing, ...likely(worked, spot, known).filter(({ label }) => !said.has(label))];
};

/** A used recipe goes by its file's name, a copied piece by that of the piece, and an edge by what other pieces call theirs. */
const likely = (worked: WorkedText, { line, around, before }: Spot, known: Known): Suggested[] => {
  const suggested = (labels: Iterable<string>, detail: string): Suggested[] =>
    [...new Set(labels)]
      .filter((label) => !known.names.has(label))
      .map((label, index) => ({ label, kind: "name", detail, rank: 5 + index / 1000 }));
  if (line?.verb === "use") {
    const path = before.find(({ means }) => means === "Text")?.text ?? "";
    return suggested(path.match(/[\p{L}\d-]+(?=\.chalk"$)/u) ?? [], "the name of its file");
  }
  if (line?.verb === "piece") {
    const pieces = [...worked.outcome.uses.values()].flatMap(({ garment }) => [...garment.pieces.keys()]);
    return suggested(pieces, "a piece of a recipe that is used here");
  }
  if (around?.verb !== "piece") return [];
  const others = written(worked).lines.filter((each) => each.around !== around && each.around?.verb === "piece");
  const same = others.filter(({ verb }) => verb === line?.verb);
  return suggested(
    same.flatMap(namesGivenBy).map(({ word }) => word.text),
    "named so in another piece",
  );
};

/** Measures that used recipes ask for, with what they take them for, and then all that are agreed upon. */
const measuresMissing = ({ outcome }: WorkedText, known: Known): Suggested[] => {
  const { units } = outcome.garment;
  const asked = [...outcome.uses.values()].flatMap(measuresAsked);
  const rows = new Map<string, Suggested>();
  for (const [label, value] of asked) {
    const standard = valueInWords(value, units) ?? "";
    rows.set(label, {
      ...measure(label, standard),
      detail: `${standard}, asked for by a recipe that is used here`,
      rank: 1,
    });
  }
  [...bodyMeasures.keys()].forEach((label, index) => {
    if (!rows.has(label)) rows.set(label, { ...measure(label, ""), rank: 2 + index / 100 });
  });
  return [...rows.values()].filter(({ label }) => !known.names.has(label));
};

const measure = (label: string, standard: string): Suggested => {
  const body = bodyMeasures.get(label);
  return {
    label,
    kind: "measure",
    detail: body?.term ?? label,
    insert: `${label} = ${hole(1, standard === "" ? "0 cm" : standard)}`,
    isSnippet: true,
    ...(body && { documentation: `${body.term}. ${body.taken}.` }),
    rank: 0,
  };
};

const measuresAsked = ({ values, uses }: Evaluated): (readonly [string, Parameters<typeof valueInWords>[0]])[] => [
  ...[...values].flatMap(([name, { kind, value }]) => (kind === "measure" ? [[name, value] as const] : [])),
  ...[...uses.values()].flatMap(measuresAsked),
];

/** Names that lines below in the same block use, and that no line above nor another line of the block gives. */
const namesMissing = (worked: WorkedText, { line, around, offset }: Spot, known: Known): string[] => {
  const from = line?.from ?? offset;
  const { lines } = written(worked);
  const below = lines.filter((each) => each.from > from && isIn(each, around));
  const given = new Set(
    below
      .filter((each) => each.around === around)
      .flatMap(namesGivenBy)
      .map(({ word }) => word.text),
  );
  const used = below.flatMap((each) => usedBy(each, line?.verb));
  return [...new Set(used)].filter((name) => !given.has(name) && !known.names.has(name) && !functions.has(name));
};

const isIn = (line: WrittenLine, around: WrittenLine | undefined): boolean => {
  for (let each = line.around; each; each = each.around) if (each === around) return true;
  return around === undefined;
};

/** The plain names that a line uses; first words of unknown lines where a step is being named, sizes for a size. */
const usedBy = ({ words, verb, forms, isEntry }: WrittenLine, naming: string | undefined): string[] => {
  const calls = naming === "step" && !isEntry && (forms.length === 0 || forms[0]!.example === undefined) ? [verb] : [];
  const sizes = naming === "size" && verb === "base" ? words.filter(({ means }) => means === "NewName") : [];
  const plain = words.filter(({ means }, index) => means === "Name" && words[index - 1]?.text !== ".");
  return [...calls, ...[...sizes, ...plain].map(({ text }) => text)];
};
