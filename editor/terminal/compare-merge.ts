// chalkline compare --merge: what in a merged recipe is as neither of its parents has it.
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { compareMarkdown } from "../../kernel/report/compare-markdown.ts";
import { type Merge, mergeJson, mergeTold } from "../../kernel/report/compare-merge.ts";
import { compareReport } from "../../kernel/report/compare-report.ts";
import { jsonText } from "../../kernel/report/json.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import { openAtRevision } from "../files/git-recipes.ts";
import { type Side, sideOf, unsound } from "./compare-sides.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";

export interface MergeOptions extends Given {
  readonly root?: string;
  readonly form: "long" | "markdown" | "json";
}

/** Holds a recipe at a merge against the same at both of its parents; the exit code is 1 where a side did not work whole. */
export const compareMerge = (file: string, revision: string, options: MergeOptions, out: Paper, err: Paper): number => {
  const merge = mergeAt(file, revision, options);
  if ("problem" in merge) {
    err.say(refusal(merge.problem.message, merge.problem.hint));
    return exitCode.unreadable;
  }
  if (options.form === "json") out.print(jsonText(mergeJson(merge)));
  else if (options.form === "markdown") out.print(compareMarkdown(mergeTold(merge)));
  else out.say(compareReport(mergeTold(merge), out.width));
  return merge.remarks.length > 0 ? exitCode.errors : exitCode.clean;
};

const mergeAt = (file: string, revision: string, options: MergeOptions): Merge | Unreadable => {
  const [one, other, merged] = [`${revision}^1`, `${revision}^2`, revision].map((each) =>
    sideAt(file, each, options),
  ) as [Side | Unreadable, Side | Unreadable, Side | Unreadable];
  if ("problem" in merged) return merged;
  if ("problem" in one) return one;
  if ("problem" in other) {
    const { problem } = other;
    if (problem.code !== "git-revision") return other;
    return { problem: { code: "git-no-merge", message: `${revision} is no merge: it has one parent at most.` } };
  }
  const { garment } = merged.outcome;
  return {
    title: garment.title || garment.file,
    one: one.called,
    other: other.called,
    merged: merged.called,
    units: garment.units,
    fromOne: compareGarments(one.outcome, merged.outcome),
    fromOther: compareGarments(other.outcome, merged.outcome),
    remarks: [one, other, merged].flatMap((side) => unsound(side) ?? []),
  };
};

const sideAt = (file: string, revision: string, options: MergeOptions): Side | Unreadable => {
  const opened = openAtRevision(file, revision, options.root);
  if ("problem" in opened) return opened;
  const side = sideOf(`${file} at ${revision}`, opened, options);
  return "problem" in side ? { problem: { code: "given", message: `${file} at ${revision}: ${side.problem}` } } : side;
};
