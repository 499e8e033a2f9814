// Rows as CSV after RFC 4180, safe to open in a spreadsheet: no text in it is taken for a formula.

/** A field: numbers stay numbers, and what is not there is left empty. */
export type Cell = string | number | undefined;

/** Rows of fields as text, the lines ended with CR and LF as the RFC has it. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(field).join(",")}\r\n`).join("");

const field = (cell: Cell): string => {
  if (cell === undefined) return "";
  if (typeof cell === "number") {
    if (!Number.isFinite(cell)) throw new Error("a table holds a number that is not finite");
    return String(cell);
  }
  const text = formula.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

// A spreadsheet reads a field that begins with one of these as a formula, the wide forms of them too (OWASP, "CSV injection").
const formula = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/;
