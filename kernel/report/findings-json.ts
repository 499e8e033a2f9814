// What `check --json` prints: every file's verdict and every finding with its place. Fields are only ever added;
// anything else makes a new schema number.
import type { Diagnostic, Where } from "../../grammar/diagnostic.ts";
import { positionIn, type SourceTexts } from "../../grammar/source.ts";
import type { Judged } from "../working.ts";
import type { Json } from "./json.ts";
import type { Verdict } from "./verdict.ts";

export const schema = 1;

/** A recipe that was worked, or one that could not be read. */
export type CheckedFile =
  | { readonly file: string; readonly verdict: Verdict }
  | { readonly file: string; readonly unreadable: { readonly code: string; readonly message: string } };

/** All files and findings of one run of `check`. */
export const findingsJson = (
  files: readonly CheckedFile[],
  findings: readonly Diagnostic[],
  texts: SourceTexts,
): Json => ({
  schema,
  files: files.map(fileOf),
  findings: findings.map((finding) => findingOf(finding, texts)),
  accepted: files.flatMap((each) => ("verdict" in each ? each.verdict.accepted.map(acceptedOf) : [])),
});

const fileOf = (checked: CheckedFile): Json => {
  if ("unreadable" in checked) {
    const { code, message } = checked.unreadable;
    return { file: checked.file, verdict: "unreadable", code, message };
  }
  const { pieces, checks, errors, warnings, accepted, untold, incomplete } = checked.verdict;
  const verdict = errors > 0 ? "error" : warnings > 0 ? "warning" : "clean";
  return {
    file: checked.file,
    verdict,
    pieces,
    checks,
    errors,
    warnings,
    accepted: accepted.length,
    untold,
    incomplete,
  };
};

const findingOf = (
  { code, severity, where, message, hint, related = [], fix, times = 1 }: Diagnostic,
  texts: SourceTexts,
): Json => ({
  ...placeOf(where, texts),
  code,
  severity,
  message,
  times,
  hint: hint ?? null,
  fix: fix ? { title: fix.title, ...placeOf(fix.where, texts), text: fix.text } : null,
  related: related.map((other) => ({ ...placeOf(other.where, texts), message: other.message })),
});

/** Lines and columns from 1; the end is just behind the last character. */
const placeOf = ({ file, from, to, line }: Where, texts: SourceTexts): { readonly [key: string]: Json } => {
  const source = texts.get(file);
  if (!source) return { file, line, column: 1, endLine: line, endColumn: 1 };
  const [start, end] = [positionIn(source, from), positionIn(source, to)];
  return { file, line: start.line, column: start.column, endLine: end.line, endColumn: end.column };
};

const acceptedOf = ({ check, on, where, message, because }: Judged): Json => ({
  check,
  on,
  file: where.file,
  line: where.line,
  message,
  because: because ?? "",
});
