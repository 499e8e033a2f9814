// Runs `chalkline batch` as a user would, on a garment of the theatre's wardrobe that is quick to draft.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { program, type Ran } from "../terminal/chalkline.ts";

/** A strip as long as half the waist and 12 cm wide, which no ushers' locker takes when it is longer than 52 cm. */
export const sash = `chalkline 1
recipe "Usher's sash"
units cm
measure waist-girth = 70 cm from 50 cm to 150 cm "Round the waist"
param depth = 12 cm from 5 cm to 30 cm "From edge to edge"
let half = waist-girth / 2
piece sash {
  point A = (0, 0)
  point B = A right half
  point C = B down depth
  point D = A down depth
  line upper = A to B
  line side = B to C
  line lower = D to C
  line center = A to D
  outline upper, side, lower, center
  mark center as fold
  grain along center
}
check half < 52 cm
`;

/** A table of so many ushers, waists from 60 cm on in steps of 1 mm, round and round up to 109.9 cm. */
export const ushers = (count: number): string =>
  [
    "name,waist-girth (cm)",
    ...Array.from({ length: count }, (_, index) => `Usher ${index + 1},${60 + (index % 500) / 10}`),
    "",
  ].join("\n");

export const batchArgs = (...more: string[]): string[] => [
  "batch",
  "sash.chalk",
  "--bodies",
  "ushers.csv",
  "--out",
  "out",
  ...more,
];

/** Runs a batch in a folder that holds sash.chalk and ushers.csv; it takes longer than other commands may. */
export const batch = (folder: string, ...more: string[]): Ran => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...batchArgs(...more)], {
    cwd: folder,
    env: batchEnv,
    encoding: "utf8",
    timeout: 55_000,
  });
  return { code: status, out: stdout, err: stderr };
};

/** Nothing of the environment but where programs are, and the password of the tests' own queue. */
export const password = "curtain call";
export const batchEnv: NodeJS.ProcessEnv = { PATH: process.env.PATH, CHALKLINE_QUEUE_PASSWORD: password };

/** The text of a table of results. */
export const table = (folder: string, name: "measures.csv" | "findings.csv"): string =>
  readFileSync(join(folder, "out", name), "utf8");

/** Its rows, each as fields; for tables without a comma or a quote in a field. */
export const rowsOf = (text: string): string[][] =>
  text
    .split("\r\n")
    .slice(0, -1)
    .map((line) => line.split(","));

/** Lines that the journal of a batch has now. */
export const journalLines = (folder: string): number => {
  const path = join(folder, "out", "batch.journal");
  return existsSync(path) ? readFileSync(path, "utf8").split("\n").length - 1 : 0;
};

/** Starts `chalkline ARGS`, sends it a signal once `isDue` says so, and gives its exit code and what it said. */
export const interrupted = async (
  folder: string,
  args: readonly string[],
  signal: NodeJS.Signals,
  isDue: () => boolean,
): Promise<{ readonly code: number | null; readonly signal: NodeJS.Signals | null; readonly said: string }> => {
  const running = spawn(process.execPath, [program, ...args], { cwd: folder, env: batchEnv });
  let said = "";
  for (const stream of [running.stdout, running.stderr])
    stream.on("data", (data) => {
      said += String(data);
    });
  const ended = new Promise<[number | null, NodeJS.Signals | null]>((resolve) => {
    running.on("close", (code, by) => resolve([code, by]));
  });
  const timer = setInterval(() => {
    if (!isDue()) return;
    clearInterval(timer);
    running.kill(signal);
  }, 2);
  const [code, by] = await ended;
  clearInterval(timer);
  return { code, signal: by, said };
};
