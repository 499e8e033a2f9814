// chalkline draw: one SVG for every piece and one sheet with all of them, into a folder.
import { join } from "node:path";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { svg } from "../../kernel/export/svg.ts";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import { drawnFiles } from "../files/drawn-files.ts";
import { makeFolder, saveAll } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal } from "./told.ts";
import type { Given } from "./worked.ts";
import { workFile } from "./worked-file.ts";

export interface DrawOptions extends Given {
  readonly root?: string;
  readonly out: string;
}

/** Draws what can be drawn, whatever the findings; tells them, and what it wrote. */
export const draw = async (path: string, options: DrawOptions, out: Paper, err: Paper): Promise<number> => {
  const file = await workFile(path, options, err);
  if (!file) return exitCode.unreadable;
  const { outcome, told } = file;
  const drawings = drawnFiles(outcome, options);
  try {
    makeFolder(options.out);
    saveAll(drawings.map(({ name, drawing }) => ({ path: join(options.out, `${name}.svg`), text: svg(drawing) })));
  } catch (error) {
    err.say([...told, blank, ...refusal(cannotWrite(error, options.out))]);
    return exitCode.unreadable;
  }
  out.say(written(drawings, options.out, outcome.garment.units));
  // Findings come last: there the eye of whoever typed the command is.
  err.say([blank, ...told]);
  return codeFor(outcome);
};

const written = (drawings: readonly { name: string; drawing: Drawing }[], folder: string, units: Units): SaidLine[] => [
  [plain(`Wrote ${counted(drawings.length, "drawing")} into `), strong(folder), quiet("  (paper size, true to scale)")],
  ...aligned(
    drawings.map(({ name, drawing: { paper } }) => [
      words(`${name}.svg`),
      amount(`${lengthIn(paper.right - paper.left, units)} wide`),
      amount(`${lengthIn(paper.bottom - paper.top, units)} high`),
    ]),
  ),
];
