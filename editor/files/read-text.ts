// Reads one text file that a stranger may have sent: opened once, judged by its open handle, never more than the limit.
import { closeSync, constants, fstatSync, openSync, readSync } from "node:fs";
import { limits } from "../../grammar/limits.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import { unreadable } from "./unreadable.ts";
import { whyRefused } from "./why-refused.ts";

/** What is said of a handle before it is read; undefined lets it pass. */
export type Gate = (handle: number) => Unreadable | undefined;

/**
 * The text of a regular file, UTF-8 without errors, at most `limits.fileBytes` long; else why it cannot be read.
 * `called` is how messages name it.
 */
export const readText = (
  path: string,
  called: string,
  gate: Gate = () => undefined,
): { readonly text: string } | Unreadable => {
  const read = readBytes(path, called, { most: limits.fileBytes, tooLarge: tooLarge(called) }, gate);
  return "problem" in read ? read : textOf(read.bytes, called);
};

/** How many bytes a file may have, and what is said of one that has more. */
export interface SizeLimit {
  readonly most: number;
  readonly tooLarge: Unreadable;
}

/** The bytes of a regular file, at most as many as its kind may have; else why it cannot be read. */
export const readBytes = (
  path: string,
  called: string,
  { most, tooLarge }: SizeLimit,
  gate: Gate = () => undefined,
): { readonly bytes: Uint8Array } | Unreadable => {
  let handle: number;
  try {
    // Without O_NONBLOCK a pipe that nobody writes into would hold the program for ever; Windows has neither.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  } catch (error) {
    return cannotRead(error, called);
  }
  try {
    const facts = fstatSync(handle);
    if (facts.isDirectory()) return unreadable("file-is-folder", `${called} is a folder, not a file.`);
    if (!facts.isFile()) return unreadable("file-not-regular", `${called} is a device or a pipe, not a file.`);
    const refused = gate(handle);
    if (refused) return refused;
    if (facts.size > most) return tooLarge;
    const bytes = unchangedBytes(handle, most);
    if (!bytes) return changing(called);
    return bytes.length > most ? tooLarge : { bytes };
  } catch (error) {
    return cannotRead(error, called);
  } finally {
    closeSync(handle);
  }
};

/** The text that these bytes spell, under the same rules. */
export const textOf = (bytes: Uint8Array, called: string): { readonly text: string } | Unreadable => {
  if (bytes.length > limits.fileBytes) return tooLarge(called);
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return unreadable(
      "file-not-utf8",
      `${called} is not written in UTF-8, so its letters cannot be told for certain.`,
      {
        hint: "Save it as UTF-8 in the editor that it was written with.",
      },
    );
  }
  if (text.includes("\0")) return unreadable("file-not-text", `${called} holds bytes that no text has.`);
  return { text };
};

/** What lies in the file while nobody writes into it; undefined where that does not stop. */
const unchangedBytes = (handle: number, most: number): Uint8Array | undefined => {
  // The first half of a new text with the second half of an old one would be a recipe that nobody wrote.
  for (let attempt = 0; attempt < readings; attempt += 1) {
    const before = touchedBy(handle);
    const bytes = bytesFrom(handle, most);
    if (touchedBy(handle) === before) return bytes;
  }
  return undefined;
};

// An editor that saves is done by the second reading; who writes on without end is not waited for.
const readings = 3;

/** Whatever the system changes about a file when somebody writes into it. */
const touchedBy = (handle: number): string => {
  const { size, mtimeNs, ctimeNs } = fstatSync(handle, { bigint: true });
  return [size, mtimeNs, ctimeNs].join(" ");
};

// The size was right when it was asked for; a file that grows meanwhile is cut off one byte beyond the limit, and refused.
const bytesFrom = (handle: number, most: number): Uint8Array => {
  const bytes = new Uint8Array(most + 1);
  let length = 0;
  while (length < bytes.length) {
    const count = readSync(handle, bytes, length, bytes.length - length, length);
    if (count === 0) break;
    length += count;
  }
  return bytes.subarray(0, length);
};

const tooLarge = (called: string): Unreadable =>
  unreadable("file-too-large", `${called} is larger than ${limits.fileBytes / 1024 / 1024} MiB, and no recipe is.`);

const changing = (called: string): Unreadable =>
  unreadable("file-changing", `${called} is being written by another program just now.`, {
    hint: "Try again when it is done.",
  });

/** Why a file was not read, of an error of the system. */
export const cannotRead = (error: unknown, called: string): Unreadable => {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  switch (code) {
    case "ENOENT":
    case "ENOTDIR":
      return unreadable("file-missing", `There is no file ${called}.`);
    case "EACCES":
    case "EPERM":
      return unreadable("file-forbidden", `${called} may not be read: its permissions forbid it.`);
    case "EISDIR":
      return unreadable("file-is-folder", `${called} is a folder, not a file.`);
    case "ELOOP":
      return unreadable("file-missing", `${called} is a link that leads in a circle.`);
    case "ENAMETOOLONG":
      return unreadable("file-missing", `There is no file with a name as long as this.`);
    default: {
      const why = whyRefused(error);
      return unreadable("file-unreadable", `${called} cannot be read${why === undefined ? "" : `: ${why}`}.`);
    }
  }
};
