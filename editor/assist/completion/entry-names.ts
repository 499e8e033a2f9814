// What an entry of a block may be called: the params of the recipe that is used, measures for a size, the fields of a title.
import { bodyMeasures } from "../../../kernel/body-measures.ts";
import type { Evaluated } from "../../../kernel/evaluate.ts";
import { valueInWords } from "../../../kernel/report/amounts.ts";
import type { Units } from "../../../kernel/working.ts";
import { asText } from "../markdown.ts";
import type { WorkedText } from "../worked-text.ts";
import { type WrittenLine, written } from "../written.ts";
import { hole, type Suggested } from "./suggested.ts";

/** Entries for the block of this line that stand nowhere else in it. */
export const entryNames = (worked: WorkedText, around: WrittenLine | undefined, offset: number): Suggested[] => {
  if (!around) return [];
  const { outcome } = worked;
  const { lines } = written(worked);
  const said = new Set(
    lines
      .filter((line) => line.around === around && !(line.from <= offset && offset <= line.words[0]!.to))
      .map(({ verb }) => verb),
  );
  const { units } = outcome.garment;
  return entriesOf(around, outcome, units).filter(({ label }) => !said.has(label));
};

const entriesOf = (around: WrittenLine, outcome: Evaluated, units: Units): Suggested[] => {
  if (around.verb === "recipe")
    return [
      field("by", "who made it"),
      field("made-for", "whom it is made for"),
      field("notes", "what else there is to know"),
    ];
  if (around.verb === "size") return measuresFor(outcome, units);
  const name = around.words.find(({ means }) => means === "NewName")?.text ?? "";
  const used = outcome.uses.get(name);
  return used ? valuesOf(used, "param", units) : [];
};

/** The measures of this recipe and of those it uses; a table that declares none holds whatever a body may be asked for. */
const measuresFor = (outcome: Evaluated, units: Units): Suggested[] => {
  const own = [outcome, ...outcome.uses.values()].flatMap((each) => valuesOf(each, "measure", units));
  if (own.length > 0) return own;
  return [...bodyMeasures.values()].map(({ name, term, taken }, index) => ({
    label: name,
    kind: "measure",
    detail: term,
    documentation: taken,
    insert: `${name} = ${hole(1, "0 cm")}`,
    isSnippet: true,
    rank: index / 1000,
  }));
};

const field = (label: string, detail: string): Suggested => ({
  label,
  kind: "word",
  detail,
  insert: `${label} "${hole(1, "text")}"`,
  isSnippet: true,
  rank: 0,
});

const valuesOf = ({ values }: Evaluated, kind: "measure" | "param", units: Units): Suggested[] =>
  [...values].flatMap(([label, named], index): Suggested[] => {
    if (named.kind !== kind) return [];
    const worth = valueInWords(named.value, units) ?? "";
    const { range, note } = named;
    const limits = range ? `, ${valueInWords(range.least, units)} to ${valueInWords(range.most, units)}` : "";
    return [
      {
        label,
        kind,
        detail: `${worth}${limits}`,
        insert: `${label} = ${hole(1, worth)}`,
        isSnippet: true,
        ...(note !== undefined && { documentation: asText(note) }),
        rank: index / 1000,
      },
    ];
  });
