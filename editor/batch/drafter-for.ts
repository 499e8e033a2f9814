// Whoever drafts a batch: threads of this machine, or workers at a queue.
import { batchLimits } from "./batch-limits.ts";
import { localDrafter } from "./local-drafter.ts";
import type { Parcel } from "./parcel.ts";
import { type Drafter, rowsAtATime } from "./run.ts";

/** Where a batch is drafted. */
export interface Where {
  /** The address of a queue's server, as it was given; undefined for this machine. */
  readonly queue: string | undefined;
  /** How many threads draft on this machine. */
  readonly threads: number;
}

/** A drafter of so many rows at a time. */
export interface ChunkDrafter extends Drafter {
  readonly rowsAtATime: number;
}

/** A drafter for a table of `count` rows that saves drawings into a folder; or why there is none. `tell` hears its remarks. */
export const drafterFor = async (
  { queue, threads }: Where,
  run: string,
  parcel: Parcel,
  folder: string,
  count: number,
  tell: (remark: string) => void,
): Promise<ChunkDrafter | { readonly problem: string }> => {
  if (queue === undefined) {
    const rows = rowsAtATime(count, batchLimits.rows);
    return { ...localDrafter(parcel, Math.min(threads, Math.ceil(count / rows)), folder), rowsAtATime: rows };
  }
  // What talks to a server is large, and the only part of the program that reaches a network.
  const { queueDrafter } = await import("./queue-drafter.ts");
  const drafter = await queueDrafter(queue, run, parcel, folder, tell);
  if ("problem" in drafter) return drafter;
  // Drawings come back over the queue, those of a few bodies at a time.
  return { ...drafter, rowsAtATime: rowsAtATime(count, parcel.as.length > 0 ? 5 : batchLimits.rows) };
};
