// chalkline tidy: rewrites recipes in the one style there is, or says which are not in it.
import { setImmediate } from "node:timers/promises";
import { tidy as tidied } from "../../grammar/print.ts";
import { findingReport } from "../../kernel/report/finding-report.ts";
import { blank, plain, quiet, strong, warning } from "../../kernel/report/said.ts";
import { saveAll } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import { chalk } from "./known.ts";
import { namedRecipes, openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";

/** Tidies every recipe named; `-` is tidied from standard input to standard output. */
export const tidy = async (
  paths: readonly string[],
  onlyChecking: boolean,
  out: Paper,
  err: Paper,
): Promise<number> => {
  let code: number = exitCode.clean;
  for (const named of namedRecipes(paths)) {
    // Between two recipes Ctrl-C is heard.
    await setImmediate();
    code = Math.max(
      code,
      "problem" in named ? refuse(named.problem, err) : await tidyOne(named.path, onlyChecking, out, err),
    );
  }
  return code;
};

const tidyOne = async (path: string, onlyChecking: boolean, out: Paper, err: Paper): Promise<number> => {
  const opened = await openNamed(path, undefined);
  if ("problem" in opened) return refuse(opened.problem, err);
  const { file, text } = opened.source;
  const { tree, forms, diagnostics } = chalk.parse(opened.source);
  if (diagnostics.length > 0) {
    err.say(diagnostics.flatMap((finding) => [...findingReport(finding, opened.texts, err.width), blank]));
    err.say([[strong(file), plain(": left as it is, because these lines cannot be read")]]);
    return exitCode.errors;
  }
  const better = tidied(tree, forms);
  if (path === "-" && !onlyChecking) {
    out.print(better);
    return exitCode.clean;
  }
  if (better === text) {
    out.say([[strong(file), quiet(": already tidy")]]);
    return exitCode.clean;
  }
  if (onlyChecking) {
    out.say([[strong(file), plain(": "), warning("not tidy")]]);
    return exitCode.errors;
  }
  try {
    saveAll([{ path, content: better, was: { text } }]);
  } catch (error) {
    err.say(refusal(cannotWrite(error, path)));
    return exitCode.unreadable;
  }
  out.say([[strong(file), plain(": tidied")]]);
  return exitCode.clean;
};

const refuse = ({ message, hint }: { message: string; hint?: string }, err: Paper): number => {
  err.say(refusal(message, hint));
  return exitCode.unreadable;
};
