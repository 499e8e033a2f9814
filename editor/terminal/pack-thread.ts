// What runs in each thread that packs.
import { workerData } from "node:worker_threads";
import { type Packed, type PackTask, packedUntil } from "../../kernel/packing/pack-task.ts";

/** What a thread is given when it begins. */
export interface PackThreadData {
  /** Not 0 once somebody has asked to stop. */
  readonly stop: Int32Array;
}

const { stop }: PackThreadData = workerData;

const packStrip = (task: PackTask): Packed => packedUntil(task, () => Atomics.load(stop, 0) !== 0);

export default packStrip;
