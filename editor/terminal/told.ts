// What every command that works a recipe says of it, and the exit code that follows.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { SourceTexts } from "../../grammar/source.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { findingReport } from "../../kernel/report/finding-report.ts";
import { bad, blank, plain, type SaidLine, warning } from "../../kernel/report/said.ts";
import { acceptedReport, type Verdict, verdictLines } from "../../kernel/report/verdict.ts";

/** Clean, or warnings only; errors found; something could not be read or written. */
export const exitCode = { clean: 0, errors: 1, unreadable: 2 } as const;

/** Findings with excerpts, acceptances, and the verdict. */
export const tellFindings = (
  file: string,
  findings: readonly Diagnostic[],
  verdict: Verdict,
  texts: SourceTexts,
  width: number,
): SaidLine[] => {
  const reports = findings.map((finding) => findingReport(finding, texts, width));
  const accepted = acceptedReport(verdict.accepted, width);
  const parts = [...reports, ...(accepted.length > 0 ? [accepted] : []), verdictLines(file, verdict)];
  return parts.flatMap((part, index) => (index === 0 ? part : [blank, ...part]));
};

export const codeFor = ({ findings }: Outcome): number =>
  findings.some(({ severity }) => severity === "error") ? exitCode.errors : exitCode.clean;

/** "error: There is no file coat.chalk." */
export const refusal = (message: string, hint?: string): SaidLine[] => [
  [bad("error"), plain(`: ${message}`)],
  ...(hint === undefined ? [] : [[plain(`  ${hint}`)]]),
];

export const remarkLine = (remark: string): SaidLine => [warning("note"), plain(`: ${remark}`)];
