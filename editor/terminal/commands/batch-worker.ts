// How `chalkline batch-worker` is asked for.
import { type Declared, example } from "../command.ts";

interface WorkerFlags {
  readonly queue: string;
  readonly workers?: string;
}

/** Draft what `chalkline batch --queue` hands out. */
export const batchWorkerCommand: Declared = {
  declare: (program, room) =>
    program
      .command("batch-worker")
      .summary("draft what chalkline batch --queue hands out")
      .description(
        "Takes bodies from a queue on a Redis server and drafts them, until Ctrl-C; any number may run, on any machines. Recipes and " +
          "bodies come with the work: a worker reads and writes no files of its own. Whoever can reach the server can hand out work " +
          "and read all bodies: keep it in your own network and behind a password (in the address, or in CHALKLINE_QUEUE_PASSWORD).",
      )
      .requiredOption("--queue <url>", "the Redis server: redis://host:port, or rediss:// for TLS")
      .option("--workers <count>", "threads that draft at a time (default: one for each core)")
      .addHelpText("after", example("chalkline batch-worker --queue redis://127.0.0.1:6379"))
      .action(async ({ queue, workers }: WorkerFlags) => {
        const { batchWorker } = await import("../batch-worker.ts");
        const options = { version: room.version, queue, ...(workers !== undefined && { workers }) };
        room.finish(await batchWorker(options, ...room.papers()));
      }),
  builtInOnly: "batch-worker knows the built-in steps only.",
};
