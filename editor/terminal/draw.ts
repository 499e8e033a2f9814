// chalkline draw: one SVG for every piece and one sheet with all of them, into a folder.
import { join } from "node:path";
import { draw as drawn } from "../../kernel/drawing/draw.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import type { Remarks } from "../../kernel/drawing/remarks.ts";
import { svg } from "../../kernel/export/svg.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { valueInWords } from "../../kernel/report/amounts.ts";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { counted } from "../../kernel/report/verdict.ts";
import { lengthIn } from "../../kernel/units.ts";
import { isScalar } from "../../kernel/value.ts";
import type { Units } from "../../kernel/working.ts";
import { drawingNames, sheetName } from "../files/drawing-names.ts";
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
  const { pieces, sheet } = drawn(outcome.garment, remarksOn(outcome, options));
  const names = drawingNames(pieces.keys());
  const drawings = [
    ...[...pieces].map(([piece, drawing]) => ({ name: names.get(piece)!, drawing })),
    { name: sheetName, drawing: sheet },
  ];
  try {
    makeFolder(options.out);
    saveAll(drawings.map(({ name, drawing }) => ({ path: join(options.out, name), text: svg(drawing) })));
  } catch (error) {
    err.say([...told, blank, ...refusal(cannotWrite(error, options.out))]);
    return exitCode.unreadable;
  }
  out.say(written(drawings, options.out, outcome.garment.units));
  // Findings come last: there the eye of whoever typed the command is.
  err.say([blank, ...told]);
  return codeFor(outcome);
};

/** What the sheet says of how it was drafted: size, body and the recipe's own design choices; and that it must not be cut. */
const remarksOn = ({ values, garment, findings }: Outcome, { size, person, body }: DrawOptions): Remarks => {
  const errors = findings.filter(({ severity }) => severity === "error").length;
  const params = [...values].flatMap(([name, { kind, value }]) =>
    kind === "param" && isScalar(value) ? [`${name} ${valueInWords(value, garment.units)}`] : [],
  );
  const made = person === undefined ? body : person;
  return {
    ...(errors > 0 && { unfit: `NOT FIT TO CUT: ${counted(errors, "error")}` }),
    choices: [
      ...(size === undefined ? [] : [`size ${size}`]),
      ...(made === undefined ? [] : [`the body ${made}`]),
      ...params,
    ],
  };
};

const written = (drawings: readonly { name: string; drawing: Drawing }[], folder: string, units: Units): SaidLine[] => [
  [plain(`Wrote ${counted(drawings.length, "drawing")} into `), strong(folder), quiet("  (paper size, true to scale)")],
  ...aligned(
    drawings.map(({ name, drawing: { paper } }) => [
      words(name),
      amount(`${lengthIn(paper.right - paper.left, units)} wide`),
      amount(`${lengthIn(paper.bottom - paper.top, units)} high`),
    ]),
  ),
];
