// Drafts on this machine, with a thread for each core.
import { chunkText, ownAnswer } from "./chunk.ts";
import type { Parcel } from "./parcel.ts";
import type { Drafter } from "./run.ts";
import { threadPool } from "./thread-pool.ts";

/** So many threads that draft from a parcel and save drawings into a folder. */
export const localDrafter = (parcel: Parcel, threads: number, folder: string): Drafter => {
  const pool = threadPool(threads, folder);
  const task = { table: parcel.table, parcel: JSON.stringify(parcel) };
  return {
    // Two more for each thread than it works on: while the slowest chunk holds back the others' results, those still have work.
    most: threads * 3,
    draft: async (rows) => ownAnswer(await pool.draft({ ...task, chunk: chunkText(rows) })),
    stop: pool.stop,
    close: pool.close,
  };
};
