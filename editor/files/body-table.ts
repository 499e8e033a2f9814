// Body measures out of a file's text: JSON, or a table of comma-separated values as spreadsheets save it.
import { didYouMean } from "../../grammar/nearest.ts";
import type { Scalar } from "../../kernel/value.ts";
import { readAmount } from "./amount.ts";
import { type Cells, tableCells } from "./table-cells.ts";

/** Measures by name, or one sentence that says what is the matter with the file. */
export type BodyRead = ReadonlyMap<string, Scalar> | { readonly problem: string };

/**
 * The measures of one body. A table holds either a column `name` and one column a measure, one row a body, or two
 * columns, measure and value. `person` picks the row where there are several.
 */
export const bodyIn = (text: string, called: string, person: string | undefined): BodyRead => {
  const trimmed = text.trimStart();
  if (trimmed === "") return { problem: `${called} is empty.` };
  if (trimmed.startsWith("{") || trimmed.startsWith("[")) return fromJson(text, called, person);
  const rows = tableCells(text);
  if ("problem" in rows) return { problem: `${called}: ${rows.problem}` };
  const heads = rows.cells[0]!.fields;
  return heads[0]!.toLowerCase() === "name"
    ? onePerRow(rows.cells, called, person)
    : twoColumns(rows.cells, called, person);
};

/**
 * All bodies of a table with a column `name`, one body a row. A row with a value that is no amount is left out, and named by
 * row and column among the problems; the others stand.
 */
export const bodiesIn = (
  text: string,
  called: string,
):
  | { bodies: { name: string; measures: ReadonlyMap<string, Scalar> }[]; problems: string[] }
  | { readonly problem: string } => {
  const rows = tableCells(text);
  if ("problem" in rows) return { problem: `${called}: ${rows.problem}` };
  const [head, ...below] = rows.cells;
  const columns = measureColumns(head, called);
  if ("problem" in columns) return columns;
  const read = below.map((row) => ({ name: row.fields[0]!, measures: measuresIn(row, columns, called) }));
  return {
    bodies: read.flatMap(({ name, measures }) => ("problem" in measures ? [] : [{ name, measures }])),
    problems: read.flatMap(({ measures }) => ("problem" in measures ? [measures.problem] : [])),
  };
};

/** The columns of a table with one body a row, behind that of the names; or what is wrong with the row of headings. */
export const measureColumns = (
  head: Cells | undefined,
  called: string,
): readonly MeasureColumn[] | { readonly problem: string } => {
  if (head !== undefined && head.fields[0]!.toLowerCase() === "name") return head.fields.slice(1).map(measureColumn);
  return {
    problem: `${called} has to begin with a row of headings: name, then one measure a column, such as bust-girth (mm).`,
  };
};

const fromJson = (text: string, called: string, person: string | undefined): BodyRead => {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return { problem: `${called} begins like JSON, but is not well formed.` };
  }
  const form = '{ "bust-girth": "92 cm", "waist-girth": "74 cm" }';
  if (typeof data !== "object" || data === null || Array.isArray(data)) {
    return { problem: `${called} has to hold one body, written ${form}.` };
  }
  if (person !== undefined)
    return { problem: `${called} holds one body without a name, so --person has nothing to pick from.` };
  const measures = new Map<string, Scalar>();
  for (const [name, value] of Object.entries(data)) {
    if (typeof value === "number")
      return { problem: `${called}: ${name} is ${value} without a unit; write "${value} cm" in quotes.` };
    if (typeof value !== "string")
      return { problem: `${called}: ${name} has to be a text with a number and a unit, such as "92 cm".` };
    const read = measureOf(value, undefined);
    if (typeof read === "string") return { problem: `${called}: ${name} is ${read}` };
    measures.set(name, read);
  }
  return measures;
};

const onePerRow = ([head, ...rows]: readonly Cells[], called: string, person: string | undefined): BodyRead => {
  const columns = head!.fields.slice(1).map(measureColumn);
  const twice = columnTwice(columns);
  if (twice !== undefined) return { problem: `${called} has two columns ${twice}.` };
  const row = rowFor(rows, called, person);
  if ("problem" in row) return row;
  return measuresIn(row, columns, called);
};

