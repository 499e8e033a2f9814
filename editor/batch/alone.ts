// One batch at a time in a folder: two would write into the same tables.
import { closeSync, openSync, readFileSync, rmSync, writeSync } from "node:fs";

/** Takes the folder, and gives it back when called; or says which process has it. One that has died has it no longer. */
export const takeAlone = (path: string): (() => void) | { readonly problem: string } => {
  for (;;) {
    try {
      const handle = openSync(path, "wx");
      writeSync(handle, `${process.pid}\n`);
      closeSync(handle);
      return () => rmSync(path, { force: true });
    } catch (error) {
      if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
    }
    const holder = holderOf(path);
    if (holder !== undefined && isRunning(holder)) {
      return {
        problem: `Another batch (process ${holder}) is working in this folder. Wait for it, or remove ${path} if it is none.`,
      };
    }
    rmSync(path, { force: true });
  }
};

const holderOf = (path: string): number | undefined => {
  try {
    const text = readFileSync(path, "utf8").trim();
    return /^\d{1,10}$/.test(text) ? Number(text) : undefined;
  } catch {
    return undefined;
  }
};

const isRunning = (id: number): boolean => {
  if (id === process.pid) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    // It is there, and somebody else's.
    return error instanceof Error && "code" in error && error.code === "EPERM";
  }
};
