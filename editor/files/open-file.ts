// Where an open file lies, whatever has become of the path that it was opened by.
import { fstatSync, readlinkSync, realpathSync, statSync } from "node:fs";

/** The real path of an open file that was thought to be `expected`; undefined where it is another, or cannot be told. */
export const realPathOf = (handle: number, expected: string): string | undefined => {
  try {
    return readlinkSync(`/proc/self/fd/${handle}`);
  } catch {
    return sameFileAt(handle, expected);
  }
};

/** For systems that do not tell where an open file lies: the path is followed again, and has to lead to the same file. */
export const sameFileAt = (handle: number, expected: string): string | undefined => {
  try {
    const [open, there] = [fstatSync(handle), statSync(expected)];
    return open.ino === there.ino && open.dev === there.dev ? realpathSync(expected) : undefined;
  } catch {
    return undefined;
  }
};
