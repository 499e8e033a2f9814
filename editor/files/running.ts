// Which process left something behind, and whether it still runs: the mark of a process, for names and contents of files.
import { createHash } from "node:crypto";
import { readlinkSync } from "node:fs";
import { hostname } from "node:os";
import { systemCode } from "./why-refused.ts";

/** The mark of this process: where it runs and its number. No other process that runs has it. */
export const processMark = (): string => `${machine}-${process.pid}`;

/** What has become of the process of a mark; one of another machine, or another container, cannot be looked for. */
export type Fate = "running" | "ended" | "elsewhere";

/** The fate of whoever left a mark at a time, ms since 1970 by the clock of the disk; undefined where it is no mark. */
export const fateOf = (mark: string, left: number): Fate | undefined => {
  const [, where, digits] = /^([0-9a-f]{8})-(\d{1,10})$/.exec(mark) ?? [];
  if (where === undefined) return undefined;
  if (where !== machine) return "elsewhere";
  const number = Number(digits);
  // In a container every run may have the same number; what was left before this one began is an earlier run's.
  if (number === process.pid) return left < Date.now() - process.uptime() * 1000 - clockLag ? "ended" : "running";
  return isRunning(number) ? "running" : "ended";
};

// Two machines may share a folder, and so may two containers, which number their processes alike: a process is only looked for
// where it was started.
const machine = ((): string => {
  let processes = "";
  try {
    processes = readlinkSync("/proc/self/ns/pid");
  } catch {
    // Only Linux has it.
  }
  return createHash("sha256").update(`${hostname()}\n${processes}`).digest("hex").slice(0, 8);
})();

// How far the clock of a disk may lag behind that of the machine, ms.
const clockLag = 2000;

const isRunning = (number: number): boolean => {
  try {
    process.kill(number, 0);
    return true;
  } catch (error) {
    // Somebody else's process may not be spoken to, and is there.
    return systemCode(error) !== "ESRCH";
  }
};
