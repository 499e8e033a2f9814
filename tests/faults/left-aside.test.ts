// What a killed run leaves aside is cleared away by the next run that writes there, and nothing else ever is.
import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { asideName, clearLeftAside } from "../../editor/files/left-aside.ts";
import { build, chalkline, panel, workroom } from "../terminal/chalkline.ts";
import { asideIn, runFaulty } from "./faulty.ts";

beforeAll(build);

/** The name that another process, or another machine, would give. */
const nameBy = (process: number, machine = asideName().split("-")[1]!): string =>
  `.chalkline-${machine}-${process}-0123456789ab`;

const hour = 60 * 60 * 1000;
const writtenAgo = (path: string, ms: number): void => {
  writeFileSync(path, "half a drawing");
  const then = new Date(Date.now() - ms);
  utimesSync(path, then, then);
};

// Linux gives no process a number as high (PID_MAX_LIMIT, 2^22: proc(5), /proc/sys/kernel/pid_max); other systems stay below.
const nobody = 99_999_999;

test("what a killed run left is gone after the next one", () => {
  const folder = workroom(["panel.chalk", panel]);
  runFaulty(folder, ["tidy", "panel.chalk"], { at: 1, call: "renameSync", what: "kill" });
  expect(asideIn(folder)).toHaveLength(1);
  chalkline(folder, ["tidy", "panel.chalk"]);
  expect(readdirSync(folder)).toEqual(["panel.chalk"]);
});

test("what a process still writes stays, however many others write beside it", () => {
  const folder = workroom();
  const writing = spawn(process.execPath, ["-e", "setInterval(() => {}, 1000)"]);
  try {
    writtenAgo(join(folder, nameBy(writing.pid!)), hour);
    clearLeftAside(folder);
    expect(asideIn(folder)).toHaveLength(1);
  } finally {
    writing.kill();
  }
});

test("a run that is gone has left it; a number that is another's by now is told by its age", () => {
  const folder = workroom();
  writtenAgo(join(folder, nameBy(nobody)), 0);
  // This very process has the number, but it was written long before it began: so it is in a container, run after run.
  writtenAgo(join(folder, nameBy(process.pid)), 2 * hour);
  writtenAgo(join(folder, nameBy(process.ppid)), 25 * hour);
  clearLeftAside(folder);
  expect(asideIn(folder)).toEqual([]);
});

test("what this process writes itself stays", () => {
  const folder = workroom();
  writeFileSync(join(folder, asideName()), "half a drawing");
  clearLeftAside(folder);
  expect(asideIn(folder)).toHaveLength(1);
});

test("on a shared disk another machine's file stays until it is old", () => {
  const folder = workroom();
  writtenAgo(join(folder, nameBy(nobody, "00000000")), hour);
  clearLeftAside(folder);
  expect(asideIn(folder)).toHaveLength(1);
  writtenAgo(join(folder, nameBy(nobody, "00000000")), 25 * hour);
  clearLeftAside(folder);
  expect(asideIn(folder)).toEqual([]);
});

test("nothing that is not ours is touched: other names, folders, links", () => {
  const ours = nameBy(nobody);
  const kept = [
    ".chalkline",
    ".chalkline-notes",
    ".chalkline-12-3",
    `${ours}.chalk`,
    `x${ours}`,
    ours.toUpperCase(),
    ours.slice(1),
    ".chalkline-0000000-1-0123456789ab",
    ".chalkline-00000000--0123456789ab",
  ];
  const folder = workroom(...kept.map((name) => [name, "mine"] as const), ["letter.txt", "mine"]);
  mkdirSync(join(folder, nameBy(nobody - 1)));
  symlinkSync("letter.txt", join(folder, nameBy(nobody - 2)));
  const before = readdirSync(folder);
  clearLeftAside(folder);
  expect(readdirSync(folder)).toEqual(before);
  writtenAgo(join(folder, ours), 0);
  clearLeftAside(folder);
  expect(readdirSync(folder)).toEqual(before);
});
