// chalkline chalk-off: a table to mark every piece straight on the cloth with a tape and chalk.
import { chalkOffCsv } from "../../kernel/report/chalk-off-csv.ts";
import { chalkOffEntries } from "../../kernel/report/chalk-off-entries.ts";
import { blank } from "../../kernel/report/said.ts";
import { entryLines } from "../../kernel/written/entry-lines.ts";
import { remarksOn } from "../files/drawn-files.ts";
import { lettersTold } from "./letters-told.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";
import { type Asked, asText, cannotBeHad, saveSheet, typedWidth } from "./written.ts";

export interface ChalkOffOptions extends Given, Asked {
  readonly root?: string;
}

/** The formats of a table of points. */
export const chalkOffFormats: readonly string[] = ["text", "csv", "svg", "pdf"];

/** Chalks one recipe's pieces off, on the screen or into files; findings go to the other stream, so that a table stays one. */
export const chalkOff = async (path: string, options: ChalkOffOptions, out: Paper, err: Paper): Promise<number> => {
  const lacking = cannotBeHad(options, chalkOffFormats);
  if (lacking !== undefined) {
    err.say(refusal(lacking));
    return exitCode.unreadable;
  }
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  const { garment } = outcome;
  const entries = chalkOffEntries(garment, remarksOn(outcome, options).unfit);
  if (options.out === undefined) {
    const isCsv = options.as.includes("csv");
    if (isCsv) out.print(chalkOffCsv(garment));
    else out.say(entryLines(entries, out.width));
    err.say(isCsv ? told : [blank, ...told]);
    return codeFor(outcome);
  }
  const saved = await saveSheet(
    {
      name: "chalk-off",
      title: garment.title === "" ? garment.file : garment.title,
      entries,
      texts: new Map([
        ["text", () => asText(entryLines(entries, typedWidth))],
        ["csv", () => chalkOffCsv(garment)],
      ]),
    },
    options,
    options.out,
  );
  if ("problem" in saved) {
    err.say([...told, blank, ...refusal(saved.problem)]);
    return exitCode.unreadable;
  }
  out.say(saved.said);
  err.say([blank, ...(await lettersTold(file, saved.lettered))]);
  return codeFor(outcome);
};
