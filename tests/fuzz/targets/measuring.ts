// What `measure` prints: a table for people, JSON that JSON.parse reads, and CSV with as many cells in each row as in its head.
import { factsText } from "../../../kernel/report/facts-text.ts";
import { jsonText } from "../../../kernel/report/json.ts";
import { measuredJson } from "../../../kernel/report/measured-json.ts";
import { measuredReport } from "../../../kernel/report/measured-report.ts";
import { measuresCsv } from "../../../kernel/report/measures-csv.ts";
import { finite, plainlyTold } from "../figures-told.ts";
import { toldOnScreen } from "../on-screen.ts";
import { holds, type Target } from "../target.ts";
import { workedOnce } from "../worked-once.ts";

export const measuring: Target = {
  name: "measure",
  run({ text }) {
    const outcome = workedOnce(text);
    const data = measuredJson(outcome);
    finite(data, "the measures");
    JSON.parse(jsonText(data));
    toldOnScreen(measuredReport(outcome, 80), text, "the report");
    plainlyTold(factsText(outcome), text, "the facts");
    const csv = measuresCsv(outcome.garment);
    plainlyTold(csv, text, "the CSV");
    evenRows(csv);
  },
};

/** Throws where rows of a CSV have more cells than others. */
export const evenRows = (csv: string): void => {
  const widths = new Set(cellsOf(csv));
  holds(widths.size === 1, "rows of the CSV differ in their cells", [...widths].join(", "));
};

/** How many cells each row has, by RFC 4180: commas and line ends inside quotes are text. */
const cellsOf = (csv: string): number[] =>
  csv
    .replace(/"(?:[^"]|"")*"/g, "")
    .replace(/\r?\n$/, "")
    .split(/\r?\n/)
    .map((row) => row.split(",").length);
