// chalkline sizes: a recipe drafted in each of its sizes.
import { growthJson, growthReport } from "../../kernel/report/growth-report.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { growth } from "../../kernel/sizes/growth.ts";
import { chalk } from "./known.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";

export interface SizesOptions {
  readonly root?: string;
  readonly form: "long" | "json";
}

export const sizes = async (path: string, options: SizesOptions, out: Paper, err: Paper): Promise<number> => {
  const opened = await openNamed(path, options.root);
  if ("problem" in opened) {
    err.say(refusal(opened.problem.message, opened.problem.hint));
    return exitCode.unreadable;
  }
  const grown = growth(chalk, opened.source, { sources: opened.sources });
  if (grown.length === 0) {
    err.say(refusal(`${path} has no size table, and uses none.`, "Write size M { bust-girth = 92 cm } for each size."));
    return exitCode.unreadable;
  }
  if (options.form === "json") out.print(jsonText(growthJson(grown)));
  else out.say(growthReport(path, grown));
  const hasErrors = grown.some(({ outcomes }) => outcomes.some((outcome) => codeFor(outcome) !== exitCode.clean));
  if (hasErrors) err.say(refusal(`Not every size comes out clean: chalkline stress ${path} says where.`));
  return hasErrors || grown.some(({ edges }) => edges.some(({ uneven }) => uneven !== undefined))
    ? exitCode.errors
    : exitCode.clean;
};
