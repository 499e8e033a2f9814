// The jobs of a batch in its queue: handed out, looked for until somebody has answered, and forgotten. Loaded only where a queue is
// asked for.
import { Queue, QueueEvents } from "bullmq";
import { connectionTo, type Job, prefix, queueNamed } from "./queue.ts";
import type { RedisAddress } from "./redis-address.ts";

/** What a job came to: an answer as it came, or the reason why there is none. */
export type JobOutcome = { readonly answer: unknown } | { readonly failed: string };

export interface Jobs {
  /** Hands a job out under a name, waits for its outcome, and takes it out of the queue. */
  outcomeOf(id: string, job: Job): Promise<JobOutcome>;
  /** Takes back what is still in the queue. */
  close(): Promise<void>;
}

// How often an answer is looked for that nobody told of, and how long a batch waits for a first worker before it says so.
const lookMs = 1000;
const silenceMs = 10_000;

/** Answers are of no use to anybody after a week (in seconds). */
const week = 7 * 24 * 3600;

/** The jobs for workers of one program at this address; `tell` hears what a person should know. */
export const queueJobs = (address: RedisAddress, program: string, tell: (remark: string) => void): Jobs => {
  const [name, connection] = [queueNamed(program), connectionTo(address)];
  const queue = new Queue(name, { connection, prefix });
  const events = new QueueEvents(name, { connection, prefix });
  let isAway = false;
  const sayAway = (): void => {
    if (!isAway) tell(`The queue at ${address.shown} does not answer; waiting for it.`);
    isAway = true;
  };
  queue.on("error", sayAway);
  events.on("error", sayAway);

  /** What looks for an outcome, by the job that it belongs to. */
  const awaited = new Map<string, () => void>();
  const look = (id: string): void => awaited.get(id)?.();
  events.on("completed", ({ jobId }) => look(jobId));
  events.on("failed", ({ jobId }) => look(jobId));
  let lastOutcome = performance.now();
  let isSilent = false;
  const timer = setInterval(async () => {
    for (const id of awaited.keys()) look(id);
    if (isSilent || performance.now() - lastOutcome < silenceMs) return;
    const workers = await queue.getWorkersCount().catch(() => 1);
    if (workers > 0 || isSilent) return;
    isSilent = true;
    tell(
      `No worker of this build (${program}) is at the queue. Start some, here or elsewhere: chalkline batch-worker --queue ${address.shown}`,
    );
  }, lookMs);

  const finished = (id: string): Promise<JobOutcome> =>
    new Promise((resolve, reject) => {
      let isLooking = false;
      awaited.set(id, () => {
        if (isLooking) return;
        isLooking = true;
        outcomeIn(queue, id).then((outcome) => {
          isLooking = false;
          if (!outcome) return;
          awaited.delete(id);
          [lastOutcome, isAway] = [performance.now(), false];
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

  return {
    outcomeOf: async (id, job) => {
      // A job of this name that is there already stays as it is: so no chunk is in the queue twice.
      await queue.add("chunk", job, { jobId: id, removeOnComplete: { age: week }, removeOnFail: { age: week } });
      const outcome = await finished(id);
      await forget(id);
      return outcome;
    },
    close: async () => {
      clearInterval(timer);
      await atMost(2000, Promise.all([...awaited.keys()].map(forget)));
      await atMost(2000, Promise.all([events.close(), queue.close()]));
      await atMost(500, Promise.all([events.disconnect(), queue.disconnect()]));
    },
  };
};

/** What a job has come to by now: undefined while it is not done; a job that is gone has failed. */
const outcomeIn = async (queue: Queue, id: string): Promise<JobOutcome | undefined> => {
  // First the state: of a job that is read before it is done, the answer is not there yet.
  const state = await queue.getJobState(id);
  if (state !== "completed" && state !== "failed" && state !== "unknown") return undefined;
  const job = await queue.getJob(id);
  if (!job) return { failed: "it was removed from the queue" };
  return state === "completed" ? { answer: job.returnvalue } : { failed: job.failedReason ?? "" };
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
