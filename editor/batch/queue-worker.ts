// The other end of the queue: takes chunks, drafts them on threads of this machine, and answers. Loaded only by the command for it.
import { UnrecoverableError, Worker } from "bullmq";
import { NotAsWanted } from "./as-wanted.ts";
import { connectionTo, holdMs, jobIn, lookForDeadMs, packedAnswer, prefix, queueNamed } from "./queue.ts";
import type { RedisAddress } from "./redis-address.ts";
import { threadPool } from "./thread-pool.ts";

// A chunk is taken again however often its worker dies: workers are killed for many reasons, and few of them are the chunk's.
const mostDeaths = 1000;

export interface QueueWorker {
  /** Brings the chunks in hand to their end, so that nobody has to wait until they are missed; gives how many it drafted in all. */
  stop(): Promise<number>;
}

/** Works for every batch of this build of the program; `tell` hears what a person should know. */
export const queueWorker = (
  address: RedisAddress,
  program: string,
  threads: number,
  tell: (remark: string) => void,
): QueueWorker => {
  // Without a folder: nothing that a job says leads to a file on this machine.
  const pool = threadPool(threads, null);
  const worker = new Worker(
    queueNamed(program),
    async ({ data }) => {
      try {
        return packedAnswer(await pool.draft(jobIn(data, program)));
      } catch (error) {
        if (error instanceof NotAsWanted) throw new UnrecoverableError(`refused: ${error.message}`);
        throw error;
      }
    },
    {
      connection: connectionTo(address),
      prefix,
      concurrency: threads,
      lockDuration: holdMs,
      stalledInterval: lookForDeadMs,
      maxStalledCount: mostDeaths,
    },
  );
  let [chunks, isAway] = [0, false];
  worker.on("completed", () => {
    chunks += 1;
    isAway = false;
  });
  worker.on("failed", (_job, error) => tell(`A chunk of work was not drafted: ${error.message}`));
  worker.on("error", () => {
    if (!isAway) tell(`The queue at ${address.shown} does not answer; waiting for it.`);
    isAway = true;
  });
  return {
    stop: async () => {
      await worker.close();
      await pool.close();
      return chunks;
    },
  };
};
