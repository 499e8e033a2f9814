// Opens one recipe and works it, or says on the second stream why that cannot be; for commands that take one file.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { SourceTexts } from "../../grammar/source.ts";
import type { Circumstances, Outcome } from "../../kernel/kernel.ts";
import type { SaidLine } from "../../kernel/report/said.ts";
import { verdictOf } from "../../kernel/report/verdict.ts";
import type { Source } from "../../kernel/sources.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { refusal, remarkLine, tellFindings } from "./told.ts";
import { type Given, worked } from "./worked.ts";

export interface WorkedFile {
  readonly source: Source;
  /** What it was worked with. */
  readonly circumstances: Circumstances;
  readonly outcome: Outcome;
  /** The texts that findings point into. */
  readonly texts: SourceTexts;
  /** Remarks on what was given, findings and verdict. */
  readonly told: readonly SaidLine[];
  /** The same with findings that only the command itself has. */
  toldWith(more: readonly Diagnostic[]): readonly SaidLine[];
}

/** The worked recipe; undefined when it could not be read, or not be worked with what was given. */
export const workFile = async (
  path: string,
  options: Given & { readonly root?: string },
  err: Paper,
): Promise<WorkedFile | undefined> => {
  const opened = await openNamed(path, options.root);
  if ("problem" in opened) {
    err.say(refusal(opened.problem.message, opened.problem.hint));
    return undefined;
  }
  const result = worked(opened, options);
  if ("problem" in result) {
    err.say(refusal(result.problem));
    return undefined;
  }
  const { outcome, remarks, circumstances } = result;
  const { source, texts } = opened;
  const toldWith = (more: readonly Diagnostic[]): SaidLine[] => {
    const all = { ...outcome, findings: [...outcome.findings, ...more] };
    return [...remarks.map(remarkLine), ...tellFindings(source.file, all.findings, verdictOf(all), texts, err.width)];
  };
  return { source, circumstances, outcome, texts, told: toldWith([]), toldWith };
};
