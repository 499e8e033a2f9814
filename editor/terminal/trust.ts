// chalkline trust: files of steps that the user of this machine trusts from now on, until a letter of them changes.
import { realpathSync } from "node:fs";
import { resolve } from "node:path";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { changeTrusted, readTrusted, type Trusted, trustedFile } from "../files/trusted.ts";
import { cannotWrite } from "./cannot-write.ts";
import { pluginFile, stepsOf } from "./load-plugins.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";

/** Shows what a file is, runs it once to see what it brings, and pins it as it is now. */
export const trust = async (path: string, out: Paper, err: Paper): Promise<number> => {
  const refuse = (problem: string, hint?: string): number => {
    err.say(refusal(problem, hint));
    return exitCode.unreadable;
  };
  const kept = trustedFile();
  if (kept === undefined) return refuse("This user has no home folder, so nothing can be kept.", `Say --with ${path}.`);
  const list = readTrusted(kept);
  if ("problem" in list) return refuse(list.problem.message, list.problem.hint);
  const file = pluginFile(path);
  if ("problem" in file) return refuse(file.problem);
  const taken = await stepsOf(file, vocabulary);
  if ("problem" in taken) return refuse(taken.problem, "It is not trusted.");
  const { steps, checks } = taken;
  const isOther = ({ path: other }: Trusted): boolean => other !== file.path;
  try {
    // Running the file may have taken long, so the list is read anew.
    const unread = changeTrusted(kept, (all) => [...all.filter(isOther), { path: file.path, sha256: file.sha256 }]);
    if (unread) return refuse(unread.problem.message, unread.problem.hint);
  } catch (error) {
    return refuse(cannotWrite(error, kept));
  }
  out.say([
    [strong(file.path)],
    [quiet(`  ${counted(file.text.split("\n").length, "line")}, SHA-256 ${file.sha256}`)],
    ...steps.map(({ name, summary }): SaidLine => [plain("  step  "), strong(name), plain(`  ${summary}`)]),
    ...checks.map(({ name, title }): SaidLine => [plain("  check "), strong(name), plain(`  ${title}`)]),
    blank,
    [
      plain(
        "It is trusted as it is now, and refused once a letter of it changes. It runs with all your rights, so trust",
      ),
    ],
    [plain("only what you have read, or what comes from somebody you would lend your keys.")],
  ]);
  return exitCode.clean;
};

/** What is trusted, file by file, and which of it has changed since. */
export const trustedList = (out: Paper, err: Paper): number => {
  const list = readTrusted(trustedFile());
  if ("problem" in list) {
    err.say(refusal(list.problem.message, list.problem.hint));
    return exitCode.unreadable;
  }
  if (list.length === 0) out.say([[plain("No files of steps are trusted.")]]);
  out.say(list.map((each) => [strong(each.path), plain(`  ${standing(each)}`)]));
  return exitCode.clean;
};

/** Trusts a file no longer; it need not be there any more. */
export const distrust = (path: string, out: Paper, err: Paper): number => {
  const refuse = (problem: string, hint?: string): number => {
    err.say(refusal(problem, hint));
    return exitCode.unreadable;
  };
  const kept = trustedFile();
  const list = readTrusted(kept);
  if ("problem" in list) return refuse(list.problem.message, list.problem.hint);
  const meant = new Set([resolve(path), realOr(path)]);
  const isMeant = (each: Trusted): boolean => meant.has(each.path);
  if (kept === undefined || !list.some(isMeant))
    return refuse(`${path} is not trusted.`, "chalkline trust --list shows what is.");
  try {
    const unread = changeTrusted(kept, (all) => all.filter((each) => !isMeant(each)));
    if (unread) return refuse(unread.problem.message, unread.problem.hint);
  } catch (error) {
    return refuse(cannotWrite(error, kept));
  }
  out.say([[plain(`${path} is no longer trusted.`)]]);
  return exitCode.clean;
};

const standing = ({ path, sha256 }: Trusted): string => {
  const file = pluginFile(path);
  if ("problem" in file) return "cannot be read any more";
  return file.sha256 === sha256 ? "unchanged" : "has changed since, and is refused";
};

const realOr = (path: string): string => {
  try {
    return realpathSync(path);
  } catch {
    return resolve(path);
  }
};