/** The name of a column that stands in the table twice. */
export const columnTwice = (columns: readonly MeasureColumn[]): string | undefined =>
  columns.find(({ name }, index) => name !== "" && columns.findIndex((other) => other.name === name) < index)?.name;

/** The measures in one row of a table; or what is the matter, with row and column. */
export const measuresIn = (
  row: Cells,
  columns: readonly MeasureColumn[],
  called: string,
): ReadonlyMap<string, Scalar> | { readonly problem: string } => {
  if (row.fields.length > columns.length + 1) {
    return {
      problem: `${called}, row ${row.row}: there are ${row.fields.length} values, and only ${columns.length + 1} columns.`,
    };
  }
  const measures = new Map<string, Scalar>();
  for (const [index, { name, unit }] of columns.entries()) {
    const written = row.fields[index + 1] ?? "";
    // A measure that was not taken.
    if (written === "" || name === "") continue;
    const read = measureOf(written, unit);
    if (typeof read === "string") return { problem: `${called}, row ${row.row}, column ${name}: this is ${read}` };
    measures.set(name, read);
  }
  return measures;
};

const rowFor = (rows: readonly Cells[], called: string, person: string | undefined): Cells | { problem: string } => {
  const names = rows.map(({ fields }) => fields[0]!);
  if (rows.length === 0) return { problem: `${called} has a row of headings, and no body below it.` };
  const list = names.join(", ");
  if (person === undefined) {
    if (rows.length === 1) return rows[0]!;
    return { problem: `${called} holds ${rows.length} bodies; pick one with --person NAME: ${list}.` };
  }
  const found = rows.filter(({ fields }) => fields[0] === person);
  if (found.length === 1) return found[0]!;
  if (found.length > 1)
    return { problem: `${called} names ${person} in rows ${found.map(({ row }) => row).join(" and ")}.` };
  const hint = didYouMean(person, names);
  return { problem: `${called} holds no body called ${person}. ${hint ?? `It holds ${list}.`}` };
};

const twoColumns = (rows: readonly Cells[], called: string, person: string | undefined): BodyRead => {
  if (person !== undefined)
    return { problem: `${called} holds one body without a name, so --person has nothing to pick from.` };
  const measures = new Map<string, Scalar>();
  const hasHead = rows[0]!.fields[0]!.toLowerCase() === "measure";
  const unit = hasHead ? measureColumn(rows[0]!.fields[1] ?? "").unit : undefined;
  for (const { row, fields } of hasHead ? rows.slice(1) : rows) {
    const [name, value] = fields;
    if (fields.length !== 2) {
      return {
        problem: `${called}, row ${row}: two values are wanted here, a measure and its amount, and there ${fields.length === 1 ? "is 1" : `are ${fields.length}`}.`,
      };
    }
    const read = measureOf(value!, unit);
    if (typeof read === "string") return { problem: `${called}, row ${row}, ${name}: this is ${read}` };
    if (measures.has(name!)) return { problem: `${called}, row ${row}: ${name} stands in the table twice.` };
    measures.set(name!, read);
  }
  return measures;
};

/** A column of a table: the measure, and the unit of the numbers in it where the heading says one. */
export interface MeasureColumn {
  readonly name: string;
  readonly unit?: string;
}

/** "bust-girth (cm)" is the measure bust-girth in cm. */
const measureColumn = (text: string): MeasureColumn => {
  const found = /^([^()]*)\(([^()]*)\)$/.exec(text);
  return found ? { name: found[1]!.trim(), unit: found[2]!.trim() } : { name: text };
};

/** The amount, or what it is instead, as the end of a sentence. */
const measureOf = (written: string, unit: string | undefined): Scalar | string => {
  const own = readAmount(written);
  if (own && own.kind !== "number") return own;
  if (!own) return `"${written}", which is not a number with a unit such as 92 cm.`;
  if (unit === undefined) return `${written} without a unit; write ${written} cm, or (cm) behind the heading.`;
  return readAmount(`${written} ${unit}`) ?? `${written} in "${unit}", which is no unit of length.`;
};
