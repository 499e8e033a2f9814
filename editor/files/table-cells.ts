// The cells of a table of separated values (RFC 4180, with the semicolons and tabs of spreadsheets as well).

/** One row, counted from 1 as a spreadsheet counts, its fields without blanks around them. */
export interface Cells {
  readonly row: number;
  readonly fields: readonly string[];
}

/** The rows that hold anything, at least one; or what is wrong with the table. */
export const tableCells = (text: string): { readonly cells: readonly Cells[] } | { readonly problem: string } => {
  const separator = separatorOf(text);
  const cells: Cells[] = [];
  for (let at = 0, row = 1; ; row += 1) {
    const read = rowAt(text, at, separator);
    if (read === undefined) return { problem: `row ${row}: ${quoteLeftOpen}` };
    if (!isEmptyRow(read.fields)) cells.push({ row, fields: read.fields });
    if (read.end >= text.length) break;
    at = behindRow(text, read.end);
  }
  return cells.length === 0 ? { problem: "the table is empty." } : { cells };
};

/** What is said of a row whose last field never ends. */
export const quoteLeftOpen = "a quote is opened and never closed.";

/** What parts the columns, by the first line of the table. */
export const separatorOf = (text: string): string => {
  const [head = ""] = text.split(/[\r\n]/, 1);
  return head.includes("\t") ? "\t" : head.includes(";") ? ";" : ",";
};

/** The fields of the row that begins at an offset, and the offset at which its line ends; undefined where a quote is never closed. */
export const rowAt = (
  text: string,
  start: number,
  separator: string,
): { readonly fields: readonly string[]; readonly end: number } | undefined => {
  const fields: string[] = [];
  for (let at = start; ; at += 1) {
    const field = fieldAt(text, at, separator);
    if (field === undefined) return undefined;
    fields.push(withPoint(field.text.trim(), separator));
    at = field.end;
    if (text[at] !== separator) return { fields, end: at };
  }
};

/** Where the next row begins behind one that ends at this offset. */
export const behindRow = (text: string, end: number): number => end + (text.startsWith("\r\n", end) ? 2 : 1);

/** A row of nothing but separators: spreadsheets leave such behind. */
export const isEmptyRow = (fields: readonly string[]): boolean => fields.every((field) => field === "");

const fieldAt = (text: string, start: number, separator: string): { text: string; end: number } | undefined => {
  let at = start;
  let plain = "";
  while (text[at] === " ") at += 1;
  if (text[at] === '"') {
    for (at += 1; ; at += 1) {
      if (at >= text.length) return undefined;
      if (text[at] !== '"') plain += text[at];
      else if (text[at + 1] === '"') {
        plain += '"';
        at += 1;
      } else break;
    }
    at += 1;
  }
  const rest = at;
  while (at < text.length && text[at] !== separator && text[at] !== "\n" && text[at] !== "\r") at += 1;
  return { text: plain + text.slice(rest, at), end: at };
};

// Where the semicolon parts the columns, the comma is the decimal point.
const withPoint = (field: string, separator: string): string =>
  separator === ";" ? field.replace(/^(-?\d+),(\d+)/, "$1.$2") : field;
