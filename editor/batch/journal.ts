// The journal of a batch: one line that says what is drafted, then a line for every chunk whose results are on the disk. After a kill
// it tells where to go on; a line that was torn by the kill does not count.
import { closeSync, fsyncSync, ftruncateSync, openSync, readFileSync, writeSync } from "node:fs";
import { cannotRead } from "../files/read-text.ts";
import { saveAll } from "../files/save.ts";
import { systemCode } from "../files/why-refused.ts";
import { dataIn, NotAsWanted, oneOf, partsOf, textOf, wholeOf } from "./as-wanted.ts";
import { noRows, type Tally, tallyData, tallyIn } from "./tally.ts";

/** What a batch drafts; another one may not go on with its results. */
export interface JournalHead {
  /** A name for this batch that no other has. */
  readonly run: string;
  /** The program, to the last letter. */
  readonly program: string;
  /** The recipe's name, and the SHA-256 of its text and of all that it uses. */
  readonly file: string;
  readonly recipe: string;
  /** SHA-256 of the table of bodies. */
  readonly bodies: string;
  /** The options that results depend on, as they would be written. */
  readonly options: string;
}

/** How far a batch is. */
export interface JournalMark {
  /** Rows of the table that are done, the first ones. */
  readonly rows: number;
  /** Bytes of the two tables of results. */
  readonly measures: number;
  readonly findings: number;
  readonly tally: Tally;
  /** The tables have their names, and nothing is left to do. */
  readonly isFinished: boolean;
}

export interface Journal {
  readonly head: JournalHead;
  readonly mark: JournalMark;
}

const schema = 1;

const nothingDone: JournalMark = { rows: 0, measures: 0, findings: 0, tally: noRows, isFinished: false };

/** The journal at a path; undefined where there is none; a sentence where it is none of ours, or damaged. */
export const readJournal = (path: string): (Journal & { readonly bytes: number }) | string | undefined => {
  let content: Buffer;
  try {
    content = readFileSync(path);
  } catch (error) {
    if (systemCode(error) === "ENOENT") return undefined;
    if (systemCode(error) === undefined) throw error;
    return cannotRead(error, path).problem.message;
  }
  // What stands behind the last end of a line was being written when the batch was killed.
  const bytes = content.lastIndexOf("\n") + 1;
  const [first = "", ...lines] = content.subarray(0, bytes).toString("utf8").split("\n").slice(0, -1);
  try {
    const head = headIn(first);
    const last = lines.at(-1);
    return { head, mark: last === undefined ? nothingDone : markIn(last), bytes };
  } catch (error) {
    if (error instanceof NotAsWanted) return `${path} is damaged, or no journal of a batch (${error.message}).`;
    throw error;
  }
};

/** Begins a journal, in the place of any other. */
export const beginJournal = (path: string, head: JournalHead): Journal & { readonly bytes: number } => {
  const line = `${JSON.stringify({ chalkline: "batch", schema, ...head })}\n`;
  saveAll([{ path, content: line, was: "anything" }]);
  return { head, mark: nothingDone, bytes: Buffer.byteLength(line) };
};

/** Opens a journal to go on behind its last whole line. */
export const openJournal = (path: string, bytes: number): { add(mark: JournalMark): void; close(): void } => {
  const handle = openSync(path, "r+");
  try {
    ftruncateSync(handle, bytes);
  } catch (error) {
    closeSync(handle);
    throw error;
  }
  let at = bytes;
  return {
    add: ({ tally, ...mark }) => {
      at += writeSync(handle, `${JSON.stringify({ ...mark, tally: tallyData(tally) })}\n`, at);
      fsyncSync(handle);
    },
    close: () => closeSync(handle),
  };
};

const longestLine = 10_000_000;

const headIn = (line: string): JournalHead => {
  const parts = partsOf(dataIn(line, longestLine));
  oneOf(parts.get("chalkline"), ["batch"]);
  if (parts.get("schema") !== schema) throw new NotAsWanted("it is of another version");
  const words = (name: string): string => textOf(parts.get(name), longestLine);
  return {
    run: words("run"),
    program: words("program"),
    file: words("file"),
    recipe: words("recipe"),
    bodies: words("bodies"),
    options: words("options"),
  };
};

const markIn = (line: string): JournalMark => {
  const parts = partsOf(dataIn(line, longestLine));
  return {
    rows: wholeOf(parts.get("rows")),
    measures: wholeOf(parts.get("measures")),
    findings: wholeOf(parts.get("findings")),
    tally: tallyIn(parts.get("tally")),
    isFinished: parts.get("isFinished") === true,
  };
};
