// chalkline trace: a drawing from elsewhere becomes a recipe, on standard output or in a file.
import { lstatSync } from "node:fs";
import { basename } from "node:path";
import { sourceText } from "../../grammar/source.ts";
import { plain, type SaidLine, strong } from "../../kernel/report/said.ts";
import { counted, verdictOf } from "../../kernel/report/verdict.ts";
import type { Unreadable } from "../../kernel/sources.ts";
import type { Units } from "../../kernel/working.ts";
import { type BroughtIn, broughtIn, leftOutWords } from "../bring-in/brought-in.ts";
import type { DrawingKind } from "../bring-in/drawing-kinds.ts";
import { drawingLimits } from "../bring-in/drawing-limits.ts";
import type { OutlineLine } from "../bring-in/pieces-on.ts";
import { readAmount } from "../files/amount.ts";
import { type DrawingFile, drawingIn } from "../files/drawing-in.ts";
import { readDrawing } from "../files/read-drawing.ts";
import { saveAll } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import { inputBytes } from "./input-bytes.ts";
import { chalk } from "./known.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal, remarkLine, tellFindings } from "./told.ts";

export interface TraceOptions {
  /** Where the recipe goes; standard output where nothing is said. */
  readonly out?: string;
  readonly overwrite: boolean;
  readonly units?: Units;
  /** As it was written: "2", "1/4", "50%". */
  readonly scale: string;
  /** Sewing lines where nothing is said. */
  readonly line?: OutlineLine;
  /** The allowance that is drawn in, as it was written: "1.5cm". */
  readonly allowance?: string;
  /** What kind of file it is; told by its name and beginning where nothing is said. */
  readonly as?: DrawingKind;
}

/** Traces one drawing, from standard input where the path is `-`. What is said of it goes to the other stream, so that the recipe stays a recipe. */
export const trace = async (path: string, options: TraceOptions, out: Paper, err: Paper): Promise<number> => {
  const refuse = (message: string, hint?: string): number => {
    err.say(refusal(message, hint));
    return exitCode.unreadable;
  };
  const scale = readAmount(options.scale);
  if (scale?.kind !== "number" || !(scale.value > 0))
    return refuse("--scale takes a number above 0, such as 2, 1/4 or 50%.");
  if (options.out !== undefined && !options.overwrite && isThere(options.out))
    return refuse(`${options.out} is there already, and stays as it is.`, "Name another file, or say --overwrite.");
  const drawnIn = widthOf(options.allowance);
  if (drawnIn === "none")
    return refuse(`--allowance takes a length above 0, such as 1.5cm or 5/8in, and not ${options.allowance}.`);
  if (drawnIn !== undefined && options.line === "sewing")
    return refuse("--allowance is what a cutting line has: leave out --line sewing, or the allowance.");
  const drawing = path === "-" ? await drawingOnInput(options.as) : readDrawing(path, options.as);
  if ("problem" in drawing) return refuse(drawing.problem.message, drawing.problem.hint);
  const { called, named } =
    path === "-" ? { called: "a drawing", named: "standard input" } : { called: basename(path), named: path };
  const { units } = options;
  // An allowance is taken off where it was drawn in, and measured where the sewing line was drawn.
  const line = options.line ?? (drawnIn === undefined ? "sewing" : "cutting");
  const made = broughtIn(
    drawing.text,
    drawing.kind,
    called,
    { ...(units && { units }), scale: scale.value, line, ...(drawnIn !== undefined && { drawnIn }) },
    chalk,
  );
  if ("problem" in made) {
    const { message, line: row, hint } = made.problem;
    err.say(remarksOn(made));
    return refuse(row === undefined ? `${named}: ${message}` : `${named}:${row}: ${message}`, hint);
  }
  const file = options.out ?? called.replaceAll(" ", "-").replace(/(?:\.\w+)?$/, ".chalk");
  const source = { file, text: made.recipe };
  const outcome = chalk.work(source);
  if (options.out === undefined) out.print(made.recipe);
  else {
    try {
      // A file that has come there meanwhile stays as well.
      const was = options.overwrite ? "anything" : "no file";
      saveAll([{ path: options.out, content: made.recipe, was }]);
    } catch (error) {
      return refuse(cannotWrite(error, options.out));
    }
  }
  const texts = new Map([[file, sourceText(made.recipe)]]);
  err.say([
    ...toldOf(made, named, options.out),
    ...tellFindings(file, outcome.findings, verdictOf(outcome), texts, err.width),
  ]);
  return codeFor(outcome);
};

/** The width that was written, mm; "none" where that is no length above 0. */
const widthOf = (written: string | undefined): number | undefined | "none" => {
  if (written === undefined) return undefined;
  const width = readAmount(written);
  return width?.kind === "length" && width.value > 0 ? width.value : "none";
};

const drawingOnInput = async (kind: DrawingKind | undefined): Promise<DrawingFile | Unreadable> => {
  const read = await inputBytes(drawingLimits.fileBytes);
  return "problem" in read ? read : drawingIn(read.bytes, "standard input", kind);
};

const toldOf = ({ pieces, notes, leftOut, straying }: BroughtIn, path: string, out: string | undefined): SaidLine[] => [
  [
    plain(`Traced ${counted(pieces.length, "piece")} from `),
    strong(path),
    ...(out === undefined ? [] : [plain(" into "), strong(out)]),
    plain(`, within ${nearness(straying)} mm of what is drawn.`),
  ],
  ...remarksOn({ notes, leftOut }),
];

const remarksOn = ({ notes, leftOut }: Pick<BroughtIn, "notes" | "leftOut">): SaidLine[] => [
  ...notes.map(remarkLine),
  ...leftOut.map((each) => remarkLine(`left out: ${leftOutWords(each)}`)),
];

/** Upward to a hundredth, so that it is never said nearer than it is. */
const nearness = (millimetres: number): string => (Math.ceil(millimetres * 100 - 1e-6) / 100).toFixed(2);

const isThere = (path: string): boolean => lstatSync(path, { throwIfNoEntry: false }) !== undefined;
