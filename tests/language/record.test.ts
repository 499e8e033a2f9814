// The record of a garment's making: what each line found of a piece, and what it left.
import { expect, test } from "vitest";
import { phrase } from "../../grammar/phrase.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { changedIn, type StepRecord, tellStep } from "../../kernel/record.ts";
import { edgesByStep } from "../../kernel/report/edges-by-step.ts";
import { measuredJson } from "../../kernel/report/measured-json.ts";
import { lettersOf } from "../../kernel/report/said.ts";
import { stepReport } from "../../kernel/report/step-report.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import * as slot from "../../kernel/slots.ts";
import { garmentStep } from "../../kernel/step.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

const worked = (text: string): Outcome => kernel(vocabulary).work({ file: "test.chalk", text });

const recordOf = ({ records }: Outcome, step: string, count = 0): StepRecord =>
  records.filter((record) => record.step === step)[count]!;

const panel = `chalkline 1
units cm
piece panel {
  line top   = (0, 0) to (20 cm, 0)
  line right-side = (20 cm, 0) to (20 cm, 30 cm)
  line hem   = (0, 30 cm) to (20 cm, 30 cm)
  line left-side  = (0, 0) to (0, 30 cm)
  outline top, right-side, hem, left-side
  line cut-line = (0, 12 cm) to (20 cm, 12 cm)
}
`;

test("a piece that is cut in two leaves both parts in the record, made and not changed", () => {
  const record = recordOf(worked(`${panel}split upper, lower = panel along panel.cut-line`), "split");
  expect(record.changed.map(({ after }) => after.name)).toEqual(["upper", "lower"]);
  expect(record.changed.every(({ before }) => before === undefined)).toBe(true);
  // Cut 12 cm down, of 30 cm.
  expect(sewnLengthOf(changedIn(record, "upper")!.after, "left-side")).toBeCloseTo(120, 6);
  expect(sewnLengthOf(changedIn(record, "lower")!.after, "left-side")).toBeCloseTo(180, 6);
});

test("two pieces that are joined leave the whole in the record, and stay as they were", () => {
  const outcome = worked(
    `${panel}split upper, lower = panel along panel.cut-line\njoin-pieces whole = upper.cut-line with lower.cut-line`,
  );
  const record = recordOf(outcome, "join-pieces");
  expect(record.changed).toEqual([{ after: outcome.garment.pieces.get("whole") }]);
  // Both parts of each side become one again: 12 cm and 18 cm.
  expect(sewnLengthOf(record.changed[0]!.after, "left-side")).toBeCloseTo(300, 6);
});

const shoulders = `chalkline 1
units cm
piece block {
  line shoulder = (8 cm, 0) to (20 cm, 4 cm)
  curve armhole = (20 cm, 4 cm) to (24 cm, 24 cm) through (18 cm, 14 cm) heading down leaving square-to shoulder arriving right
  line side     = (24 cm, 24 cm) to (24 cm, 50 cm)
  line hem      = (0, 50 cm) to (24 cm, 50 cm)
  line center   = (0, 2 cm) to (0, 50 cm)
  curve neck    = (0, 2 cm) to (8 cm, 0) leaving right
  outline center, neck, shoulder, armhole, side, hem
}
piece back = block { }
piece front = block { }
forward-shoulder front.shoulder onto back.shoulder by 1 cm
`;

