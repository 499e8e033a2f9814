// Working and judging a recipe: it ends, and whatever it comes to is told in findings and figures.
import { limits } from "../../../grammar/limits.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { holds, type Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";
import { liesWithin } from "./reading.ts";

export const working: Target = {
  name: "work",
  run({ text }) {
    const { garment, values, judgements, findings, records } = workedOnce(text);
    holds(findings.length <= limits.findings, "more findings than are told");
    for (const finding of findings) {
      liesWithin(finding, text);
      plainlyTold(`${finding.message} ${finding.hint ?? ""}`, text, "a finding");
      holds(finding.message.trim() !== "", "a finding says nothing", finding.code);
    }
    for (const { words } of records) plainlyTold(words, text, "the record");
    finite(garment, "the garment");
    finite([...values.values()], "the values");
    finite(judgements, "the checks");
  },
};
