// The two sides of a comparison: opened and worked, and what came of holding them against one another.
import { dirname, posix } from "node:path";
import { blameOnEdits } from "../../kernel/compare/blame.ts";
import { causesOf, type EditedText } from "../../kernel/compare/causes.ts";
import { compareCloth } from "../../kernel/compare/compare-cloth.ts";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { isUnchanged } from "../../kernel/compare/comparison.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import type { Review } from "../../kernel/report/compare-told.ts";
import { counted } from "../../kernel/report/verdict.ts";
import type { Source } from "../../kernel/sources.ts";
import type { OpenedRecipe } from "../files/recipe-files.ts";
import { chalk } from "./known.ts";
import { type Given, worked } from "./worked.ts";

/** One side of a comparison, worked. */
export interface Side {
  /** How it is called: "coat.chalk at 1a2b3c4". */
  readonly called: string;
  readonly opened: OpenedRecipe;
  readonly outcome: Outcome;
}

/** Works a recipe that was opened, or says why that cannot be. */
export const sideOf = (called: string, opened: OpenedRecipe, given: Given): Side | { readonly problem: string } => {
  const result = worked(opened, given);
  return "problem" in result ? result : { called, opened, outcome: result.outcome };
};

/** What changed from one side to the other, and which edited lines caused it. */
export const reviewOf = (before: Side, after: Side, given: Given): Review => {
  const comparison = compareGarments(before.outcome, after.outcome);
  const texts = editedTexts(before, after);
  const workWith = (file: string, text: string): Outcome => {
    const replaced = withText(after.opened, file, text);
    const result = worked(replaced, given);
    // What was given may not fit the recipe any more; then it is worked without.
    return "problem" in result ? chalk.work(replaced.source, { sources: replaced.sources }) : result.outcome;
  };
  const { garment } = after.outcome;
  const causes = causesOf(comparison, before.outcome, after.outcome, texts, workWith);
  return {
    title: garment.title || garment.file,
    before: before.called,
    after: after.called,
    units: garment.units,
    comparison,
    cloth: isUnchanged(comparison) ? [] : compareCloth(before.outcome.garment, garment),
    causes,
    blame: blameOnEdits(comparison, causes),
    isSameText: texts.every((text) => text.before === text.after),
    remarks: [unsound(before), unsound(after)].flatMap((remark) => remark ?? []),
  };
};

/** The texts of both sides, paired by their way from the recipe that was opened. */
const editedTexts = (before: Side, after: Side): EditedText[] => {
  const [was, is] = [textsByWay(before.opened), textsByWay(after.opened)];
  return [...is].map(([way, { file, text }]) => ({ file, before: was.get(way)?.text ?? "", after: text }));
};

const textsByWay = ({ source, texts }: OpenedRecipe): ReadonlyMap<string, Source> =>
  new Map(
    [...texts].map(([file, { text }]) => [
      file === source.file ? "" : posix.relative(dirname(source.file), file),
      { file, text },
    ]),
  );

const withText = ({ source, sources, texts }: OpenedRecipe, file: string, text: string): OpenedRecipe => ({
  source: source.file === file ? { file, text } : source,
  sources: {
    read: (path, from) => {
      const found = sources.read(path, from);
      return "problem" in found || found.file !== file ? found : { file, text };
    },
  },
  texts,
});

/** What of a side could not be worked; what is missing there for that reason alone counts as gone. */
export const unsound = ({ called, outcome }: Side): string | undefined => {
  if (!outcome.incomplete && !outcome.garment.incomplete) return undefined;
  const [first] = outcome.findings.filter(({ severity }) => severity === "error");
  const errors = outcome.findings.filter(({ severity }) => severity === "error").length;
  const told = first ? `: ${first.where.file}:${first.where.line}: ${first.message}` : ".";
  return `Not all lines of ${called} could be worked (${counted(errors, "error")})${told} What such lines would have drawn is missing on that side; the rest is compared.`;
};
