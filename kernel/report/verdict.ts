// A worked recipe in one line: what it makes, how much was checked, and how that came out.
import type { Outcome } from "../kernel.ts";
import type { Judged } from "../working.ts";
import { bad, good, plain, quiet, type Said, type SaidLine, strong, warning } from "./said.ts";
import { wrapped } from "./wrapped.ts";

export interface Verdict {
  readonly pieces: number;
  /** Things judged, by built-in checks and the recipe's own. */
  readonly checks: number;
  readonly errors: number;
  readonly warnings: number;
  readonly accepted: readonly Judged[];
  /** Findings beyond the limit, which are not listed. */
  readonly untold: number;
  /** A line failed, and what it would have drawn could not be judged. */
  readonly incomplete: boolean;
}

export const verdictOf = ({ garment, judgements, findings, untold, incomplete }: Outcome): Verdict => ({
  pieces: garment.pieces.size,
  checks: judgements.filter(({ check }) => check !== "accept-unused").length,
  errors: findings.filter(({ severity }) => severity === "error").length,
  warnings: findings.filter(({ severity }) => severity === "warning").length,
  accepted: judgements.filter(({ verdict }) => verdict === "accepted"),
  untold,
  incomplete,
});

/** "lobby-coat-swing.chalk: 3 pieces, 42 checks, clean". */
export const verdictLines = (file: string, verdict: Verdict): SaidLine[] => {
  const { pieces, checks, errors, warnings, accepted, untold, incomplete } = verdict;
  const said: Said[] = [
    plain(counted(pieces, "piece")),
    plain(counted(checks, "check")),
    ...(errors + warnings === 0 ? [good("clean")] : []),
    ...(errors === 0 ? [] : [bad(counted(errors, "error"))]),
    ...(warnings === 0 ? [] : [warning(counted(warnings, "warning"))]),
    ...(untold === 0 ? [] : [bad(`${untold} more not listed`)]),
    ...(accepted.length === 0 ? [] : [plain(`${accepted.length} accepted`)]),
  ];
  const line: SaidLine = [
    strong(file),
    plain(": "),
    ...said.flatMap((each, index) => (index === 0 ? [each] : [plain(", "), each])),
  ];
  return incomplete
    ? [line, [quiet("  What the failed lines would have drawn is not there, and not judged.")]]
    : [line];
};

/** What the recipe accepts, each with the reason it gives. */
export const acceptedReport = (accepted: readonly Judged[], width: number): SaidLine[] =>
  accepted.flatMap(({ check, on, where, message, because }): SaidLine[] => [
    [warning("accepted"), plain(" "), strong(check), plain(` on ${on}`), quiet(`   ${where.file}:${where.line}`)],
    ...[message, `Accepted because: ${because ?? ""}`].flatMap((text) =>
      wrapped(text, width - 2).map((line): SaidLine => [plain(`  ${line}`)]),
    ),
  ]);

export const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? "" : "s"}`;
