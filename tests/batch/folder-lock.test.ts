// A folder is one batch's at a time, whoever comes second, from wherever; and nobody's once that batch is gone.
import { mkdtempSync, readdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { lockFolder } from "../../editor/batch/folder-lock.ts";
import { processMark } from "../../editor/files/running.ts";

const room = (): string => mkdtempSync(join(tmpdir(), "chalkline-lock-"));
const lockIn = (folder: string): string => join(folder, "batch.lock");
const leave = (lock: ReturnType<typeof lockFolder>): void => {
  if (typeof lock !== "function") throw new Error(lock.problem);
  lock();
};
const problemOf = (lock: ReturnType<typeof lockFolder>): string => (typeof lock === "function" ? "" : lock.problem);

const here = processMark().split("-")[0]!;
// Linux gives no process a number as high (PID_MAX_LIMIT, 2^22: proc(5), /proc/sys/kernel/pid_max); other systems stay below.
const nobody = 99_999_999;

test("the second is refused until the first gives it back, and nothing is left behind", () => {
  const folder = room();
  const first = lockFolder(folder);
  expect(readFileSync(lockIn(folder), "utf8")).toBe(`${processMark()}\n`);
  expect(problemOf(lockFolder(folder))).toBe(
    `Another batch (process ${process.pid}) is working in this folder. Wait for it, or remove ${lockIn(folder)} if it is none.`,
  );
  leave(first);
  expect(readdirSync(folder)).toEqual([]);
  leave(lockFolder(folder));
});

test("a process that is gone has it no longer", () => {
  const folder = room();
  writeFileSync(lockIn(folder), `${here}-${nobody}\n`);
  leave(lockFolder(folder));
  expect(readdirSync(folder)).toEqual([]);
});

test("a lock under our own number from before we began is that of an earlier run, as in a container", () => {
  const folder = room();
  writeFileSync(lockIn(folder), `${processMark()}\n`);
  const hourAgo = new Date(Date.now() - 60 * 60 * 1000);
  utimesSync(lockIn(folder), hourAgo, hourAgo);
  leave(lockFolder(folder));
});

test("another machine's lock is refused though its number runs nowhere here, and so is one that does not say whose it is", () => {
  const folder = room();
  for (const [mark, words] of [
    [`00000000-${nobody}\n`, "A batch on another machine is working in this folder, or was ended in the middle of it."],
    ["", "says that a batch is working in this folder, and not which."],
    ["4711\n", "says that a batch is working in this folder, and not which."],
  ] as const) {
    writeFileSync(lockIn(folder), mark);
    const problem = problemOf(lockFolder(folder));
    expect(problem).toContain(words);
    expect(problem).toContain(lockIn(folder));
    expect(readFileSync(lockIn(folder), "utf8")).toBe(mark);
    expect(readdirSync(folder)).toEqual(["batch.lock"]);
  }
});

test("giving it back leaves a lock alone that somebody else has taken meanwhile", () => {
  const folder = room();
  const first = lockFolder(folder);
  writeFileSync(lockIn(folder), `00000000-${nobody}\n`);
  leave(first);
  expect(readdirSync(folder)).toEqual(["batch.lock"]);
});
