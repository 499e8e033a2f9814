// The settings of one clone that let git show garment facts under a recipe's text, written by the user's wish alone.
import { realpathSync, statSync } from "node:fs";
import { dirname, resolve } from "node:path";
import type { Unreadable } from "../../kernel/sources.ts";
import { gitIn } from "./git-run.ts";
import { makeFolder } from "./make-folder.ts";
import { readText } from "./read-text.ts";
import { saveAll } from "./save.ts";
import { unreadable } from "./unreadable.ts";

/** What was set, and the commands that set it back. */
export interface GitSettings {
  readonly written: readonly string[];
  readonly undo: readonly string[];
}

// What hunks are headed by: the line that begins the piece, the size or the step that they lie in.
const heads = "^[ \\t]*((piece|step|size|base size)[ \\t].*)$";

const attribute = "*.chalk diff=chalk";

/** Sets the clone around a folder so that `git diff` of a recipe asks `command` for its text; the settings stay in this clone. */
export const setUpGit = (folder: string, command: string): GitSettings | Unreadable => {
  const there = statSync(folder, { throwIfNoEntry: false })?.isDirectory() ?? false;
  if (!there) return unreadable("folder-missing", `There is no folder ${folder}.`);
  const answer = gitIn(folder, ["rev-parse", "--git-path", "info/attributes"], mostWords);
  if ("problem" in answer) return answer;
  if ("failed" in answer) return unreadable("git-none", `${folder} does not lie in a git repository.`);
  const attributes = resolve(realpathSync(folder), answer.bytes.toString("utf8").replace(/\r?\n$/, ""));
  for (const [name, value] of [
    ["diff.chalk.textconv", command],
    ["diff.chalk.xfuncname", heads],
  ] as const) {
    const set = gitIn(folder, ["config", "--local", name, value], mostWords);
    if ("problem" in set) return set;
    if ("failed" in set) return unreadable("git-failed", `git could not write ${name}: ${set.failed}`);
  }
  const unread = withLine(attributes, attribute);
  if (unread) return unread;
  return {
    written: [
      `diff.chalk.textconv = ${command}`,
      `diff.chalk.xfuncname = ${heads}`,
      `${attribute}  (in ${attributes})`,
    ],
    undo: ["git config --local --remove-section diff.chalk", `take the line "${attribute}" out of ${attributes}`],
  };
};

const mostWords = 64 * 1024;

/** Puts a line behind the last of a file, unless it is there; gives why where the file cannot be read. */
const withLine = (path: string, line: string): Unreadable | undefined => {
  const read = readText(path, path);
  if ("problem" in read && read.problem.code !== "file-missing") return read;
  const before = "problem" in read ? "" : read.text;
  if (before.split(/\r?\n/).includes(line)) return undefined;
  makeFolder(dirname(path));
  const ended = before === "" || before.endsWith("\n") ? before : `${before}\n`;
  saveAll([{ path, content: `${ended}${line}\n`, was: "problem" in read ? "no file" : { text: before } }]);
  return undefined;
};
