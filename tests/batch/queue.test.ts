// A batch over a queue: workers die at random and nothing is lost or doubled; what comes over it is data that anybody may have
// written. Against a real Redis server (Debian: redis-server), on a port of this machine alone.
import { type ChildProcess, spawn, spawnSync } from "node:child_process";
import { existsSync, readdirSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { type Job, Queue, Worker } from "bullmq";
import { afterAll, afterEach, beforeAll, expect, test } from "vitest";
import { build, chalkline, program, workroom } from "../terminal/chalkline.ts";
import { batch, batchArgs, batchEnv, interrupted, journalLines, password, sash, table, ushers } from "./batch-runs.ts";

const hasRedis = spawnSync("redis-server", ["--version"]).status === 0;

const started: ChildProcess[] = [];
let server: ChildProcess | undefined;
let port = 0;
let address = "";

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const probe = createServer().listen(0, "127.0.0.1", () => {
      const found = probe.address();
      probe.close(() => resolve(typeof found === "object" && found ? found.port : 0));
    });
  });

/** Waits until a program has said something. */
const until = (running: ChildProcess, words: RegExp): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = "";
    for (const stream of [running.stdout!, running.stderr!])
      stream.on("data", (data) => {
        said += String(data);
        if (words.test(said)) resolve(said);
      });
    running.on("close", () => reject(new Error(said)));
  });

/** A batch-worker with one thread, once it waits for work, and the build that it is of. */
const worker = async (): Promise<{ running: ChildProcess; build: string }> => {
  const running = spawn(process.execPath, [program, "batch-worker", "--queue", address, "--workers", "1"], {
    env: batchEnv,
  });
  started.push(running);
  const said = await until(running, /Ctrl-C ends/);
  return { running, build: /Chalkline (\S+ \S+) at/.exec(said)![1]! };
};

const ended = (running: ChildProcess): Promise<void> =>
  running.exitCode !== null || running.signalCode !== null
    ? Promise.resolve()
    : new Promise((resolve) => running.on("close", () => resolve()));

const connection = () => ({ host: "127.0.0.1", port, password, maxRetriesPerRequest: null });
const queueOf = (build: string): string => `batch-${build.replace(" ", "-")}`;

beforeAll(async () => {
  if (!hasRedis) return;
  build();
  port = await freePort();
  address = `redis://127.0.0.1:${port}`;
  const keepNothing = ["--save", "", "--appendonly", "no"];
  server = spawn("redis-server", [
    "--port",
    String(port),
    "--bind",
    "127.0.0.1",
    "--requirepass",
    password,
    ...keepNothing,
  ]);
  await until(server, /Ready to accept connections/);
});

afterEach(async () => {
  for (const running of started) running.kill("SIGKILL");
  await Promise.all(started.splice(0).map(ended));
});

afterAll(async () => {
  server?.kill("SIGKILL");
  if (server) await ended(server);
});

const room = (rows: number): string => workroom(["sash.chalk", sash], ["ushers.csv", ushers(rows)]);

/** The tables of the same batch, drafted on this machine. */
const local = (rows: number): { measures: string; findings: string } => {
  const folder = room(rows);
  batch(folder);
  return { measures: table(folder, "measures.csv"), findings: table(folder, "findings.csv") };
};

test.skipIf(!hasRedis)(
  "workers and the batch itself are killed: every row is there once, as on one machine",
  async () => {
    const rows = 480;
    const folder = room(rows);
    const [first] = [await worker(), await worker()];
    const args = [...batchArgs("--queue", address)];
    const killed = await interrupted(folder, args, "SIGKILL", () => {
      if (journalLines(folder) > 3) first.running.kill("SIGKILL");
      return journalLines(folder) > 6;
    });
    await ended(first.running);
    expect([killed.signal, first.running.signalCode]).toEqual(["SIGKILL", "SIGKILL"]);
    const { code, out, err } = batch(folder, "--queue", address);
    expect(err).toMatch(/going on: \d+ of 480 rows were done before\./);
    expect(code).toBe(1);
    const expected = local(rows);
    expect(table(folder, "measures.csv")).toBe(expected.measures);
    expect(table(folder, "findings.csv")).toBe(expected.findings);
    expect(`${killed.said}${out}${err}`).not.toContain(password);
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["batch.journal", "findings.csv", "measures.csv"]);
  },
);

