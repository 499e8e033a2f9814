// Somebody presses Ctrl-C, the machine is shut down, nothing comes in, an editor goes away: the program ends as a shell expects,
// and leaves nothing half done.
import { spawn, spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { beforeAll, expect, test } from "vitest";
import { build, panel, program, workroom } from "../terminal/chalkline.ts";
import { asideIn, faultyNode, filesIn } from "./faulty.ts";
import { serveFolder } from "./served-folder.ts";

beforeAll(build);

const env = { PATH: process.env.PATH };

interface Interrupted {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly err: string;
}

/** Starts the program, sends it a signal once `isTime`, and waits for its end. */
const interrupted = async (
  folder: string,
  args: readonly string[],
  signal: NodeJS.Signals,
  isTime: (said: string, ms: number) => boolean,
): Promise<Interrupted & { readonly out: string }> => {
  const child = spawn(process.execPath, args, { cwd: folder, env });
  const began = performance.now();
  let [out, err] = ["", ""];
  child.stdout.on("data", (chunk: Buffer) => {
    out += chunk;
  });
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk;
  });
  const ended = new Promise<Interrupted>((resolve) =>
    child.on("close", (code, by) => resolve({ code, signal: by, err })),
  );
  while (child.exitCode === null && !isTime(err, performance.now() - began)) await setTimeout(50);
  child.kill(signal);
  return { ...(await ended), out };
};

// A program that a signal ended is what a shell gives 128 and the signal's number to: 130 for SIGINT, 143 for SIGTERM
// (POSIX.1-2017, Shell Command Language, 2.8.2 Exit Status for Commands: more than 128).
test.each([["SIGINT"], ["SIGTERM"]] as const)("%s ends a long stress", async (signal) => {
  const folder = workroom(["panel.chalk", panel]);
  const ended = await interrupted(
    folder,
    [program, "stress", "panel.chalk", "--tries", "1000000"],
    signal,
    (_said, ms) => ms > 1000,
  );
  expect(ended).toMatchObject({ code: null, signal, err: "" });
});

test("a shell sees 130 behind Ctrl-C", () => {
  const folder = workroom(["panel.chalk", panel]);
  const line = `"$0" "$1" stress panel.chalk --tries 1000000 & sleep 1; kill -INT $!; wait $!; echo $?`;
  // A shell without job control lets what runs behind it ignore Ctrl-C, so that job control it is.
  const { stdout } = spawnSync("bash", ["--norc", "-m", "-c", line, process.execPath, program], {
    cwd: folder,
    env,
    encoding: "utf8",
  });
  expect(stdout.trim().split("\n").at(-1)).toBe("130");
});

test("Ctrl-C gives the best lay so far, whole, with the code of a lay; SIGTERM gives none", async () => {
  const cloth = `${panel}fabric felt "felt" width 150 cm\ncut wide 2 from felt\n`;
  const [folder, another] = [workroom(["panel.chalk", cloth]), workroom(["panel.chalk", cloth])];
  // Says when the program begins to listen: on a busy machine nobody can tell how long that takes.
  const listening = `data:text/javascript,process.on("newListener", (name) => {
    if (name === "SIGINT") setImmediate(() => process.stderr.write("listens\\n"));
  });`;
  const isListening = (said: string): boolean => said.includes("listens");
  const args = [
    "--import",
    listening,
    program,
    "lay",
    "panel.chalk",
    "--effort",
    "long",
    "--out",
    "laid",
    "--json",
  ] as const;
  const best = await interrupted(folder, args, "SIGINT", isListening);
  expect([best.code, best.signal]).toEqual([0, null]);
  expect(best.err).toContain("Stopped; this is the best lay so far.");
  expect(JSON.parse(best.out)).toMatchObject({ schema: 1 });
  expect(asideIn(join(folder, "laid"))).toEqual([]);
  const none = await interrupted(another, args, "SIGTERM", isListening);
  expect(none).toMatchObject({ code: null, signal: "SIGTERM", out: "" });
});

test.each([["SIGINT"], ["SIGTERM"]] as const)(
  "%s in the middle of saving: what is begun is ended, and nothing lies aside",
  async (signal) => {
    const folder = workroom(["panel.chalk", panel]);
    const { args, env: faulty } = faultyNode(folder, { at: 2, call: "fsyncSync", what: signal });
    const child = spawn(process.execPath, [...args, "draw", "panel.chalk", "--out", "drawn"], {
      cwd: folder,
      env: faulty,
    });
    const ended = await new Promise((resolve) => child.on("close", (_code, by) => resolve(by)));
    expect(ended).toBe(signal);
    expect(readdirSync(join(folder, "drawn"))).toEqual(["panel.svg", "sheet.svg", "wide.svg"]);
  },
);

test("the page's server that is asked to end in the middle of a save saves, and ends with 0", async () => {
  const folder = workroom(["panel.chalk", panel]);
  const served = await serveFolder(folder, { at: 1, call: "fsyncSync", what: "SIGTERM" });
  const ended = new Promise((resolve) => served.server.on("exit", (code, by) => resolve([code, by])));
  const { mark } = (await served.ask("/api/recipe?file=panel.chalk"))!.body;
  await served.save("panel.chalk", `${panel}# let out\n`, mark!);
  expect(await ended).toEqual([0, null]);
  expect([...filesIn(folder)]).toEqual([["panel.chalk", `${panel}# let out\n`]]);
});

test("nothing comes in: standard input that is closed, empty or a folder is said to hold no recipe", () => {
  const folder = workroom();
  const closed = spawnSync("sh", ["-c", `"$0" "$1" check - <&-`, process.execPath, program], {
    cwd: folder,
    env,
    encoding: "utf8",
  });
  expect([closed.status, closed.stdout.includes("chalkline-missing"), closed.stderr]).toEqual([1, true, ""]);
  const from = spawnSync("sh", ["-c", `"$0" "$1" check - < .`, process.execPath, program], {
    cwd: folder,
    env,
    encoding: "utf8",
  });
  expect([from.status, from.stderr]).toEqual([2, "error: Standard input is a folder, not a file.\n"]);
});

test("an editor that goes away ends its language server: input closed, or nobody there to hear", async () => {
  for (const stdio of [
    ["ignore", "pipe", "pipe"],
    ["pipe", "pipe", "pipe"],
  ] as const) {
    const server = spawn(process.execPath, [program, "language-server", "--stdio"], { env, stdio: [...stdio] });
    let err = "";
    server.stderr!.on("data", (chunk: Buffer) => {
      err += chunk;
    });
    server.stdout!.destroy();
    server.stdin?.end('Content-Length: 58\r\n\r\n{"jsonrpc":"2.0","id":1,"method":"shutdown","params":null}');
    const code = await new Promise((resolve) => server.on("close", resolve));
    expect([code, err]).toEqual([1, ""]);
  }
});
