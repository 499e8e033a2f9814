// The table of bodies as a batch reads it: looked through once to count and to fingerprint it, then read row by row.
import { createHash } from "node:crypto";
import { closeSync, constants, fstatSync, openSync, readSync } from "node:fs";
import { columnTwice, type MeasureColumn, measureColumns } from "../files/body-table.ts";
import { cannotRead } from "../files/read-text.ts";
import type { Cells } from "../files/table-cells.ts";
import { TableProblem, type TableRow, tableRows } from "../files/table-rows.ts";
import { systemCode } from "../files/why-refused.ts";
import { batchLimits } from "./batch-limits.ts";

export interface BodiesFile {
  /** The columns behind that of the names. */
  readonly columns: readonly MeasureColumn[];
  /** Rows below the headings that hold anything. */
  readonly count: number;
  /** SHA-256 of the file. */
  readonly digest: string;
  /** The rows below the headings. */
  rows(): Generator<TableRow>;
  /** Whether the file still is what it was when it was opened. */
  isUnchanged(): boolean;
  close(): void;
}

/** Opens a table of bodies of any length; or says what is the matter with it as a whole. A bad row is no matter of the whole. */
export const openBodies = (path: string): BodiesFile | { readonly problem: string } => {
  const handle = openTable(path);
  if (typeof handle !== "number") return handle;
  try {
    const read = lookedThrough(handle, path);
    if ("problem" in read) {
      closeSync(handle);
      return read;
    }
    return {
      ...read,
      rows: () => below(handle),
      isUnchanged: () => digestOf(handle) === read.digest,
      close: () => closeSync(handle),
    };
  } catch (error) {
    closeSync(handle);
    if (error instanceof TableProblem) return { problem: `${path}: ${error.message}` };
    return refusedBySystem(error, path);
  }
};

const openTable = (path: string): number | { readonly problem: string } => {
  let handle: number;
  try {
    // Without O_NONBLOCK a pipe that nobody writes into would hold the program for ever; Windows has neither.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    return refusedBySystem(error, path);
  }
  const facts = fstatSync(handle);
  if (facts.isFile()) return handle;
  closeSync(handle);
  // It is read twice, which nothing but a file can be.
  return { problem: `${path} is ${facts.isDirectory() ? "a folder" : "a device or a pipe"}, not a file.` };
};

// Anything but a refusal of the system is a fault of ours.
const refusedBySystem = (error: unknown, path: string): { readonly problem: string } => {
  if (systemCode(error) === undefined) throw error;
  return { problem: cannotRead(error, path).problem.message };
};

const lookedThrough = (
  handle: number,
  path: string,
): Pick<BodiesFile, "columns" | "count" | "digest"> | { readonly problem: string } => {
  const rows = tableRows(handle);
  const first = rows.next();
  if (first.done) return { problem: `${path}: the table is empty.` };
  if ("problem" in first.value) return { problem: `${path}, row ${first.value.row}: ${first.value.problem}` };
  const head: Cells = first.value;
  const columns = measureColumns(head, path);
  if ("problem" in columns) return columns;
  const twice = columnTwice(columns);
  if (twice !== undefined) return { problem: `${path} has two columns ${twice}.` };
  if (columns.length > batchLimits.fields) return { problem: `${path} has more than ${batchLimits.fields} columns.` };
  let count = 0;
  for (const _ of rows) count += 1;
  if (count === 0) return { problem: `${path} has a row of headings, and no body below it.` };
  return { columns, count, digest: digestOf(handle) };
};

function* below(handle: number): Generator<TableRow> {
  const rows = tableRows(handle);
  rows.next();
  yield* rows;
}

const digestOf = (handle: number): string => {
  const hash = createHash("sha256");
  const bytes = new Uint8Array(64 * 1024);
  for (let at = 0; ; ) {
    const count = readSync(handle, bytes, 0, bytes.length, at);
    if (count === 0) return hash.digest("hex");
    hash.update(bytes.subarray(0, count));
    at += count;
  }
};
