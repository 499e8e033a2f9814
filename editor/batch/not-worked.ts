// The answer for a row that cannot be worked: it is named, and the others go on.
import { nameIn, type TableRow } from "../files/table-rows.ts";
import type { RowAnswer, RowFinding } from "./chunk.ts";

/** A row of the table that nothing was drafted for; `table` is how messages name the table. */
export const notWorked = (row: TableRow, table: string, message: string): RowAnswer => ({
  row: row.row,
  name: nameIn(row),
  verdict: "not worked",
  cells: [],
  also: "",
  findings: [tableFinding("error", "row-not-worked", table, row.row, message)],
  files: [],
});

/** What is said of a row of the table, where no line of the recipe has to do with it. */
export const tableFinding = (
  severity: RowFinding["severity"],
  code: string,
  table: string,
  row: number,
  message: string,
): RowFinding => ({ severity, code, file: table, line: row, message, hint: "" });
