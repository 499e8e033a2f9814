// Writes files so that nobody ever finds half of one: aside first, then renamed over the old one.
import {
  chmodSync,
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";

export interface FileToSave {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Saves all of them. When one cannot be written aside, none of the old files is touched, and the system's error is thrown. */
export const saveAll = (files: readonly FileToSave[]): void => {
  const aside: { from: string; to: string }[] = [];
  try {
    for (const { path, content } of files) {
      const to = throughLinks(path);
      const from = join(dirname(to), `.chalkline-${process.pid}-${aside.length}`);
      aside.push({ from, to });
      writeAside(from, content, to);
    }
    for (const { from, to } of aside) renameSync(from, to);
  } finally {
    for (const { from } of aside) rmSync(from, { force: true });
  }
};

/**
 * Makes a folder and those above it, where they are not there. Node's own way of doing so turns in circles where the
 * system lets nobody make a folder and says that it is not there (/proc).
 */
export const makeFolder = (path: string): void => {
  try {
    mkdirSync(path);
  } catch (error) {
    if (isFolder(path)) return;
    const above = dirname(path);
    if (!isMissing(error) || above === path || isFolder(above)) throw error;
    makeFolder(above);
    mkdirSync(path);
  }
};

const isMissing = (error: unknown): boolean => error instanceof Error && "code" in error && error.code === "ENOENT";

const isFolder = (path: string): boolean => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;

const writeAside = (path: string, content: FileToSave["content"], to: string): void => {
  // "wx": a file that lies there already, or a link that was laid there, is not written through.
  const handle = openSync(path, "wx");
  try {
    writeFileSync(handle, content);
    // Without this a crash of the machine could leave the new name with nothing in it.
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
  const mode = modeOf(to);
  if (mode !== undefined) chmodSync(path, mode);
};

// A link is kept, and what it points to is what gets written.
const throughLinks = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
};

const modeOf = (path: string): number | undefined => {
  try {
    return statSync(path).mode & 0o777;
  } catch {
    return undefined;
  }
};
