// Checks before and after: which began to fail, and which ceased to.
import type { Outcome } from "../kernel.ts";
import type { ChangedCheck, Comparison } from "./comparison.ts";
import type { Naming } from "./naming.ts";

/** The checks, and lines that failed, that only one side has something against; errors first. */
export const changedChecks = (before: Outcome, after: Outcome, naming: Naming): Comparison["checks"] => {
  const [was, is] = [failing(before, naming), failing(after, (name) => name)];
  const only = (own: ReadonlyMap<string, ChangedCheck>, others: ReadonlyMap<string, ChangedCheck>): ChangedCheck[] =>
    [...own].flatMap(([key, check]) => (others.has(key) ? [] : [check])).sort(worstFirst);
  return { began: only(is, was), ceased: only(was, is) };
};

const worstFirst = (a: ChangedCheck, b: ChangedCheck): number =>
  a.severity === b.severity ? (checkKey(a) < checkKey(b) ? -1 : 1) : a.severity === "error" ? -1 : 1;

const checkKey = ({ check, on, message }: ChangedCheck): string => `${check} ${on === "" ? message : on}`;

/** What a check has something against, and lines that failed, which no check ever sees. */
const failing = (outcome: Outcome, naming: Naming): ReadonlyMap<string, ChangedCheck> => {
  const judged = outcome.judgements.flatMap(({ check, on, verdict, message, where }) => {
    if (verdict !== "warning" && verdict !== "error") return [];
    return [{ check, on: naming(on), message, severity: verdict, file: where.file, line: where.line }];
  });
  const failed = outcome.diagnostics.map(({ code, message, severity, where }) => ({
    check: code,
    on: "",
    message,
    severity,
    file: where.file,
    line: where.line,
  }));
  const found = new Map<string, ChangedCheck>();
  for (const each of [...judged, ...failed]) {
    let key = checkKey(each);
    while (found.has(key)) key += " again";
    found.set(key, each);
  }
  return found;
};
