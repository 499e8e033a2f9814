// Runs git so that it only reads: in a stranger's repository nothing that its settings name is started, fetched or written.
import { spawnSync } from "node:child_process";
import type { Unreadable } from "../../kernel/sources.ts";
import { unreadable } from "./unreadable.ts";

/** What git wrote to its output; or why there is none. `failed` is what it wrote to the other stream. */
export type GitAnswer = { readonly bytes: Buffer } | { readonly failed: string } | Unreadable;

/** Runs one reading command of git in a folder; no answer is longer than `most` bytes, and none takes longer than ten seconds. */
export const gitIn = (folder: string, args: readonly string[], most: number): GitAnswer => {
  const { error, status, stdout, stderr } = spawnSync("git", [...harmless, ...args], {
    cwd: folder,
    env: quiet(),
    stdio: ["ignore", "pipe", "pipe"],
    maxBuffer: most,
    timeout: longest,
    killSignal: "SIGKILL",
    windowsHide: true,
  });
  const code = error && "code" in error ? error.code : undefined;
  if (code === "ENOENT") return unreadable("git-missing", "git is not installed here, and revisions are read with it.");
  if (code === "ETIMEDOUT") return unreadable("git-slow", "git took longer than ten seconds, and was stopped.");
  if (code === "ENOBUFS") return unreadable("git-large", "git answered with more than any recipe holds.");
  if (error) return unreadable("git-failed", "git could not be started.");
  return status === 0 ? { bytes: stdout } : { failed: stderr.toString("utf8").trim() };
};

// Milliseconds.
const longest = 10_000;

// A repository's own settings may name programs: watchers, hooks, helpers of transports. Replacement objects and patterns in
// names would let it show something else than was asked for.
const harmless = [
  "--no-pager",
  "--no-optional-locks",
  "--no-replace-objects",
  "--literal-pathspecs",
  "-c",
  "core.fsmonitor=",
  "-c",
  "core.hooksPath=/dev/null",
  "-c",
  "core.untrackedCache=false",
  "-c",
  "protocol.allow=never",
  "-c",
  "core.sshCommand=false",
  "-c",
  "credential.helper=",
  "-c",
  "diff.external=",
];

// Nothing of the environment but where programs are: GIT_DIR and its like would point elsewhere. The user's own settings are
// left out too, and with them what they say of repositories that belong to somebody else.
const quiet = (): NodeJS.ProcessEnv => ({
  ...(process.env.PATH !== undefined && { PATH: process.env.PATH }),
  ...(process.env.SystemRoot !== undefined && { SystemRoot: process.env.SystemRoot }),
  LC_ALL: "C",
  GIT_CONFIG_NOSYSTEM: "1",
  GIT_CONFIG_GLOBAL: "/dev/null",
  GIT_ATTR_NOSYSTEM: "1",
  GIT_TERMINAL_PROMPT: "0",
  GIT_OPTIONAL_LOCKS: "0",
  GIT_NO_LAZY_FETCH: "1",
  GIT_NO_REPLACE_OBJECTS: "1",
});
