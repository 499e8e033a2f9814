// Drafts through a queue: chunks become jobs that workers anywhere take, and each answer is taken back once. Loaded only where a
// queue is asked for.
import { join } from "node:path";
import { Queue, QueueEvents } from "bullmq";
import { saveInto } from "../files/save.ts";
import type { TableRow } from "../files/table-rows.ts";
import { cannotWrite } from "../terminal/cannot-write.ts";
import { NotAsWanted } from "./as-wanted.ts";
import { type Answer, answerIn, chunkText } from "./chunk.ts";
import type { Parcel } from "./parcel.ts";
import { connectionTo, prefix, queueNamed, recipeDigest, unpackedAnswer, unreachable } from "./queue.ts";
import { passwordVariable, redisAddress } from "./redis-address.ts";
import { rowFolder } from "./row-folder.ts";
import type { Drafter } from "./run.ts";

// Chunks in the queue at a time: enough for some dozens of cores, few enough to hold in memory when one is slow.
const most = 64;

// How often an answer is looked for that nobody told of, and how long a batch waits for a first worker before it says so.
const lookMs = 1000;
const silenceMs = 10_000;

// A chunk whose answer is no answer, or whose workers died too often, is handed out again so many times.
const tries = 5;

/** Answers are of no use to anybody after a week (in seconds). */
const week = 7 * 24 * 3600;

/** Hands chunks of the batch `run` to workers; drawings that come back are saved into a folder. `tell` hears what a person should know. */
export const queueDrafter = async (
  written: string,
  run: string,
  parcel: Parcel,
  parcelText: string,
  folder: string,
  tell: (remark: string) => void,
): Promise<Drafter | { readonly problem: string }> => {
  const address = redisAddress(written, process.env[passwordVariable]);
  if ("problem" in address) return address;
  const problem = await unreachable(address);
  if (problem !== undefined) return { problem };

  const [name, connection] = [queueNamed(parcel.program), connectionTo(address)];
  const queue = new Queue(name, { connection, prefix });
  const events = new QueueEvents(name, { connection, prefix });
  let isAway = false;
  const sayAway = (): void => {
    if (!isAway) tell(`The queue at ${address.shown} does not answer; waiting for it.`);
    isAway = true;
  };
  queue.on("error", sayAway);
  events.on("error", sayAway);

  const recipe = recipeDigest(parcelText);
  /** What looks for an answer, by the job that it belongs to. */
  const awaited = new Map<string, () => void>();
  const look = (id: string): void => awaited.get(id)?.();
  events.on("completed", ({ jobId }) => look(jobId));
  events.on("failed", ({ jobId }) => look(jobId));
  let lastAnswer = performance.now();
  let isSilent = false;
  const timer = setInterval(async () => {
    for (const id of awaited.keys()) look(id);
    if (isSilent || performance.now() - lastAnswer < silenceMs) return;
    const workers = await queue.getWorkersCount().catch(() => 1);
    if (workers > 0 || isSilent) return;
    isSilent = true;
    tell(
      `No worker of this build (${parcel.program}) is at the queue. Start some, here or elsewhere: chalkline batch-worker --queue ${address.shown}`,
    );
  }, lookMs);

  let stop = (): void => {};
  const stopped = new Promise<Answer>((resolve) => {
    stop = () => resolve({ stopped: true });
  });

  /** What a job came to: its answer, the reason why it failed, or that it is gone. */
  const outcomeOf = async (id: string): Promise<{ answer: unknown } | { failed: string } | undefined> => {
    // First the state: of a job that is read before it is done, the answer is not there yet.
    const state = await queue.getJobState(id);
    if (state !== "completed" && state !== "failed" && state !== "unknown") return undefined;
    const job = await queue.getJob(id);
    if (!job) return { failed: "it was removed from the queue" };
    return state === "completed" ? { answer: job.returnvalue } : { failed: job.failedReason ?? "" };
  };

  const finished = (id: string): Promise<{ answer: unknown } | { failed: string }> =>
    new Promise((resolve, reject) => {
      let isLooking = false;
      awaited.set(id, () => {
        if (isLooking) return;
        isLooking = true;
        outcomeOf(id).then((outcome) => {
          isLooking = false;
          if (!outcome) return;
          awaited.delete(id);
          [lastAnswer, isAway] = [performance.now(), false];
          resolve(outcome);
        }, reject);
      });
      // It may have been answered for a run of this batch that was killed.
      look(id);
    });

  const forget = async (id: string): Promise<void> => {
    awaited.delete(id);
    // Of a job that a worker has in hand nothing is removed, and nobody will ask for its answer.
    await queue.remove(id).catch(() => 0);
  };

  const drafted = async (rows: readonly TableRow[]): Promise<Answer> => {
    const numbers = rows.map(({ row }) => row);
    const id = `${run}-${numbers[0]}-${numbers.length}`;
    const job = { program: parcel.program, recipe, parcel: parcelText, chunk: chunkText(rows) };
    let reason = "";
    for (let attempt = 0; attempt < tries; attempt += 1) {
      // A job of this name that is there already stays as it is: so no chunk is in the queue twice.
      await queue.add("chunk", job, { jobId: id, removeOnComplete: { age: week }, removeOnFail: { age: week } });
      const outcome = await finished(id);
      await forget(id);
      try {
        if ("answer" in outcome) {
          const answer = answerIn(unpackedAnswer(outcome.answer), numbers, parcel.headings.length);
          return "rows" in answer
            ? { rows: answer.rows.map((each, index) => saved(each, rows[index]!, folder)) }
            : answer;
        }
        reason = outcome.failed;
      } catch (error) {
        if (error instanceof NotSavable) return { problem: error.message };
        if (!(error instanceof NotAsWanted)) throw error;
        reason = error.message;
      }
    }
    return {
      problem: `Rows ${numbers[0]} to ${numbers.at(-1)} came back from the queue without an answer ${tries} times: ${reason}.`,
    };
  };

  return {
    most,
    draft: (rows) => Promise.race([drafted(rows), stopped]),
    stop: () => stop(),
    close: async () => {
      clearInterval(timer);
      stop();
      await atMost(2000, Promise.all([...awaited.keys()].map(forget)));
      await atMost(2000, Promise.all([events.close(), queue.close()]));
      await atMost(500, Promise.all([events.disconnect(), queue.disconnect()]));
    },
  };
};

/** That a drawing cannot be saved, in a sentence. */
class NotSavable extends Error {}

type RowAnswer = Extract<Answer, { readonly rows: unknown }>["rows"][number];

/** An answer whose drawings are where they belong. The name is that of the table, whatever the worker calls the body. */
const saved = (answer: RowAnswer, row: TableRow, folder: string): RowAnswer => {
  const name = "fields" in row ? row.fields[0]! : "";
  const place = join(folder, rowFolder(row.row, name));
  const files = answer.files.map((file) => ({ name: file.name, content: Buffer.from(file.base64, "base64") }));
  try {
    if (files.length > 0) saveInto(place, files);
  } catch (error) {
    throw new NotSavable(cannotWrite(error, place));
  }
  return { ...answer, name, files: [] };
};

/** Waits for something, but no longer than this; a server that is away is not to hold back the end. */
const atMost = async (ms: number, what: Promise<unknown>): Promise<void> => {
  let timer: NodeJS.Timeout | undefined;
  const enough = new Promise<void>((resolve) => {
    timer = setTimeout(resolve, ms);
  });
  await Promise.race([what.catch(() => {}), enough]);
  clearTimeout(timer);
};
