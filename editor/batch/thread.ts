// What runs in each thread of the pool.
import { join } from "node:path";
import { workerData } from "node:worker_threads";
import { saveInto } from "../files/save.ts";
import { cannotWrite } from "../terminal/cannot-write.ts";
import { type ChunkTask, chunkDrafter, type Deliver, Undelivered } from "./draft-chunk.ts";
import { rowFolder } from "./row-folder.ts";

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
  const place = join(folder, rowFolder(row, name));
  try {
    if (files.length > 0) saveInto(place, files);
  } catch (error) {
    throw new Undelivered(cannotWrite(error, place));
  }
  return [];
};

const draftChunk: (task: ChunkTask) => Promise<string> = chunkDrafter(deliver, () => Atomics.load(stop, 0) !== 0);

export default draftChunk;
