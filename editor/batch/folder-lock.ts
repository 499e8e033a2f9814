// One batch at a time in a folder: two would write into the same tables.
import { linkSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { asideName, removeIfPossible } from "../files/left-aside.ts";
import { fateOf, processMark } from "../files/running.ts";
import { systemCode } from "../files/why-refused.ts";

/**
 * Takes the folder, and gives it back when called; or says who has it. One that has ended has it no longer. Throws the system's
 * error where nothing can be written there.
 */
export const lockFolder = (folder: string): (() => void) | { readonly problem: string } => {
  const [path, aside] = [join(folder, "batch.lock"), join(folder, asideName())];
  writeFileSync(aside, ourMark(), { flag: "wx" });
  try {
    while (!isTaken(aside, path)) {
      const before = lockAt(path);
      // Given back just now.
      if (!before) continue;
      const held = whoHolds(before, path);
      if (held !== undefined) return { problem: held };
      clear(path, before, join(folder, asideName()));
    }
  } finally {
    removeIfPossible(aside);
  }
  return () => {
    // Somebody may have removed it by hand and begun another batch.
    if (lockAt(path)?.mark === ourMark()) removeIfPossible(path);
  };
};

const ourMark = (): string => `${processMark()}\n`;

// A link comes with its content at once, so that nobody ever finds a lock that does not say whose it is.
const isTaken = (aside: string, path: string): boolean => {
  try {
    linkSync(aside, path);
    return true;
  } catch (error) {
    if (systemCode(error) === "EEXIST") return false;
    if (!withoutLinks.has(systemCode(error) ?? "")) throw error;
  }
  // A disk that knows no links: whoever finds the lock still empty takes it for held.
  try {
    writeFileSync(path, ourMark(), { flag: "wx" });
    return true;
  } catch (error) {
    if (systemCode(error) === "EEXIST") return false;
    throw error;
  }
};

const withoutLinks: ReadonlySet<string> = new Set(["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP", "EINVAL"]);

interface Lock {
  readonly mark: string;
  /** When it was written, ms since 1970. */
  readonly written: number;
}

const lockAt = (path: string): Lock | undefined => {
  try {
    return { mark: readFileSync(path, "utf8"), written: statSync(path).mtimeMs };
  } catch (error) {
    if (systemCode(error) === "ENOENT") return undefined;
    throw error;
  }
};

/** Who holds a lock, in sentences; undefined for one whose process has ended. */
const whoHolds = ({ mark, written }: Lock, path: string): string | undefined => {
  const unlocking = `Wait for it, or remove ${path} if it is none.`;
  switch (fateOf(mark.trimEnd(), written)) {
    case "ended":
      return undefined;
    case "running":
      return `Another batch (process ${mark.trimEnd().split("-")[1]}) is working in this folder. ${unlocking}`;
    case "elsewhere":
      return `A batch on another machine is working in this folder, or was ended in the middle of it. ${unlocking}`;
    default:
      return `${path} says that a batch is working in this folder, and not which. ${unlocking}`;
  }
};

/** Takes a lock away whose process has ended; one that another run has put in its place meanwhile goes back there. */
const clear = (path: string, ended: Lock, away: string): void => {
  try {
    renameSync(path, away);
  } catch (error) {
    if (systemCode(error) === "ENOENT") return;
    throw error;
  }
  if (lockAt(away)?.mark === ended.mark) removeIfPossible(away);
  else renameSync(away, path);
};
