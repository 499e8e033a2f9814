// Whether a table of bodies suits a recipe: what its columns are for, and what is to be said before anything is drafted.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { valueInWords } from "../../kernel/report/amounts.ts";
import type { MeasureColumn } from "../files/body-table.ts";
import { askedFor } from "../terminal/worked.ts";

/** Remarks on columns that lack or are of no use; or why nothing can be drafted from this table. `set` names what --set gives. */
export const columnsFit = (
  columns: readonly MeasureColumn[],
  table: string,
  set: ReadonlySet<string>,
  outcome: Outcome,
): { readonly remarks: readonly string[] } | { readonly problem: string } => {
  const asked = askedFor(outcome);
  const named = columns.map(({ name }) => name).filter((name) => name !== "");
  const choice = named.find((name) => asked.get(name)?.kind === "param");
  if (choice !== undefined)
    return {
      problem: `${table}: ${choice} is a design choice of the recipe and no body measure; give it with --set.`,
    };
  const measures = [...asked].filter(([, { kind }]) => kind === "measure");
  const names = measures.map(([name]) => name);
  if (names.length > 0 && !names.some((name) => named.includes(name)))
    return { problem: `${table} has no column for any measure that the recipe asks for: ${names.join(", ")}.` };
  const missing = measures.filter(([name]) => !named.includes(name) && !set.has(name));
  // A misspelt heading would have everybody drafted to the recipe's own measure, and called clean.
  for (const name of named.filter((each) => !asked.has(each))) {
    const hint = didYouMean(
      name,
      missing.map(([each]) => each),
    );
    if (hint !== undefined)
      return { problem: `${table} has a column ${name}, and the recipe asks for no such measure. ${hint}` };
  }
  const lacking = missing.map(([name, { like }]) => {
    const standard = valueInWords(like, outcome.garment.units);
    return `${table} has no column ${name}: ${standard} is taken for every body.`;
  });
  const strange = named
    .filter((name) => !asked.has(name))
    .map((name) => `The recipe asks for no measure called ${name}.`);
  return { remarks: [...lacking, ...strange] };
};
