// Whoever reads what is printed has read enough, or the disk that it goes to is full: the program comes to its end all the same,
// with a true code and without a stack trace.
import { spawn, spawnSync } from "node:child_process";
import { closeSync, existsSync, openSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { build, panel, program, workroom } from "../terminal/chalkline.ts";
import { stackTrace } from "./faulty.ts";

beforeAll(build);

const coat = fileURLToPath(new URL("../../recipes/lobby-coat-swing.chalk", import.meta.url));
const env = { PATH: process.env.PATH };

/** An outline that does not close, so that there is an error to be found. */
const open = "chalkline 1\npiece panel {\n  line top = (0, 0) to (1 cm, 0)\n  outline top\n}\n";

interface LeftAlone {
  readonly code: number | null;
  readonly signal: NodeJS.Signals | null;
  readonly err: string;
}

/** Runs the program into a pipe whose reader goes away: at once, or after the first bytes. */
const leftAlone = (folder: string, args: readonly string[], isAtOnce: boolean): Promise<LeftAlone> => {
  const child = spawn(process.execPath, [program, ...args], { cwd: folder, env, stdio: ["ignore", "pipe", "pipe"] });
  let err = "";
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk;
  });
  if (isAtOnce) child.stdout.destroy();
  else child.stdout.once("data", () => child.stdout.destroy());
  return new Promise((resolve) => child.on("close", (code, signal) => resolve({ code, signal, err })));
};

test.each([
  [["manual"], 0],
  [["steps"], 0],
  [["--help"], 0],
  [["measure", coat], 0],
  [["measure", "--json", coat], 0],
  [["check", "open.chalk", coat], 1],
  [["check", "--json", "open.chalk"], 1],
  [["compare", coat], 0],
  [["tidy", "--check", "panel.chalk"], 1],
] as const)("nobody reads on: %j still ends with %i", async (args, code) => {
  const folder = workroom(["open.chalk", open], ["panel.chalk", panel]);
  const { err, ...ended } = await leftAlone(folder, args, args[0] === "check");
  expect(ended).toEqual({ code, signal: null });
  expect(err).not.toMatch(stackTrace);
});

test("files are written although nobody reads what is said of them", async () => {
  const folder = workroom(["panel.chalk", panel]);
  expect((await leftAlone(folder, ["draw", "panel.chalk", "--out", "drawn"], true)).code).toBe(0);
  expect(readdirSync(join(folder, "drawn"))).toEqual(["panel.svg", "sheet.svg", "wide.svg"]);
});

test.skipIf(!existsSync("/dev/full"))("output onto a full disk is said to be lost, and the code says so too", () => {
  const folder = workroom(["panel.chalk", panel]);
  const full = openSync("/dev/full", "w");
  const run = (args: readonly string[], stdio: ["ignore", "pipe" | number, "pipe" | number]) => {
    const { status, stderr } = spawnSync(process.execPath, [program, ...args], {
      cwd: folder,
      env,
      stdio,
      encoding: "utf8",
    });
    return { code: status, err: stderr };
  };
  const lost = "error: Standard output cannot be written: the disk is full.\n";
  for (const args of [["manual"], ["--help"], ["check", "panel.chalk"], ["draw", "panel.chalk", "--out", "drawn"]]) {
    const { code, err } = run(args, ["ignore", full, "pipe"]);
    expect([code, err.endsWith(lost)], args.join(" ")).toEqual([2, true]);
    expect(err).not.toMatch(stackTrace);
  }
  // The drawings are there all the same.
  expect(readdirSync(join(folder, "drawn"))).toHaveLength(3);
  expect(run(["measure", "panel.chalk"], ["ignore", "pipe", full]).code).toBe(2);
  // Who has nothing to say on a stream loses nothing on it.
  expect(run(["check", "panel.chalk"], ["ignore", "pipe", full]).code).toBe(0);
  closeSync(full);
});
