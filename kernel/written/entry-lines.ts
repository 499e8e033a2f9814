// A written sheet as lines for a terminal.
import { columnsOf, readable } from "../report/readable.ts";
import { blank, plain, type SaidLine, strong, warning } from "../report/said.ts";
import { aligned, amount, type Cell, words } from "../report/table.ts";
import { wrapped } from "../report/wrapped.ts";
import type { Entry, Table } from "./entry.ts";

/** The lines of a sheet, wrapped at `width` columns; a blank line stands before each heading. */
export const entryLines = (entries: readonly Entry[], width: number): SaidLine[] =>
  entries.flatMap((entry) => linesOf(entry, width));

const linesOf = (entry: Entry, width: number): SaidLine[] => {
  switch (entry.kind) {
    case "title":
      return [[strong(readable(entry.text))]];
    case "heading":
      return [blank, [strong(readable(entry.text))]];
    case "warning":
      return indented(entry.text, width).map((text) => [warning(text)]);
    case "sentence":
      return indented(entry.text, width).map((text) => [plain(text)]);
    case "table":
      return tableLines(entry, width);
    case "picture":
      return [];
  }
};

const indented = (text: string, width: number): string[] =>
  wrapped(readable(text.replace(/\s+/g, " ")), width - 4).map((line, index) => `${index === 0 ? "  " : "    "}${line}`);

/** Only the last column wraps: it is the one with sentences in it. */
const tableLines = ({ columns, rows }: Table, width: number): SaidLine[] => {
  const last = columns.length - 1;
  const before = columns
    .slice(0, last)
    .map(({ head }, index) => Math.max(...[head, ...rows.map((row) => row[index]!)].map((text) => columnsOf(text))));
  const room = Math.max(leastRoom, width - before.reduce((sum, each) => sum + each + 2, 2));
  const cellOf = (text: string, index: number): Cell => (columns[index]!.amount ? amount(text) : words(text));
  return aligned([
    columns.map(({ head }) => words(head, "quiet")),
    ...rows.flatMap((row) => {
      const [first = "", ...more] = columns[last]!.amount ? [row[last]!] : wrapped(readable(row[last]!), room);
      return [
        [...row.slice(0, last), first].map(cellOf),
        ...more.map((text) => [...row.slice(0, last).map(() => words("")), words(text)]),
      ];
    }),
  ]);
};

const leastRoom = 30;
