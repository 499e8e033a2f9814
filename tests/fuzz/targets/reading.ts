// The lexer and the parser: they take any text, and whatever they find lies in it.
import type { Diagnostic } from "../../../grammar/diagnostic.ts";
import { limits } from "../../../grammar/limits.ts";
import { lineOf, lineStarts } from "../../../grammar/source.ts";
import { holds, type Target } from "../target.ts";
import { chalkline } from "../worked-once.ts";

/** Throws where a finding points outside the text, or at another line than it says. */
export const liesWithin = (finding: Diagnostic, text: string): void => {
  const starts = lineStarts(text);
  const places = [finding.where, finding.fix?.where, ...(finding.related ?? []).map(({ where }) => where)];
  for (const where of places) {
    if (where?.file !== "fuzz.chalk") continue;
    const { from, to, line } = where;
    const isWithin = Number.isInteger(from) && Number.isInteger(to) && 0 <= from && from <= to && to <= text.length;
    holds(isWithin, "a finding lies outside the text", `${finding.code} ${from} to ${to} of ${text.length}`);
    const counted = lineOf(starts, from);
    // Lines are counted from 1 in findings.
    holds(
      text.slice(0, from).split("\n").length === line,
      "a finding is told of another line",
      `${finding.code} says ${line}, lies on ${counted}`,
    );
  }
};

export const reading: Target = {
  name: "read",
  run({ text }) {
    const { tree, diagnostics } = chalkline.parse({ file: "fuzz.chalk", text });
    holds(diagnostics.length <= limits.findings, "more findings than are told");
    for (const finding of diagnostics) liesWithin(finding, text);
    for (const comment of tree.comments)
      holds(
        text.slice(comment.from, comment.to).trimEnd() === comment.text.trimEnd(),
        "a comment is not what stands there",
      );
  },
};
