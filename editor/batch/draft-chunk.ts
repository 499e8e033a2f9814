// Drafts the rows of one chunk, in a thread of its own: text comes in, text goes out. Whatever may go wrong with one row stays with
// that row.
import type { TableRow } from "../files/table-rows.ts";
import { NotAsWanted } from "./as-wanted.ts";
import { type Answer, answerText, chunkIn, type RowAnswer } from "./chunk.ts";
import { type Drafted, draftingFrom } from "./drafting.ts";
import { notWorked } from "./not-worked.ts";
import { parcelIn } from "./parcel.ts";
import { DrawingsNotSaved } from "./save-drawings.ts";

/** What is asked of a thread. */
export interface ChunkTask {
  /** How messages name the table that the rows are from. */
  readonly table: string;
  readonly parcel: string;
  readonly chunk: string;
}

/** What becomes of a body's drawings: they are saved, or sent along. Throws DrawingsNotSaved where they cannot be saved. */
export type Deliver = (drafted: Drafted) => RowAnswer["files"];

/** A drafter of chunks. It remembers the parcel that it drafted from last, for the next chunk is most likely from the same. */
export const chunkDrafter = (deliver: Deliver, isStopped: () => boolean): ((task: ChunkTask) => Promise<string>) => {
  let last: { readonly text: string; readonly draft: ReturnType<typeof draftingFrom> } | undefined;
  const answered = async ({ table, parcel, chunk }: ChunkTask): Promise<Answer> => {
    if (last?.text !== parcel) last = { text: parcel, draft: draftingFrom(parcelIn(parcel)) };
    const { draft } = last;
    if ("problem" in draft) return draft;
    const rows: RowAnswer[] = [];
    for (const row of chunkIn(chunk)) {
      if (isStopped()) return { stopped: true };
      const drafted = await draft(row).catch((error: unknown) => failed(row, table, error));
      rows.push({ ...drafted.answer, files: deliver(drafted) });
    }
    return { rows };
  };
  return async (task) => {
    try {
      return answerText(await answered(task));
    } catch (error) {
      if (error instanceof DrawingsNotSaved) return answerText({ problem: error.message });
      if (error instanceof NotAsWanted)
        return answerText({ problem: `What was to be drafted is not a batch of this program: ${error.message}.` });
      throw error;
    }
  };
};

// No row should make the program fail; one that does must not take a hundred thousand others with it.
const failed = (row: TableRow, table: string, error: unknown): Drafted => {
  const words = error instanceof Error ? error.message : String(error);
  const message = `${table}, row ${row.row}: Chalkline itself failed, and no body should make it do that: ${words}`;
  return { answer: notWorked(row, table, message), files: [] };
};
