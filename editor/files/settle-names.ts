// Sees to it that new names in a folder outlast a crash of the machine.
import { closeSync, constants, fsyncSync, openSync } from "node:fs";

/** A renaming is safe when the folder has been written too; where a system offers no such thing, it keeps its own time. */
export const settleNames = (folder: string): void => {
  try {
    const handle = openSync(folder, constants.O_RDONLY);
    try {
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
  } catch {
    // Windows has no such thing, and the files are in their places already.
  }
};
