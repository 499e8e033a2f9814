// Runs the built program with a file system that fails, and tells what is left in a folder afterwards.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { vi } from "vitest";
import { seeded } from "../../kernel/stress/seeded.ts";
import { program, type Ran } from "../terminal/chalkline.ts";

const isEvery = process.env.CHALKLINE_FAULTS === "all";
if (isEvery) vi.setConfig({ testTimeout: 900_000 });

/** What goes wrong, and at which call that touches the folder, counted from 1. */
export interface Fault {
  readonly at: number;
  readonly what: "kill" | "half" | string | { readonly file: string; readonly text: string | null };
  /** Only calls of this function count. */
  readonly call?: string;
}

const preload = fileURLToPath(new URL("./failing-fs.mjs", import.meta.url));

/** How node is started so that the fault happens to the program. */
export const faultyNode = (
  folder: string,
  fault: Fault,
  report?: string,
): { readonly args: readonly string[]; readonly env: NodeJS.ProcessEnv } => ({
  args: ["--import", preload, program],
  env: { PATH: process.env.PATH, CHALKLINE_FAULT: JSON.stringify({ folder, ...fault, report }) },
});

export interface Ended extends Ran {
  readonly signal: NodeJS.Signals | null;
}

/** Runs `chalkline ARGS` in a folder, with this fault. */
export const runFaulty = (folder: string, args: readonly string[], fault: Fault, report?: string): Ended => {
  const { args: before, env } = faultyNode(folder, fault, report);
  const { status, signal, stdout, stderr } = spawnSync(process.execPath, [...before, ...args], {
    cwd: folder,
    env,
    input: "",
    encoding: "utf8",
    timeout: 30_000,
  });
  return { code: status, signal, out: stdout, err: stderr };
};

/** How many calls a run that goes well makes. */
export const callsOf = (folder: string, args: readonly string[], call?: string): number => {
  const report = join(tmpdir(), `chalkline-calls-${process.pid}`);
  writeFileSync(report, "");
  runFaulty(folder, args, { at: 0, what: "kill", ...(call !== undefined && { call }) }, report);
  const count = Number(readFileSync(report, "utf8"));
  rmSync(report);
  return count;
};

/**
 * Some of the numbers from 1 to `most`, the same on every run: all of them with CHALKLINE_FAULTS=all in the environment, which
 * takes minutes.
 */
export const someOf = (most: number, count: number, seed: number): number[] => {
  const all = Array.from({ length: most }, (_, i) => i + 1);
  if (isEvery || most <= count) return all;
  const dice = seeded(seed);
  // One out of each stretch, so that none of them is left out.
  return Array.from({ length: count }, (_, i) => {
    const [from, to] = [Math.floor((i * most) / count), Math.floor(((i + 1) * most) / count)];
    return all[from + Math.floor(dice() * (to - from))]!;
  });
};

/** Every file of a folder with what it holds, those that are set aside too. */
export const filesIn = (folder: string): Map<string, string> =>
  new Map(
    readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ name }) => [name, readFileSync(join(folder, name), "latin1")] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

/** The files among them that are set aside. */
export const asideIn = (folder: string): string[] =>
  readdirSync(folder).filter((name) => name.startsWith(".chalkline-"));

/** No words of the program's own inside: where in its text it failed, or that node itself gave up. */
export const stackTrace = /\n\s+at |node:internal|Node\.js v|Chalkline itself/;
