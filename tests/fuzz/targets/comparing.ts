// A recipe held against what it was made from, both ways, and against itself.
import { compareGarments } from "../../../kernel/compare/compare-garments.ts";
import { isUnchanged } from "../../../kernel/compare/comparison.ts";
import type { Outcome } from "../../../kernel/kernel.ts";
import { compareJson } from "../../../kernel/report/compare-json.ts";
import { compareMarkdown } from "../../../kernel/report/compare-markdown.ts";
import { compareReport } from "../../../kernel/report/compare-report.ts";
import { toldOf } from "../../../kernel/report/compare-sections.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import { lettersOf } from "../../../kernel/report/said.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { holds, type Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";

export const comparing: Target = {
  name: "compare",
  isDear: true,
  run({ text, from }) {
    const [sound, spoiled] = [workedOnce(from.text), workedOnce(text)];
    told(sound, spoiled, text);
    told(spoiled, sound, text);
    holds(isUnchanged(compareGarments(spoiled, spoiled)), "a garment differs from itself");
  },
};

const told = (before: Outcome, after: Outcome, text: string): void => {
  const comparison = compareGarments(before, after);
  finite(comparison, "the comparison");
  const review = {
    title: after.garment.title,
    before: "before",
    after: "after",
    units: after.garment.units,
    comparison,
    causes: { causes: [], untried: 0 },
    blame: new Map(),
    isSameText: false,
    remarks: [],
  };
  const said = toldOf(review);
  const words = [compareMarkdown(said), compareReport(said, 80).map(lettersOf).join("\n")].join("\n");
  plainlyTold(words, text, "the comparison");
  JSON.parse(jsonText(compareJson(review)));
};
