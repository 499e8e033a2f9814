// What goes to whoever drafts, and what comes back: some rows of the table as text, and an answer for each of them as text. Either may
// have come over a queue, so both are read as data that anybody could have written.
import type { TableRow } from "../files/table-rows.ts";
import { dataIn, listOf, NotAsWanted, numberOf, oneOf, orNull, partsOf, textOf, wholeOf } from "./as-wanted.ts";
import { batchLimits } from "./batch-limits.ts";

/** How a row came out. */
export const verdicts = ["clean", "warnings", "errors", "not worked"] as const;

export type RowVerdict = (typeof verdicts)[number];

/** One thing to say of a row. */
export interface RowFinding {
  readonly severity: "error" | "warning";
  readonly code: string;
  readonly file: string;
  readonly line: number;
  readonly message: string;
  readonly hint: string;
}

/** A drawing that is sent back. */
export interface SentFile {
  readonly name: string;
  readonly base64: string;
}

/** One body, drafted. */
export interface RowAnswer {
  readonly row: number;
  readonly name: string;
  readonly verdict: RowVerdict;
  /** A number for each heading, where there is one. */
  readonly cells: readonly (number | null)[];
  /** Measures that the recipe with its own measures does not have, as words. */
  readonly also: string;
  readonly findings: readonly RowFinding[];
  /** Drawings, where whoever drafts has no folder to save them to. */
  readonly files: readonly SentFile[];
}

/** The answers in the order of the rows; or that nothing more can be drafted, and why; or that it was told to stop. */
export type Answer =
  | { readonly rows: readonly RowAnswer[] }
  | { readonly problem: string }
  | { readonly stopped: true };

export const chunkText = (rows: readonly TableRow[]): string => JSON.stringify(rows);

/** Rows out of a text; throws NotAsWanted. */
export const chunkIn = (text: string): TableRow[] =>
  listOf(dataIn(text, batchLimits.questionLetters), batchLimits.rows, (value) => {
    const parts = partsOf(value);
    const row = wholeOf(parts.get("row"));
    if (parts.has("problem")) return { row, problem: textOf(parts.get("problem")) };
    const fields = listOf(parts.get("fields"), batchLimits.letters * 4, (each) =>
      textOf(each, batchLimits.letters * 4),
    );
    if (fields.length === 0) throw new NotAsWanted("a row holds nothing");
    return { row, fields };
  });

export const answerText = (answer: Answer): string => JSON.stringify(answer);

/** An answer of our own threads. */
export const ownAnswer = (text: string): Answer => JSON.parse(text);

/** An answer that came from elsewhere: of these rows, in this order, with a cell for each heading; throws NotAsWanted. */
export const answerIn = (text: string, rows: readonly number[], headings: number): Answer => {
  const parts = partsOf(dataIn(text, batchLimits.answerLetters));
  if (parts.has("problem")) return { problem: textOf(parts.get("problem")) };
  const answers = listOf(parts.get("rows"), batchLimits.rows, (value) => rowAnswerOf(value, headings));
  if (answers.length !== rows.length || answers.some(({ row }, index) => row !== rows[index]))
    throw new NotAsWanted("other rows were asked for");
  return { rows: answers };
};

const rowAnswerOf = (value: unknown, headings: number): RowAnswer => {
  const parts = partsOf(value);
  const verdict = oneOf(parts.get("verdict"), verdicts);
  const cells = listOf(parts.get("cells"), headings, (each) => orNull(each, numberOf));
  const expected = verdict === "not worked" ? 0 : headings;
  if (cells.length !== expected) throw new NotAsWanted("a row has another number of measures");
  return {
    row: wholeOf(parts.get("row")),
    name: textOf(parts.get("name"), batchLimits.letters * 4),
    verdict,
    cells,
    also: textOf(parts.get("also"), batchLimits.questionLetters),
    findings: listOf(parts.get("findings"), batchLimits.findings, findingOf),
    files: listOf(parts.get("files"), batchLimits.files, fileOf),
  };
};

const findingOf = (value: unknown): RowFinding => {
  const parts = partsOf(value);
  const words = (name: string): string => textOf(parts.get(name), batchLimits.letters * 4);
  return {
    severity: oneOf(parts.get("severity"), ["error", "warning"]),
    code: words("code"),
    file: words("file"),
    line: wholeOf(parts.get("line")),
    message: words("message"),
    hint: words("hint"),
  };
};

const fileOf = (value: unknown): SentFile => {
  const parts = partsOf(value);
  const name = textOf(parts.get("name"), longestName);
  if (!plainFileName.test(name)) throw new NotAsWanted("a drawing has a name that no drawing of ours has");
  return { name, base64: textOf(parts.get("base64"), batchLimits.answerLetters) };
};

const longestName = 100;

// Letters, digits and hyphens, then one ending: nothing that leads to another folder, or that a system would run.
const plainFileName = /^[\p{L}\p{M}\p{N}][\p{L}\p{M}\p{N}-]*\.(?:svg|dxf|plt|pdf)$/u;
