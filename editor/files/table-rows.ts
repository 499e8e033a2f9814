// The rows of a table of any length, one after another, of which only a stretch is ever held: the cells are those of
// table-cells.ts, whose grammar is the only one.
import { readSync } from "node:fs";
import { behindRow, type Cells, isEmptyRow, quoteLeftOpen, rowAt, separatorOf } from "./table-cells.ts";

/** A row that holds something, or what is wrong with it; the others go on behind it. */
export type TableRow = Cells | { readonly row: number; readonly problem: string };

/** The name in a row: its first field; nothing where the row could not be read. */
export const nameIn = (row: TableRow): string => ("fields" in row ? row.fields[0]! : "");

/** That the file cannot be read as a table at all, from some row on. */
export class TableProblem extends Error {}

// Bytes that are read at a time.
const stretch = 64 * 1024;

/** No row of a table of body measures is nearly as long as this, in letters: what is, has a quote left open. */
export const longestRow = 32 * 1024;

/**
 * The rows of an open file, the row of headings first. A row that cannot be told apart is named with its number, and the
 * next line is the next row. A file that is no text in UTF-8 throws a TableProblem.
 */
export function* tableRows(handle: number): Generator<TableRow> {
  const bytes = new Uint8Array(stretch);
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let [text, at, row, position, isAtEnd] = ["", 0, 1, 0, false];
  let separator: string | undefined;
  const more = (): void => {
    const count = readSync(handle, bytes, 0, bytes.length, position);
    position += count;
    isAtEnd = count === 0;
    text = text.slice(at) + decoded(decoder, bytes.subarray(0, count), isAtEnd, row);
    at = 0;
  };
  while (true) {
    separator ??= text === "" ? undefined : separatorOf(text);
    const read = separator === undefined ? undefined : rowAt(text, at, separator);
    // A row that ends where the stretch does may go on behind it, and so may the sign that ends its line.
    const isWhole = read !== undefined && read.end + 1 < text.length;
    if (!isAtEnd && !isWhole && text.length - at <= longestRow) {
      more();
      continue;
    }
    if (read === undefined || read.end - at >= longestRow) {
      if (isAtEnd && at >= text.length) return;
      yield { row, problem: read === undefined ? quoteLeftOpen : "this is far too long for a row of body measures." };
      // Nobody can tell where it was meant to end: at the end of its line, most likely.
      let line = lineEnd.exec(text.slice(at));
      while (!line && !isAtEnd) {
        at = text.length;
        more();
        line = lineEnd.exec(text);
      }
      if (!line) return;
      // Where the stretch ends in the middle of CR LF, the other half is still to be read.
      if (at + line.index + 1 >= text.length && !isAtEnd) {
        at += line.index;
        more();
        at = behindRow(text, 0);
      } else at = behindRow(text, at + line.index);
    } else {
      if (!isEmptyRow(read.fields)) yield { row, fields: read.fields };
      if (isAtEnd && read.end >= text.length) return;
      at = behindRow(text, read.end);
    }
    row += 1;
  }
}

const lineEnd = /[\r\n]/;

const decoded = (decoder: TextDecoder, bytes: Uint8Array, isLast: boolean, row: number): string => {
  let text: string;
  try {
    text = decoder.decode(bytes, { stream: !isLast });
  } catch {
    throw new TableProblem(
      `it is not written in UTF-8 (somewhere behind row ${row}), so its letters cannot be told for certain. Save it as UTF-8 in the program that it was written with.`,
    );
  }
  if (text.includes("\0")) throw new TableProblem(`behind row ${row} it holds bytes that no text has.`);
  return text;
};
