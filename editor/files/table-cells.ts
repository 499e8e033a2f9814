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
  let fields: string[] = [];
  let row = 1;
  let at = 0;
  for (;;) {
    const field = fieldAt(text, at, separator);
    if (field === undefined) return { problem: `row ${row}: a quote is opened and never closed.` };
    fields.push(field.text.trim());
    at = field.end;
    if (text[at] === separator) {
      at += 1;
      continue;
    }
    if (fields.some((each) => each !== ""))
      cells.push({ row, fields: fields.map((each) => withPoint(each, separator)) });
    if (at >= text.length) break;
    at += text.startsWith("\r\n", at) ? 2 : 1;
    fields = [];
    row += 1;
  }
  return cells.length === 0 ? { problem: "the table is empty." } : { cells };
};

const separatorOf = (text: string): string => {
  const [head = ""] = text.split(/[\r\n]/, 1);
  return head.includes("\t") ? "\t" : head.includes(";") ? ";" : ",";
};

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
