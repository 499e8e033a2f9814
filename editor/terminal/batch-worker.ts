// chalkline batch-worker: drafts what chalkline batch --queue hands out, until it is stopped. Any number may run, on any machine.
import { plain, strong } from "../../kernel/report/said.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { programNamed } from "../batch/program.ts";
import { unreachable } from "../batch/queue.ts";
import { queueWorker } from "../batch/queue-worker.ts";
import { passwordVariable, redisAddress } from "../batch/redis-address.ts";
import type { Paper } from "./paper.ts";
import { threadsOf } from "./threads.ts";
import { exitCode, refusal, remarkLine } from "./told.ts";

export interface BatchWorkerOptions {
  readonly version: string;
  readonly queue: string;
  readonly workers?: string;
}

/** Works until a signal stops it. */
export const batchWorker = async (options: BatchWorkerOptions, out: Paper, err: Paper): Promise<number> => {
  const refuse = (problem: string): number => {
    err.say(refusal(problem));
    return exitCode.unreadable;
  };
  const threads = threadsOf(options.workers);
  if (typeof threads !== "number") return refuse(threads.problem);
  const address = redisAddress(options.queue, process.env[passwordVariable]);
  if ("problem" in address) return refuse(address.problem);
  const problem = await unreachable(address);
  if (problem !== undefined) return refuse(problem);

  const program = programNamed(options.version);
  const worker = queueWorker(address, program, threads, (remark) => err.say([remarkLine(remark)]));
  const where = ` at ${address.shown}, ${counted(threads, "thread")}; Ctrl-C ends.`;
  err.say([[plain("Waiting for work of Chalkline "), strong(program), plain(where)]]);
  await stoppedBySignal();
  out.say([[plain(`Drafted ${counted(await worker.stop(), "chunk")} of work.`)]]);
  return exitCode.clean;
};

/** Waits for Ctrl-C, a closed terminal or a shutdown; the second one does not wait. */
const stoppedBySignal = (): Promise<void> =>
  new Promise((resolve) => {
    let isStopping = false;
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"] as const)
      process.on(signal, () => {
        if (isStopping) process.exit(130);
        isStopping = true;
        resolve();
      });
  });
