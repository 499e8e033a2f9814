// How a garment hangs by the formula: its figures, its picture and its data.
import { hangFindings } from "../../../kernel/cloth/hang/hang-findings.ts";
import { hangSheet, hungRounds } from "../../../kernel/cloth/hang/hang-sheet.ts";
import { hangSvg } from "../../../kernel/cloth/hang/hang-svg.ts";
import { hungExactly } from "../../../kernel/cloth/hang/hung.ts";
import { hangJson } from "../../../kernel/report/hang-json.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import type { Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";

export const hanging: Target = {
  name: "hang",
  isDear: true,
  run({ text }) {
    const outcome = workedOnce(text);
    const hung = hungExactly(outcome.garment);
    const findings = hangFindings(outcome.garment);
    finite(hung, "the hang");
    finite(findings, "what is found of the hang");
    plainlyTold(hangSvg(hangSheet(outcome)), text, "the hang's picture");
    JSON.parse(jsonText(hangJson(hung, hungRounds(outcome), findings)));
  },
};
