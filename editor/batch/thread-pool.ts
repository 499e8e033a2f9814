// Threads that draft chunks, one on each core: piscina hands out and takes in, and starts another thread where one has died.
import { fileURLToPath } from "node:url";
import { Piscina } from "piscina";
import { draftApart } from "./draft-apart.ts";
import type { ChunkTask } from "./draft-chunk.ts";
import type { ThreadData } from "./thread.ts";

export interface ThreadPool {
  /** The answer to a chunk, as text. */
  draft(task: ChunkTask): Promise<string>;
  /** Lets every thread put down its chunk after the body in hand; the answers say that they were stopped. */
  stop(): void;
  close(): Promise<void>;
}

// MiB that the garments of one thread may take. A garment takes a few; a thread that would take more is ended, and not the machine.
const heap = 1024;

/** So many threads, which save drawings into a folder, or send them back where it is null. */
export const threadPool = (threads: number, folder: string | null): ThreadPool => {
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const workerData: ThreadData = { folder, stop };
  const pool = new Piscina<ChunkTask, string>({
    // Beside the built program; build.mjs makes it an entry of its own.
    filename: fileURLToPath(new URL("batch-thread.js", import.meta.url)),
    minThreads: threads,
    maxThreads: threads,
    idleTimeout: Number.POSITIVE_INFINITY,
    resourceLimits: { maxOldGenerationSizeMb: heap },
    recordTiming: false,
    workerData,
  });
  // A thread that dies over a chunk is told with the chunk. One that cannot even begin is not started again, and where none is left
  // nobody would ever answer.
  let broken: string | undefined;
  pool.on("error", (error: Error) => {
    if (pool.threads.length > 0 || broken !== undefined) return;
    broken = `No thread can draft on this machine: ${error.message}.`;
    void pool.destroy();
  });
  const isStopped = (): boolean => Atomics.load(stop, 0) !== 0;
  return {
    draft: (task) =>
      draftApart(
        (each) => pool.run(each),
        task,
        () => {
          if (broken !== undefined) return { problem: broken };
          return isStopped() ? { stopped: true } : undefined;
        },
      ),
    stop: () => {
      Atomics.store(stop, 0, 1);
    },
    close: () => pool.destroy(),
  };
};
