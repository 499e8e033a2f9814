// Names of files that are set aside while they are written, and what becomes of those that a killed run left behind: the next
// run that writes into the folder clears them away. Nothing else in the folder is ever touched.
import { createHash, randomBytes } from "node:crypto";
import { lstatSync, readdirSync, readlinkSync, rmSync } from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";

/** A name that no other run and no other thread takes: it says where and by which process it was made. */
export const asideName = (): string => `.chalkline-${machine}-${process.pid}-${randomBytes(6).toString("hex")}`;

/** Takes the files away that runs have left in a folder which are no longer there to finish them. */
export const clearLeftAside = (folder: string): void => {
  for (const name of namesIn(folder)) {
    const [, where, process] = asidePattern.exec(name) ?? [];
    const path = join(folder, name);
    if (where !== undefined && isLeft(path, where, Number(process))) removeIfPossible(path);
  }
};

/** Takes a file away; one that cannot be is left for the next run. */
export const removeIfPossible = (path: string): void => {
  try {
    rmSync(path, { force: true });
  } catch {
    // What was to be done has been done or has failed already, and that is what the user has to hear of.
  }
};

const asidePattern = /^\.chalkline-([0-9a-f]{8})-(\d{1,10})-[0-9a-f]{12}$/;

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

// No file takes a day to write, and by then a number of a process may be another's. In ms.
const longestWriting = 24 * 60 * 60 * 1000;

// How far the clock of a disk may lag behind that of the machine, ms.
const clockLag = 2000;

/** Whether a file under such a name is one of ours that nobody is writing any more. */
const isLeft = (path: string, where: string, maker: number): boolean => {
  const facts = lstatSync(path, { throwIfNoEntry: false });
  if (!facts?.isFile() || (process.getuid && facts.uid !== process.getuid())) return false;
  const written = facts.mtimeMs;
  if (Date.now() - written > longestWriting) return true;
  if (where !== machine) return false;
  // In a container every run may have the same number; what was written before this one began is an earlier run's.
  if (maker === process.pid) return written < Date.now() - process.uptime() * 1000 - clockLag;
  return !isRunning(maker);
};

const isRunning = (number: number): boolean => {
  try {
    process.kill(number, 0);
    return true;
  } catch (error) {
    // Somebody else's process may not be spoken to, and is there.
    return !(error instanceof Error && "code" in error && error.code === "ESRCH");
  }
};

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};
