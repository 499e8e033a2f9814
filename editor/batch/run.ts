// The course of a batch: rows in, chunks out to whoever drafts, answers in the order of the rows onto the disk.
import type { TableRow } from "../files/table-rows.ts";
import type { BodiesFile } from "./bodies-file.ts";
import type { Answer } from "./chunk.ts";
import { inOrder } from "./in-order.ts";
import type { JournalMark } from "./journal.ts";
import type { Results } from "./results.ts";
import { tallied } from "./tally.ts";

/** Whoever drafts chunks: threads of this machine, or workers anywhere. */
export interface Drafter {
  /** Chunks that it takes at a time, so that nobody waits for work. */
  readonly most: number;
  draft(rows: readonly TableRow[]): Promise<Answer>;
  /** Ends what is under way; its answers say that they were stopped. */
  readonly stop: () => void;
  close(): Promise<void>;
}

/** How a batch came to its end; where it was stopped or cannot go on, the mark says how far it is. */
export type Ended =
  | { readonly kind: "finished"; readonly mark: JournalMark }
  | { readonly kind: "stopped"; readonly mark: JournalMark }
  | { readonly kind: "failed"; readonly mark: JournalMark; readonly problem: string };

/** Drafts all rows behind a mark; `told` hears how many are done. */
export const runBatch = async (
  bodies: Pick<BodiesFile, "rows" | "count">,
  start: JournalMark,
  chunkRows: number,
  drafter: Drafter,
  results: Results,
  journal: { add(mark: JournalMark): void },
  told: (done: number) => void,
): Promise<Ended> => {
  let mark = start;
  const chunks = chunksOf(bodies.rows(), mark.rows, chunkRows);
  for await (const [rows, answer] of inOrder(chunks, drafter.most, (each) => drafter.draft(each))) {
    if ("stopped" in answer) return { kind: "stopped", mark };
    if ("problem" in answer) return { kind: "failed", mark, problem: answer.problem };
    const bytes = results.add(answer.rows);
    mark = { ...bytes, rows: mark.rows + rows.length, tally: tallied(mark.tally, answer.rows), isFinished: false };
    journal.add(mark);
    told(mark.rows);
  }
  return { kind: "finished", mark };
};

/** Few rows are dealt out finely, so that every core has some; many, a hundred at a time. */
export const rowsAtATime = (count: number, most: number): number => Math.max(1, Math.min(most, Math.ceil(count / 16)));

function* chunksOf(rows: Iterable<TableRow>, skipped: number, size: number): Generator<readonly TableRow[]> {
  let [chunk, left]: [TableRow[], number] = [[], skipped];
  for (const row of rows) {
    if (left > 0) {
      left -= 1;
      continue;
    }
    chunk.push(row);
    if (chunk.length < size) continue;
    yield chunk;
    chunk = [];
  }
  if (chunk.length > 0) yield chunk;
}