test.skipIf(!hasRedis)("drawings come back and are saved as on one machine", async () => {
  await worker();
  const folder = room(3);
  expect(batch(folder, "--queue", address, "--as", "svg,dxf").code).toBe(0);
  const alone = room(3);
  batch(alone, "--as", "svg,dxf");
  const drawn = (where: string): string[] =>
    readdirSync(join(where, "out/drawings"), { recursive: true, encoding: "utf8" }).sort();
  expect(drawn(folder)).toEqual(drawn(alone));
  expect(drawn(folder)).toContain("000003-Usher-2/cutting-room.dxf");
  const { status, stdout } = spawnSync("diff", ["-r", join(folder, "out/drawings"), join(alone, "out/drawings")]);
  expect([status, String(stdout)]).toEqual([0, ""]);
});

test.skipIf(!hasRedis)("a worker refuses what is not for it, and goes on", async () => {
  const { build } = await worker();
  const queue = new Queue(queueOf(build), { connection: connection(), prefix: "chalkline" });
  const task = { program: build, recipe: "0".repeat(64), parcel: "{}", chunk: "[]" };
  const jobs: [unknown, string][] = [
    [{ ...task, program: "0.1.0 0000000" }, "it is work for another build of Chalkline (0.1.0 0000000), and this is"],
    [task, "the recipe in it is not the one that it names"],
    [{ ...task, parcel: { length: 3 } }, "a text is wanted"],
    [{ ...task, parcel: "x".repeat(17 * 1024 * 1024) }, "a text is longer than"],
    ["job", "an object is wanted"],
    [null, "an object is wanted"],
  ];
  for (const [data, reason] of jobs) {
    const job = await queue.add("chunk", data);
    await expect
      .poll(async () => (await queue.getJob(job.id!))!.failedReason, { timeout: 20_000 })
      .toContain(`refused: `);
    expect((await queue.getJob(job.id!))!.failedReason).toContain(reason);
  }
  await queue.obliterate({ force: true });
  await queue.close();
  expect(batch(room(3), "--queue", address).code).toBe(0);
});

/** An answer as a worker packs it. */
const packed = async (answer: unknown): Promise<string> => {
  const { gzipSync } = await import("node:zlib");
  return gzipSync(JSON.stringify(answer)).toString("base64");
};

test.skipIf(!hasRedis)("what a stranger answers is checked, and does no harm", async () => {
  const { build, running } = await worker();
  running.kill("SIGKILL");
  await ended(running);
  const cells = [70, 12, 35, 35, 12, 35, 12, 35, 12];
  const row = { row: 2, name: "Ida", verdict: "clean", cells, also: "", findings: [], files: [] };
  const answers = [
    await packed({ rows: [{ ...row, files: [{ name: "../../evil.svg", base64: "" }] }] }),
    await packed({ rows: [{ ...row, row: 3 }] }),
    await packed({ rows: [{ ...row, cells: ["=1+1"] }] }),
    await packed({ rows: [row, row] }),
    "no answer",
  ];
  let asked = 0;
  const stranger = new Worker(queueOf(build), async (_job: Job) => answers[asked++ % answers.length], {
    connection: connection(),
    prefix: "chalkline",
  });
  const folder = room(1);
  const refused = await interrupted(folder, batchArgs("--queue", address, "--as", "svg"), "SIGKILL", () => false);
  await stranger.close();
  expect(asked).toBe(5);
  expect(refused.code).toBe(2);
  expect(refused.said).toContain(
    "came back from the queue without an answer 5 times: it is not packed as answers are.",
  );
  expect(existsSync(join(folder, "evil.svg")) || existsSync(join(folder, "out/evil.svg"))).toBe(false);
  expect(readdirSync(join(folder, "out"))).not.toContain("measures.csv");
});

test.skipIf(!hasRedis)("a server that is not there, or wants another password, is told in a sentence", async () => {
  const refused = (queue: string, secret?: string): string =>
    chalkline(room(1), batchArgs("--queue", queue), {
      env: secret === undefined ? {} : { CHALKLINE_QUEUE_PASSWORD: secret },
    }).err;
  const nobody = await freePort();
  expect(refused(`redis://:hush@127.0.0.1:${nobody}`)).toBe(
    `error: No Redis server answers at redis://127.0.0.1:${nobody}.\n`,
  );
  for (const said of [refused(address), refused(address, "hush"), refused(`redis://:hush@127.0.0.1:${port}`)]) {
    expect(said).toContain(`error: The Redis server at ${address} wants another password`);
    expect(said).not.toContain("hush");
  }
  for (const none of ["hush", "http://127.0.0.1", "redis://:hush@/x", "redis://h/1?password=hush"])
    expect(refused(none)).toMatch(
      /^error: --queue takes the address of a Redis server, such as redis:\/\/127\.0\.0\.1:6379/,
    );
  const both = batch(room(1), "--queue", address, "--workers", "2");
  expect([both.code, both.err]).toEqual([2, expect.stringContaining("--workers is for this machine")]);
});
