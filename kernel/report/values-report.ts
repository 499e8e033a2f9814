// The values of a recipe as tables: what it was given, and what it made of it.
import type { NamedValue } from "../evaluate.ts";
import type { Outcome } from "../kernel.ts";
import type { Units } from "../working.ts";
import { valueInWords } from "./amounts.ts";
import { blank, type SaidLine, strong } from "./said.ts";
import { aligned, amount, type Cell, words } from "./table.ts";
import { toldValues } from "./told-values.ts";

/** Measures, design choices and named values, each kind under its heading. */
export const valuesReport = (outcome: Outcome): SaidLine[] => {
  const values = [...toldValues(outcome)];
  return kinds.flatMap(({ kind, heading }) => {
    const rows = values.flatMap(([name, named]) =>
      named.kind === kind ? rowOf(name, named, outcome.garment.units) : [],
    );
    return rows.length === 0 ? [] : [[strong(heading)], ...aligned(rows), blank];
  });
};

const kinds = [
  { kind: "measure", heading: "Body measures" },
  { kind: "param", heading: "Design choices" },
  { kind: "let", heading: "Worked out" },
] as const;

const rowOf = (name: string, { value, range, note }: NamedValue, units: Units): Cell[][] => {
  const told = valueInWords(value, units);
  if (told === undefined) return [];
  const limits = range ? `${valueInWords(range.least, units)} to ${valueInWords(range.most, units)}` : "";
  return [[words(name), amount(told), words(limits, "quiet"), words(note ?? "", "quiet")]];
};
