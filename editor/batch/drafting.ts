// One body of a table, drafted: the recipe worked with its measures, what was found, what it measures, and its drawings.

import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { valueInWords } from "../../kernel/report/amounts.ts";
import { measuredRow } from "../../kernel/report/measured-row.ts";
import { plainNumber } from "../../kernel/units.ts";
import { kindInWords, type Scalar, sharedKind } from "../../kernel/value.ts";
import { measuresIn } from "../files/body-table.ts";
import type { TableRow } from "../files/table-rows.ts";
import { chalk } from "../terminal/known.ts";
import { type Asked, askedFor, worked } from "../terminal/worked.ts";
import type { RowAnswer, RowFinding, RowVerdict } from "./chunk.ts";
import { type DrawnBody, drawnBody } from "./drawn-body.ts";
import { notWorked, tableFinding } from "./not-worked.ts";
import { type Parcel, unpacked } from "./parcel.ts";

/** A body as it came out, its drawings not yet saved or sent. */
export interface Drafted {
  readonly answer: Omit<RowAnswer, "files">;
  readonly files: DrawnBody["files"];
}

/** Drafts bodies from one parcel; what does not depend on the body is worked out once. */
export const draftingFrom = (parcel: Parcel): ((row: TableRow) => Promise<Drafted>) | { readonly problem: string } => {
  const opened = unpacked(parcel);
  const base = worked(opened, { set: parcel.set, ...(parcel.size !== null && { size: parcel.size }) });
  if ("problem" in base) return base;
  const asked = askedFor(base.outcome);
  const given = base.circumstances.measures ?? new Map<string, Scalar>();

  return async (row) => {
    const refused = (message: string): Drafted => ({ answer: notWorked(row, parcel.table, message), files: [] });
    if ("problem" in row) return refused(`${parcel.table}, row ${row.row}: ${row.problem}`);
    const measures = measuresIn(row, parcel.columns, parcel.table);
    if ("problem" in measures) return refused(measures.problem);
    const wrongKind = ofWrongKind(measures, asked);
    if (wrongKind) return refused(`${parcel.table}, row ${row.row}, column ${wrongKind}`);

    const outcome = chalk.work(opened.source, {
      ...base.circumstances,
      measures: new Map([...measures, ...given]),
    });
    const drawn = await drawnBody(outcome, opened.texts, parcel, row.fields[0]!);
    const findings = [
      ...notTaken(measures, given, asked, parcel, row.row, outcome),
      ...[...outcome.findings, ...drawn.findings].map(rowFinding),
      ...drawn.refused.map((message) => tableFinding("error", "not-printed", parcel.table, row.row, message)),
    ];
    return {
      answer: {
        row: row.row,
        name: row.fields[0]!,
        verdict: verdictOf(findings),
        ...inColumns(measuredRow(outcome), parcel.headings),
        findings,
      },
      files: drawn.files,
    };
  };
};

const verdictOf = (findings: readonly RowFinding[]): RowVerdict => {
  if (findings.some(({ severity }) => severity === "error")) return "errors";
  return findings.length > 0 ? "warnings" : "clean";
};

const ofWrongKind = (measures: ReadonlyMap<string, Scalar>, asked: ReadonlyMap<string, Asked>): string | undefined => {
  for (const [name, value] of measures) {
    const wanted = asked.get(name);
    if (wanted && sharedKind(value, wanted.like) === undefined)
      return `${name}: the recipe asks for ${kindInWords(wanted.like)}, and this is ${kindInWords(value)}.`;
  }
  return undefined;
};

/** Measures that the table has a column for and this row leaves empty: the garment is drafted with the recipe's own then. */
const notTaken = (
  measures: ReadonlyMap<string, Scalar>,
  given: ReadonlyMap<string, Scalar>,
  asked: ReadonlyMap<string, Asked>,
  { columns, table }: Parcel,
  row: number,
  { garment }: Outcome,
): RowFinding[] =>
  columns
    .filter(({ name }) => asked.has(name) && !measures.has(name) && !given.has(name))
    .map(({ name }) => {
      const standard = valueInWords(asked.get(name)!.like, garment.units);
      const message = `${table}, row ${row}, column ${name}: nothing stands here, so ${standard} is taken, as for a body without measures.`;
      return tableFinding("warning", "measure-not-taken", table, row, message);
    });

const rowFinding = ({ severity, code, where, message, hint }: Diagnostic): RowFinding => ({
  severity,
  code,
  file: where.file,
  line: where.line,
  message,
  hint: hint ?? "",
});

/** The measures under their headings; those that have none, as a list in words. */
const inColumns = (
  measured: ReadonlyMap<string, number>,
  headings: readonly string[],
): Pick<RowAnswer, "cells" | "also"> => {
  const known = new Set(headings);
  const also = [...measured].filter(([heading]) => !known.has(heading));
  return {
    cells: headings.map((heading) => measured.get(heading) ?? null),
    also: also.map(([heading, value]) => `${heading} ${plainNumber(value, 6)}`).join("; "),
  };
};
