// What both ends of a queue agree on: its name, how a job and its answer look, and how long a silent worker is waited for.
import { createHash } from "node:crypto";
import { gunzipSync, gzipSync } from "node:zlib";
import { Redis } from "ioredis";
import { NotAsWanted, partsOf, textOf } from "./as-wanted.ts";
import { batchLimits } from "./batch-limits.ts";
import type { ChunkTask } from "./draft-chunk.ts";
import { parcelIn } from "./parcel.ts";
import { passwordVariable, type RedisAddress } from "./redis-address.ts";

/** All keys of ours in the server begin with it. */
export const prefix = "chalkline";

/** Each build of the program has a queue of its own: a worker of another one never gets work that it would have to refuse. */
export const queueNamed = (program: string): string => `batch-${program.replace(/[^\w.-]+/g, "-")}`;

// A worker renews its hold on a chunk twice in this time; one that does not has died, and another takes the chunk. Threads draft, so
// that nothing keeps a worker that lives from renewing.
export const holdMs = 6000;
export const lookForDeadMs = 3000;

/** A chunk on its way to a worker. */
export interface Job {
  readonly parcel: string;
  readonly chunk: string;
  readonly program: string;
  /** SHA-256 of the parcel. */
  readonly recipe: string;
}

export const recipeDigest = (parcel: string): string => createHash("sha256").update(parcel).digest("hex");

/** What a job that came asks for, checked; throws NotAsWanted, with the reason, where this program must not draft it. */
export const jobIn = (data: unknown, program: string): ChunkTask => {
  const parts = partsOf(data);
  const job: Job = {
    program: textOf(parts.get("program")),
    recipe: textOf(parts.get("recipe")),
    parcel: textOf(parts.get("parcel"), batchLimits.questionLetters),
    chunk: textOf(parts.get("chunk"), batchLimits.questionLetters),
  };
  if (job.program !== program)
    throw new NotAsWanted(`it is work for another build of Chalkline (${job.program}), and this is ${program}`);
  if (job.recipe !== recipeDigest(job.parcel)) throw new NotAsWanted("the recipe in it is not the one that it names");
  return { table: parcelIn(job.parcel).table, parcel: job.parcel, chunk: job.chunk };
};

/** An answer packed for its way back. */
export const packedAnswer = (text: string): string => gzipSync(text).toString("base64");

/** The same unpacked, never to more than an answer may hold; throws NotAsWanted. */
export const unpackedAnswer = (packed: unknown): string => {
  const bytes = Buffer.from(textOf(packed, batchLimits.answerLetters), "base64");
  try {
    return gunzipSync(bytes, { maxOutputLength: batchLimits.answerLetters }).toString("utf8");
  } catch {
    throw new NotAsWanted("it is not packed as answers are");
  }
};

/** What a connection is opened with: it waits for a server that is away for a while, and says nothing of it by itself. */
export const connectionTo = ({ connection }: RedisAddress) => ({
  ...connection,
  // As BullMQ asks for it: a command waits for the server to come back.
  maxRetriesPerRequest: null,
  connectTimeout: 5000,
  retryStrategy: (times: number) => Math.min(times * 200, 2000),
});

/** Why a server cannot be used, in a sentence; undefined when it answers. */
export const unreachable = async ({ connection, shown }: RedisAddress): Promise<string | undefined> => {
  const redis = new Redis({ ...connection, lazyConnect: true, connectTimeout: 5000, retryStrategy: () => null });
  let heard: unknown;
  redis.on("error", (error) => {
    heard = error;
  });
  try {
    await redis.connect();
    await redis.ping();
    return undefined;
  } catch (error) {
    const words = String(heard ?? error);
    // The words of the server stay out of it: they might repeat what it was sent.
    if (/NOAUTH|WRONGPASS|invalid password/i.test(words))
      return `The Redis server at ${shown} wants another password: write it in the address, or set ${passwordVariable}.`;
    return `No Redis server answers at ${shown}.`;
  } finally {
    redis.disconnect();
  }
};
