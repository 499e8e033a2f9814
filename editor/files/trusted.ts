// The list of plugins that the user of this machine trusts: path and SHA-256 of each, in the user's own settings folder, where no
// recipe and no folder of recipes can write or be taken for it.
import { createHash } from "node:crypto";
import { homedir } from "node:os";
import { dirname, isAbsolute, join } from "node:path";
import type { Unreadable } from "../../kernel/sources.ts";
import { makeFolder } from "./make-folder.ts";
import { ChangedMeanwhile } from "./not-saved.ts";
import { readText } from "./read-text.ts";
import { type FileToSave, saveAll } from "./save.ts";
import { unreadable } from "./unreadable.ts";

/** A file as it was when it was trusted. */
export interface Trusted {
  readonly path: string;
  /** SHA-256 of its bytes, in hexadecimal digits. */
  readonly sha256: string;
}

/**
 * Where the list lies on this system: in the XDG base directory, on Windows in the roaming application data; undefined where the user
 * has no such folder.
 */
export const trustedFile = (env: NodeJS.ProcessEnv = process.env): string | undefined => {
  const { XDG_CONFIG_HOME: xdg, APPDATA: appData } = env;
  const own = process.platform === "win32" ? appData : xdg;
  // The XDG Base Directory Specification (0.8) has relative paths ignored: they would lead into whatever folder one is in.
  const base = own !== undefined && isAbsolute(own) ? own : join(homedir(), ".config");
  // Nor is a home that is nowhere: an empty HOME would be the folder one is in, and that may be a stranger's.
  return isAbsolute(base) ? join(base, "chalkline", "steps.json") : undefined;
};

/** All that is trusted, in the order in which it was; nothing where there is no list. */
export const readTrusted = (file: string | undefined): readonly Trusted[] | Unreadable => {
  if (file === undefined) return [];
  const kept = keptIn(file);
  return "problem" in kept ? kept : kept.trusted;
};

/**
 * Writes the list as `changed` makes it of what is trusted by then: what another command trusts at the same time is kept. Gives why
 * the list cannot be read, undefined where it was written; throws what `saveAll` throws.
 */
export const changeTrusted = (
  file: string,
  changed: (trusted: readonly Trusted[]) => readonly Trusted[],
): Unreadable | undefined => {
  makeFolder(dirname(file));
  for (let attempt = 1; ; attempt += 1) {
    const kept = keptIn(file);
    if ("problem" in kept) return kept;
    const content = `${JSON.stringify({ schema: 1, trusted: changed(kept.trusted) }, null, 2)}\n`;
    try {
      saveAll([{ path: file, content, was: kept.was }]);
      return undefined;
    } catch (error) {
      if (!(error instanceof ChangedMeanwhile) || attempt === mostAttempts) throw error;
    }
  }
};

// Each attempt that fails is another command that came through; so many at once nobody starts.
const mostAttempts = 20;

/** What is trusted, and what the file was that says so. */
interface Kept {
  readonly trusted: readonly Trusted[];
  readonly was: Exclude<FileToSave["was"], "anything">;
}

const keptIn = (file: string): Kept | Unreadable => {
  const read = readText(file, file);
  if ("problem" in read) return read.problem.code === "file-missing" ? { trusted: [], was: "no file" } : read;
  const trusted = listIn(read.text);
  return trusted
    ? { trusted, was: { text: read.text } }
    : unreadable("trust-unreadable", `${file} is no list of trusted steps.`, { hint: "Move it away." });
};

/** The mark by which a file is known again. */
export const sha256Of = (text: string): string => createHash("sha256").update(text).digest("hex");

const listIn = (text: string): Trusted[] | undefined => {
  try {
    const read = JSON.parse(text) as { schema?: unknown; trusted?: unknown } | null;
    const all: unknown[] | undefined = read?.schema === 1 && Array.isArray(read.trusted) ? read.trusted : undefined;
    return all?.every(isTrusted) ? all.map(({ path, sha256 }) => ({ path, sha256 })) : undefined;
  } catch {
    return undefined;
  }
};

const isTrusted = (value: unknown): value is Trusted => {
  const { path, sha256 } = (value ?? {}) as { path?: unknown; sha256?: unknown };
  return typeof path === "string" && isAbsolute(path) && typeof sha256 === "string" && /^[0-9a-f]{64}$/.test(sha256);
};
