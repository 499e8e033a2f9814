// Threads that pack strips, one on each core: piscina hands out and takes in.
import { fileURLToPath } from "node:url";
import { Piscina } from "piscina";
import type { Packed, PackTask } from "../../kernel/packing/pack-task.ts";
import type { PackThreadData } from "./pack-thread.ts";
import type { Packers } from "./packers.ts";

/** So many threads pack, each a strip at a time. */
export const packerThreads = (threads: number): Packers => {
  const stop = new Int32Array(new SharedArrayBuffer(4));
  const workerData: PackThreadData = { stop };
  const pool = new Piscina<PackTask, Packed>({
    // Beside the built program; build.mjs makes it an entry of its own.
    filename: fileURLToPath(new URL("pack-thread.js", import.meta.url)),
    minThreads: threads,
    maxThreads: threads,
    idleTimeout: Number.POSITIVE_INFINITY,
    recordTiming: false,
    workerData,
  });
  return {
    // Only what can be handed over: a task may come with functions that make a cloth of its layout.
    pack: ({ strip, seed, effort, enough }) => pool.run({ strip, seed, effort, enough }),
    get isStopped() {
      return Atomics.load(stop, 0) !== 0;
    },
    stop: () => {
      Atomics.store(stop, 0, 1);
    },
    close: () => pool.destroy(),
  };
};
