// Who packs strips for the terminal: this thread, or several others at once. A strip is packed alike by whoever does it, so that
// what comes of it does not depend on how many there are.
import { availableParallelism } from "node:os";
import { setImmediate } from "node:timers/promises";
import { type Packed, type PackTask, packed } from "../../kernel/packing/pack-task.ts";

export interface Packers {
  /** Packs a strip; where it is stopped on the way, the best there was by then. */
  pack(task: PackTask): Promise<Packed>;
  /** Somebody has asked to stop. */
  readonly isStopped: boolean;
  stop(): void;
  close(): Promise<void>;
}

// Threads take their time to start, and to warm to their work: for fewer strips than this they are not worth it.
const worthThreads = 4;

/**
 * Does some work with as many packers as are of use for about so many strips. While it lasts, Ctrl-C asks them to stop, and a
 * second one ends the program as usual.
 */
export const withPackers = async <Result>(
  strips: number,
  work: (packers: Packers) => Promise<Result>,
): Promise<Result> => {
  const threads = Math.min(availableParallelism(), strips);
  const packers = threads > 1 && strips >= worthThreads ? await apart(threads) : packersHere();
  const onStop = (): void => packers.stop();
  process.once("SIGINT", onStop);
  try {
    return await work(packers);
  } finally {
    process.removeListener("SIGINT", onStop);
    await packers.close();
  }
};

// What keeps threads is large, and is read only where it is wanted.
const apart = async (threads: number): Promise<Packers> => {
  const { packerThreads } = await import("./packer-threads.ts");
  return packerThreads(threads);
};

// So many looks are taken between two chances to stop.
const looksAtATime = 32;

/** This thread packs, one strip after another. */
export const packersHere = (): Packers => {
  let isStopped = false;
  let last: Promise<unknown> = Promise.resolve();
  const packAlone = async (task: PackTask): Promise<Packed> => {
    const search = packed(task);
    for (let look = 1; ; look += 1) {
      const { done, value: layout } = search.next();
      if (done) return { layout, isWhole: true };
      if (look % looksAtATime === 0) await setImmediate();
      if (isStopped) return { layout, isWhole: false };
    }
  };
  return {
    pack: (task) => {
      const result = last.then(() => packAlone(task));
      last = result.catch(() => {});
      return result;
    },
    get isStopped() {
      return isStopped;
    },
    stop: () => {
      isStopped = true;
    },
    close: async () => {},
  };
};
