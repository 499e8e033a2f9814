// Writes files so that nobody ever finds half of one: aside first, then renamed over the old one.
import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  type Stats,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, join } from "node:path";
import { asideName, clearLeftAside, removeIfPossible } from "./left-aside.ts";
import { makeFolder, removeEmpty } from "./make-folder.ts";
import { ChangedMeanwhile, NotSaved, PartlySaved } from "./not-saved.ts";
import { settleNames } from "./settle-names.ts";
import { uninterrupted } from "./uninterrupted.ts";
import { systemCode } from "./why-refused.ts";

export interface FileToSave {
  readonly path: string;
  readonly content: string | Uint8Array;
  /** What the file was when it was last looked at: it is not saved over anything else. */
  readonly was: { readonly text: string } | "no file" | "anything";
}

/**
 * Saves all of them. Throws the system's error, or NotSaved with a reason; none of the old files is touched then, unless it is
 * PartlySaved, which tells those that were.
 */
export const saveAll = (files: readonly FileToSave[]): void => uninterrupted(() => saveEach(files));

/** The same into one folder, which is made where it is not there, and taken away again where nothing can be saved in it. */
export const saveInto = (
  folder: string,
  files: readonly { readonly name: string; readonly content: FileToSave["content"] }[],
): void =>
  uninterrupted(() => {
    const made = makeFolder(folder);
    try {
      saveEach(files.map(({ name, content }) => ({ path: join(folder, name), content, was: "anything" })));
    } catch (error) {
      removeEmpty(made);
      throw error;
    }
  });

/** A file on its way: written under the one name, meant for the other, which links are followed to. */
interface Aside extends FileToSave {
  readonly from: string;
  readonly to: string;
}

const saveEach = (files: readonly FileToSave[]): void => {
  const onTheirWay: Aside[] = [];
  const saved: string[] = [];
  try {
    for (const file of files) {
      const to = throughLinks(file.path);
      const old = replaceable(file.path, to);
      const folder = dirname(to);
      if (!onTheirWay.some((other) => dirname(other.to) === folder)) clearLeftAside(folder);
      const from = join(folder, asideName());
      onTheirWay.push({ ...file, from, to });
      writeAside(from, file.content, old);
    }
    for (const each of onTheirWay) refuseChanged(each);
    for (const { path, from, to } of onTheirWay) {
      renameSync(from, to);
      saved.push(path);
    }
    for (const folder of new Set(onTheirWay.map(({ to }) => dirname(to)))) settleNames(folder);
  } catch (error) {
    throw saved.length > 0 ? new PartlySaved(saved, error) : error;
  } finally {
    for (const { from } of onTheirWay.slice(saved.length)) removeIfPossible(from);
  }
};

/** What is known of the file that is to be replaced; undefined where there is none. */
const replaceable = (path: string, to: string): Stats | undefined => {
  const old = statSync(to, { throwIfNoEntry: false });
  if (!old) return undefined;
  if (old.isDirectory()) throw new NotSaved(path, "a folder stands where a file is needed");
  // Renamed over /dev/null, a file would take its place for the whole machine.
  if (!old.isFile()) throw new NotSaved(path, "a device or a pipe stands where a file is needed");
  try {
    // A new name in the folder is all that is asked of the system, and somebody has said that this file stays as it is.
    accessSync(to, constants.W_OK);
  } catch {
    throw new NotSaved(path, "its permissions forbid it");
  }
  return old;
};

const writeAside = (path: string, content: FileToSave["content"], old: Stats | undefined): void => {
  const mode = old && old.mode & 0o777;
  // "wx": a file that lies there already, or a link that was laid there, is not written through. What only its owner may read
  // stays so while it is written.
  const handle = openSync(path, "wx", mode);
  try {
    writeFileSync(handle, content);
    if (old) likeBefore(handle, old);
    if (mode !== undefined) fchmodSync(handle, mode);
    // Without this a crash of the machine could leave the new name with nothing in it.
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};

/** Owner and group stay what they were, as far as the system lets us. */
const likeBefore = (handle: number, { uid, gid }: Stats): void => {
  try {
    fchownSync(handle, uid, gid);
  } catch {
    // Only some may give a file away; who may not keeps it.
  }
};

// From here to the renaming somebody could still write, and no system offers to look and rename in one. What is left is the
// time between two calls: the long part, writing to the disk, lies behind us.
const refuseChanged = ({ path, to, was }: Aside): void => {
  if (was === "anything") return;
  const now = textAt(to);
  if (now === (was === "no file" ? null : was.text)) return;
  const because =
    now === null ? "it was taken away after it was read" : "another program has changed it since it was read";
  throw new ChangedMeanwhile(path, because);
};

/** The text of a file, null where there is none, undefined where it holds no text. */
const textAt = (path: string): string | null | undefined => {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    if (systemCode(error) === "ENOENT") return null;
    throw error;
  }
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

// A link is kept, and what it points to is what gets written.
const throughLinks = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return path;
  }
};
