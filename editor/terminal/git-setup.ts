// chalkline git-setup: lets git show garment facts under the text of recipes, in one clone.
import { blank, plain, quiet, strong } from "../../kernel/report/said.ts";
import { type GitSettings, setUpGit } from "../files/git-settings.ts";
import { cannotWrite } from "./cannot-write.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";

/** Writes the settings, and says how to take them back. `program` is how this very program is started. */
export const gitSetup = (folder: string, program: readonly string[], out: Paper, err: Paper): number => {
  let set: GitSettings | ReturnType<typeof setUpGit>;
  try {
    set = setUpGit(folder, `${program.map(quoted).join(" ")} facts`);
  } catch (error) {
    err.say(refusal(cannotWrite(error, folder)));
    return exitCode.unreadable;
  }
  if ("problem" in set) {
    err.say(refusal(set.problem.message, set.problem.hint));
    return exitCode.unreadable;
  }
  out.say([
    [strong("In this clone git now shows what changed in the garment under the text of a recipe.")],
    ...set.written.map((line) => [plain(`  ${line}`)]),
    blank,
    [quiet("To undo it:")],
    ...set.undo.map((line) => [plain(`  ${line}`)]),
  ]);
  return exitCode.clean;
};

/** A word for the shell that git runs the command in (POSIX shell, single quotes). */
const quoted = (word: string): string => (/^[\w./-]+$/.test(word) ? word : `'${word.replaceAll("'", "'\\''")}'`);
