// Who packs strips for the terminal: this thread, or several others at once. A strip is packed alike by whoever does it, so that
// what comes of it does not depend on how many there are.
import { availableParallelism } from "node:os";
import { type Packed, type PackTask, packed } from "../../kernel/packing/pack-task.ts";
import { searched, untilStopped } from "./until-stopped.ts";

export interface Packers {
  /** Packs a strip; where it is stopped on the way, the best there was by then. */
  pack(task: PackTask): Promise<Packed>;
  /** Somebody has asked to stop. */
  readonly isStopped: boolean;
  readonly stop: () => void;
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
  try {
    return (await untilStopped(["SIGINT"], packers.stop, () => work(packers))).result;
  } finally {
    await packers.close();
  }
};

// What keeps threads is large, and is read only where it is wanted.
const apart = async (threads: number): Promise<Packers> => {
  const { packerThreads } = await import("./packer-threads.ts");
  return packerThreads(threads);
};

/** This thread packs, one strip after another. */
export const packersHere = (): Packers => {
  const stop = { isAsked: false };
  let last: Promise<unknown> = Promise.resolve();
  const packAlone = async (task: PackTask): Promise<Packed> => {
    const found = await searched(packed(task), stop);
    return "end" in found ? { layout: found.end, isWhole: true } : { layout: found.stoppedAt, isWhole: false };
  };
  return {
    pack: (task) => {
      const result = last.then(() => packAlone(task));
      last = result.catch(() => {});
      return result;
    },
    get isStopped() {
      return stop.isAsked;
    },
    stop: () => {
      stop.isAsked = true;
    },
    close: async () => {},
  };
};
