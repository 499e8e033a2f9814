// chalkline measure: everything measured, as tables for people, as JSON for programs, as CSV for spreadsheets, or one fact a line.
import { edgesByStep } from "../../kernel/report/edges-by-step.ts";
import { factsText } from "../../kernel/report/facts-text.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { measuredJson } from "../../kernel/report/measured-json.ts";
import { measuredReport } from "../../kernel/report/measured-report.ts";
import { measuresCsv } from "../../kernel/report/measures-csv.ts";
import { blank } from "../../kernel/report/said.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";

export interface MeasureOptions extends Given {
  readonly root?: string;
  readonly form: "long" | "by-step" | "json" | "csv" | "text";
}

/** Measures one recipe; findings go to the other stream, so that the tables stay tables. */
export const measure = async (path: string, options: MeasureOptions, out: Paper, err: Paper): Promise<number> => {
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  if (options.form === "json") out.print(jsonText(measuredJson(outcome)));
  else if (options.form === "csv") out.print(measuresCsv(outcome.garment));
  else if (options.form === "text") out.print(factsText(outcome));
  else if (options.form === "by-step") out.say(edgesByStep(outcome));
  else out.say(measuredReport(outcome, out.width));
  // Findings come last: there the eye of whoever typed the command is.
  err.say(options.form === "long" || options.form === "by-step" ? [blank, ...told] : told);
  return codeFor(outcome);
};
