// chalkline check: findings with the lines they are about, and a verdict for every recipe.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import type { SourceText } from "../../grammar/source.ts";
import { type CheckedFile, findingsJson } from "../../kernel/report/findings-json.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { blank } from "../../kernel/report/said.ts";
import { shortFinding } from "../../kernel/report/short-finding.ts";
import { verdictOf } from "../../kernel/report/verdict.ts";
import { namedRecipes, openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal, remarkLine, tellFindings } from "./told.ts";
import { type Given, worked } from "./worked.ts";

export interface CheckOptions extends Given {
  readonly root?: string;
  readonly form: "long" | "short" | "json";
}

/** Checks every recipe named; one that cannot be read does not keep the others from being checked. */
export const check = async (
  paths: readonly string[],
  options: CheckOptions,
  out: Paper,
  err: Paper,
): Promise<number> => {
  const files: CheckedFile[] = [];
  const findings: Diagnostic[] = [];
  const texts = new Map<string, SourceText>();
  const told = new Set<string>();
  let code: number = exitCode.clean;
  const refuse = (file: string, problem: { code: string; message: string; hint?: string }): void => {
    code = exitCode.unreadable;
    files.push({ file, unreadable: problem });
    err.say(refusal(problem.message, problem.hint));
  };

  for (const named of namedRecipes(paths)) {
    const opened = "problem" in named ? named : await openNamed(named.path, options.root);
    if ("problem" in opened) {
      refuse(named.path, opened.problem);
      continue;
    }
    const { file } = opened.source;
    const result = worked(opened, options);
    if ("problem" in result) {
      refuse(file, { code: "given-unusable", message: result.problem });
      continue;
    }
    const { outcome, remarks } = result;
    // A block that several recipes use is found fault with once.
    const fresh = outcome.findings.filter((finding) => !told.has(keyOf(finding)));
    for (const finding of fresh) told.add(keyOf(finding));
    for (const [name, text] of opened.texts) texts.set(name, text);
    const verdict = verdictOf(outcome);
    code = Math.max(code, codeFor(outcome));
    err.say(remarks.map(remarkLine));
    if (options.form === "long") {
      const isFirst = files.every((each) => "unreadable" in each);
      const apart = !isFirst && (fresh.length > 0 || verdict.accepted.length > 0) ? [blank] : [];
      out.say([...apart, ...tellFindings(file, fresh, verdict, opened.texts, out.width)]);
    }
    if (options.form === "short") out.say(fresh.map((finding) => shortFinding(finding, opened.texts)));
    files.push({ file, verdict });
    findings.push(...fresh);
  }
  if (options.form === "json") out.print(jsonText(findingsJson(files, findings, texts)));
  return code;
};

const keyOf = ({ code, message, where }: Diagnostic): string =>
  `${where.file}:${where.from}:${where.to}:${code}:${message}`;
