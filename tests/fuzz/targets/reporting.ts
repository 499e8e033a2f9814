// What is told of a recipe: its findings with the lines they are about, the record by step, the life of an edge, and what comes of
// working it for other bodies.
import { sourceText } from "../../../grammar/source.ts";
import { edgeLife } from "../../../kernel/compare/edge-life.ts";
import { edgesByStep } from "../../../kernel/report/edges-by-step.ts";
import { explainJson, explainReport } from "../../../kernel/report/explain-report.ts";
import { findingReport } from "../../../kernel/report/finding-report.ts";
import { findingsJson } from "../../../kernel/report/findings-json.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import type { SaidLine } from "../../../kernel/report/said.ts";
import { shortFinding } from "../../../kernel/report/short-finding.ts";
import { stepReport } from "../../../kernel/report/step-report.ts";
import { stressJson, stressReport } from "../../../kernel/report/stress-report.ts";
import { verdictLines, verdictOf } from "../../../kernel/report/verdict.ts";
import { stress } from "../../../kernel/stress/stress.ts";
import { dice } from "../dice.ts";
import { toldOnScreen } from "../on-screen.ts";
import { sources } from "../seed-recipes.ts";
import { holds, type Target } from "../target.ts";
import { chalkline, workedOnce } from "../worked-once.ts";

// A screen so narrow that every sentence is broken, and a wide one.
const widths = [20, 120];

export const checking: Target = {
  name: "check",
  run({ text }) {
    const outcome = workedOnce(text);
    const texts = new Map([["fuzz.chalk", sourceText(text)]]);
    const { findings } = outcome;
    for (const width of widths)
      said(
        findings.flatMap((finding) => findingReport(finding, texts, width)),
        text,
      );
    said(
      findings.map((finding) => shortFinding(finding, texts)),
      text,
    );
    const verdict = verdictOf(outcome);
    said(verdictLines("fuzz.chalk", verdict), text);
    const json = jsonText(findingsJson([{ file: "fuzz.chalk", verdict }], findings, texts));
    const told = JSON.parse(json) as { findings: { line: number; column: number; file: string }[] };
    const lines = text.split("\n").length;
    for (const { file, line, column } of told.findings)
      holds(file !== "fuzz.chalk" || (line >= 1 && line <= lines && column >= 1), "a finding is told of no line");
  },
};

export const explaining: Target = {
  name: "explain",
  run({ text }) {
    const outcome = workedOnce(text);
    const { garment } = outcome;
    for (const width of widths) said(stepReport(outcome, width), text);
    said(edgesByStep(outcome), text);
    const roll = dice(text);
    const pieces = [...garment.pieces.values()].filter(({ edges }) => edges.size > 0);
    if (pieces.length === 0) return;
    const piece = pieces[roll(pieces.length)]!;
    const edge = [...piece.edges.keys()][roll(piece.edges.size)]!;
    const stages = edgeLife(outcome, piece.name, edge);
    const lineText = (_file: string, from: number, to: number): string => text.slice(from, to);
    said(explainReport(`${piece.name}.${edge}`, stages, garment, lineText, 80), text);
    JSON.parse(jsonText(explainJson(piece.name, edge, stages, lineText)));
  },
};

// Every trial works the recipe anew, and each param doubles their number.
const tries = 1;
const mostParams = 2;

export const stressing: Target = {
  name: "stress",
  isDear: true,
  run({ text }) {
    const params = [...workedOnce(text).values.values()].filter(({ kind }) => kind === "param");
    if (params.length > mostParams) return;
    const plan = { tries, seed: 1, bodies: [] };
    const report = stress(chalkline, { file: "fuzz.chalk", text }, { sources }, plan);
    holds(report.passed + report.outOfRange <= report.tried, "more bodies pass than were tried");
    said(stressReport("fuzz.chalk", report, 80), text);
    JSON.parse(jsonText(stressJson(report)));
  },
};

const said = (lines: readonly SaidLine[], recipe: string): void => toldOnScreen(lines, recipe, "the report");
