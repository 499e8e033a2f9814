// The findings of a recipe as an editor lists them, each with the edit that would mend it, where one edit does.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { TextEdit } from "./text-edit.ts";
import type { WorkedText } from "./worked-text.ts";

/** One finding; offsets are into the text of its file, the line counts from 1. */
export interface Finding {
  readonly file: string;
  readonly from: number;
  readonly to: number;
  readonly line: number;
  readonly code: string;
  readonly severity: "error" | "warning";
  readonly message: string;
  readonly hint?: string;
  readonly fix?: { readonly title: string; readonly edits: readonly TextEdit[] };
  readonly related: readonly {
    readonly file: string;
    readonly from: number;
    readonly to: number;
    readonly message: string;
  }[];
}

/** All findings, those of the opened recipe first, from top to bottom. */
export const findings = ({ outcome }: WorkedText): Finding[] => outcome.findings.map(findingOf);

/** The findings of one of the files that were worked, from top to bottom. */
export const findingsIn = (worked: WorkedText, file: string): Finding[] =>
  findings(worked).filter((finding) => finding.file === file);

const findingOf = ({ code, severity, where, message, hint, related = [], fix, times = 1 }: Diagnostic): Finding => ({
  file: where.file,
  from: where.from,
  to: where.to,
  line: where.line,
  code,
  severity,
  message: times === 1 ? message : `${message} This comes up ${times} times.`,
  ...(hint !== undefined && { hint }),
  ...(fix && {
    fix: {
      title: fix.title,
      edits: [{ file: fix.where.file, from: fix.where.from, to: fix.where.to, text: fix.text }],
    },
  }),
  related: related.map((other) => ({
    file: other.where.file,
    from: other.where.from,
    to: other.where.to,
    message: other.message,
  })),
});
