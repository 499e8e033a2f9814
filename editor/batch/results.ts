// The two tables of results, which grow chunk by chunk under names that nobody takes for whole, and get their names at the end.
import { closeSync, existsSync, fstatSync, fsyncSync, ftruncateSync, openSync, renameSync, writeSync } from "node:fs";
import { join } from "node:path";
import { type Cell, csvText } from "../../kernel/report/csv.ts";
import { settleNames } from "../files/settle-names.ts";
import type { RowAnswer } from "./chunk.ts";
import type { JournalMark } from "./journal.ts";

/** The names of the tables, one row a body and one row a finding. */
export const tableNames = { measures: "measures.csv", findings: "findings.csv" } as const;

export interface Results {
  /** Appends these rows to both tables, on the disk when it returns; gives the bytes of each. */
  add(answers: readonly RowAnswer[]): Pick<JournalMark, "measures" | "findings">;
  /** Gives the tables their names. */
  finish(): void;
  close(): void;
}

/** Opens the tables where a mark in the journal says that they are whole; a sentence where they are not that long. */
export const openResults = (
  folder: string,
  mark: JournalMark,
  headings: readonly string[],
): Results | { readonly problem: string } => {
  const heads = { measures: measuresHead(headings), findings: findingsHead };
  const tables: OpenTable[] = [];
  const close = (): void => {
    for (const { handle } of tables) closeSync(handle);
  };
  try {
    for (const kind of ["measures", "findings"] as const) {
      const path = join(folder, tableNames[kind]);
      const table = openTable(path, mark.rows === 0 ? 0 : mark[kind]);
      if (!table) {
        close();
        return {
          problem: `${path}.part is not as long as it was, so this batch cannot go on. Draft it again with --anew.`,
        };
      }
      tables.push(table);
      if (table.bytes === 0) append(table, heads[kind]);
    }
  } catch (error) {
    close();
    throw error;
  }
  const [measures, findings] = tables as [OpenTable, OpenTable];
  return {
    add: (answers) => {
      append(measures, csvText(answers.map((answer) => measuresRow(answer, headings.length))));
      append(findings, csvText(answers.flatMap(findingRows)));
      return { measures: measures.bytes, findings: findings.bytes };
    },
    finish: () => {
      for (const { path, isNamed } of tables) if (!isNamed) renameSync(partOf(path), path);
      settleNames(folder);
    },
    close,
  };
};

interface OpenTable {
  readonly path: string;
  readonly handle: number;
  /** It has its name already: the kill came between that and the last line of the journal. */
  readonly isNamed: boolean;
  bytes: number;
}

const partOf = (path: string): string => `${path}.part`;

const openTable = (path: string, bytes: number): OpenTable | undefined => {
  const isNamed = bytes > 0 && !existsSync(partOf(path)) && existsSync(path);
  if (bytes > 0 && !isNamed && !existsSync(partOf(path))) return undefined;
  const handle = openSync(isNamed ? path : partOf(path), bytes === 0 ? "w" : "r+");
  if (fstatSync(handle).size < bytes) {
    closeSync(handle);
    return undefined;
  }
  ftruncateSync(handle, bytes);
  return { path, handle, isNamed, bytes };
};

const append = (table: OpenTable, text: string): void => {
  const bytes = Buffer.from(text);
  for (let written = 0; written < bytes.length; ) {
    const count = writeSync(table.handle, bytes, written, bytes.length - written, table.bytes);
    written += count;
    table.bytes += count;
  }
  // Before the journal says so, for a crash of the machine keeps no order.
  fsyncSync(table.handle);
};

const measuresHead = (headings: readonly string[]): string =>
  csvText([["row", "name", "verdict", "errors", "warnings", ...headings, "also measured"]]);

const findingsHead = csvText([["row", "name", "severity", "code", "file", "line", "message", "hint"]]);

const measuresRow = ({ row, name, verdict, findings, cells, also }: RowAnswer, columns: number): Cell[] => {
  const many = (severity: string): number => findings.filter((finding) => finding.severity === severity).length;
  // A row that was not worked has no measures, and its columns stay empty.
  const measures = Array.from({ length: columns }, (_, column) => cells[column] ?? undefined);
  return [row, name, verdict, many("error"), many("warning"), ...measures, also];
};

const findingRows = ({ row, name, findings }: RowAnswer): Cell[][] =>
  findings.map(({ severity, code, file, line, message, hint }) => [
    row,
    name,
    severity,
    code,
    file,
    line,
    message,
    hint,
  ]);
