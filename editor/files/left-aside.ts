// Names of files that are set aside while they are written, and what becomes of those that a killed run left behind: the next
// run that writes into the folder clears them away. Nothing else in the folder is ever touched.
import { randomBytes } from "node:crypto";
import { lstatSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fateOf, processMark } from "./running.ts";

/** A name that no other run and no other thread takes: it says where and by which process it was made. */
export const asideName = (): string => `.chalkline-${processMark()}-${randomBytes(6).toString("hex")}`;

/** Takes the files away that runs have left in a folder which are no longer there to finish them. */
export const clearLeftAside = (folder: string): void => {
  for (const name of namesIn(folder)) {
    const maker = asidePattern.exec(name)?.[1];
    const path = join(folder, name);
    if (maker !== undefined && isLeft(path, maker)) removeIfPossible(path);
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

const asidePattern = /^\.chalkline-([0-9a-f]{8}-\d{1,10})-[0-9a-f]{12}$/;

// No file takes a day to write, and by then a number of a process may be another's. In ms.
const longestWriting = 24 * 60 * 60 * 1000;

/** Whether a file that bears a mark is one of ours that nobody is writing any more. */
const isLeft = (path: string, maker: string): boolean => {
  const facts = lstatSync(path, { throwIfNoEntry: false });
  if (!facts?.isFile() || (process.getuid && facts.uid !== process.getuid())) return false;
  const written = facts.mtimeMs;
  return Date.now() - written > longestWriting || fateOf(maker, written) === "ended";
};

const namesIn = (folder: string): string[] => {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
};
