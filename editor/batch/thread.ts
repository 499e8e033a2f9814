// What runs in each thread of the pool.
import { workerData } from "node:worker_threads";
import { type ChunkTask, chunkDrafter, type Deliver } from "./draft-chunk.ts";
import { saveDrawings } from "./save-drawings.ts";

/** What a thread is given when it begins. */
export interface ThreadData {
  /** Where drawings are saved, one folder a row; null to send them back. */
  readonly folder: string | null;
  /** Not 0 once nothing more is to be drafted. */
  readonly stop: Int32Array;
}

const { folder, stop }: ThreadData = workerData;

const deliver: Deliver = ({ answer: { row, name }, files }) => {
  if (folder === null)
    return files.map((file) => ({ name: file.name, base64: Buffer.from(file.content).toString("base64") }));
  saveDrawings(folder, row, name, files);
  return [];
};

const draftChunk: (task: ChunkTask) => Promise<string> = chunkDrafter(deliver, () => Atomics.load(stop, 0) !== 0);

export default draftChunk;