test("a step of the garment that changes two pieces tells what both were and became", () => {
  const outcome = worked(shoulders);
  expect(outcome.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const { changed } = recordOf(outcome, "forward-shoulder");
  expect(changed.map(({ after }) => after.name).sort()).toEqual(["back", "front"]);
  for (const { before, after } of changed) {
    expect(before!.name).toBe(after.name);
    expect(after).toBe(outcome.garment.pieces.get(after.name));
    expect(sewnLengthOf(after, "armhole")).not.toBeCloseTo(sewnLengthOf(before!, "armhole"), 1);
  }
});

test("and so it stands in the table of edges by step", () => {
  const lines = edgesByStep(worked(shoulders)).map(lettersOf);
  expect(lines.filter((line) => line.includes("forward-shoulder (14)"))).toHaveLength(2);
});

test("an amount that a step of the garment tells is multiplied as that of its one piece", () => {
  const name = slot.name("name", "a piece");
  const widen = garmentStep({
    name: "widen-all",
    since: "0.2",
    summary: "Says that it widened a piece.",
    example: "",
    phrase: [phrase`widen-all ${slot.piece("piece", "the piece")} as ${name}`],
    work: ({ piece: { piece }, name: called }, garment) => ({
      now: { ...garment, pieces: new Map(garment.pieces).set(called, { ...piece, name: called }) },
      words: "widened 1 cm",
      amount: 10,
    }),
  });
  const chalk = kernel({ ...vocabulary, steps: [...vocabulary.steps, widen] });
  const cloth = 'fabric shell "felt" width 140 cm\n';
  const text = `${panel}${cloth}widen-all panel as wider\ncut wider 2 from shell`;
  const outcome = chalk.work({ file: "test.chalk", text });
  const record = recordOf(outcome, "widen-all");
  expect(record.amount).toBe(10);
  expect(tellStep(record, outcome.garment)).toBe("widened 1 cm: 2 cm in the garment");
});

test("the line that begins a piece is in the record, and in no report", () => {
  const outcome = worked(`${panel}piece copy = panel { }`);
  const [first, second] = outcome.records.filter(({ step }) => step === "piece");
  expect([first!.piece, first!.where.line, first!.words]).toEqual(["panel", 3, ""]);
  expect([second!.piece, second!.where.line, second!.words]).toEqual(["copy", 11, ""]);
  expect(second!.changed).toEqual([{ after: outcome.garment.pieces.get("copy") }]);
  expect(stepReport(outcome, 80)).toEqual([]);
  const { steps } = measuredJson(outcome) as { steps: readonly { step: string }[] };
  expect(steps.map(({ step }) => step)).not.toContain("piece");
});

const finished = (outcome: Outcome): void => {
  for (const piece of outcome.garment.pieces.values()) {
    const last = outcome.records.findLast((record) => changedIn(record, piece.name));
    expect(changedIn(last!, piece.name)!.after, piece.name).toBe(piece);
  }
};

test("the last entry of a piece leaves it as it is in the end", () => {
  finished(worked(panel));
  // A failed line makes the piece doubtful after its last good step.
  const failed = worked(panel.replace("  line cut-line = (0, 12 cm)", "  line cut-line = nowhere"));
  expect(failed.garment.pieces.get("panel")!.doubtful).toBe(true);
  finished(failed);
  // What a promise wants is settled when the piece is complete.
  finished(worked(`${panel}piece copy = panel {\n  keep hem\n  strip hem\n}`));
});

test("edges that a block draws are recorded under the names they have when it ends", () => {
  const text = `chalkline 1
units cm
piece panel {
  line top  = (0, 0) to (20 cm, 0)
  line side = (20 cm, 0) to (20 cm, 30 cm)
  line edge = (0, 0) to (0, 30 cm)
  if 1 < 2 {
    line hem = (0, 30 cm) to (20 cm, 30 cm)
    outline top, side, hem, edge
    extend-hem hem by 2 cm
  }
}
`;
  const outcome = worked(text);
  finished(outcome);
  const drawn = recordOf(outcome, "line", 3).changed[0]!;
  expect([...drawn.after.edges.keys()]).toEqual(["top", "side", "edge", "hem"]);
  const { before, after } = recordOf(outcome, "extend-hem").changed[0]!;
  // 2 cm further down, all along: the side is 30 cm and then 32 cm.
  expect([before!, after].map((piece) => sewnLengthOf(piece, "side"))).toEqual([300, 320]);
  expect([before!, after].map((piece) => piece.edges.has("hem"))).toEqual([true, true]);
  expect(tellStep(recordOf(outcome, "extend-hem"), outcome.garment)).not.toContain("~");
});
