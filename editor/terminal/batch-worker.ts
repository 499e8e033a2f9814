// chalkline batch-worker: drafts what chalkline batch --queue hands out, until it is stopped. Any number may run, on any machine.
import { once } from "node:events";
import { plain, strong } from "../../kernel/report/said.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { programNamed } from "../batch/program.ts";
import { unreachable } from "../batch/queue.ts";
import { queueWorker } from "../batch/queue-worker.ts";
import { passwordVariable, redisAddress } from "../batch/redis-address.ts";
import { endingSignals } from "../files/uninterrupted.ts";
import type { Paper } from "./paper.ts";
import { threadsOf } from "./threads.ts";
import { exitCode, refusal, remarkLine } from "./told.ts";
import { untilStopped } from "./until-stopped.ts";

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
  const stop = new AbortController();
  const { result: chunks } = await untilStopped(
    endingSignals,
    () => stop.abort(),
    async () => {
      await once(stop.signal, "abort");
      return worker.stop();
    },
  );
  out.say([[plain(`Drafted ${counted(chunks, "chunk")} of work.`)]]);
  return exitCode.clean;
};
