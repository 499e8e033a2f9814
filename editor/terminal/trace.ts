// chalkline trace: a drawing from elsewhere becomes a recipe, on standard output or in a file.
import { lstatSync } from "node:fs";
import { basename } from "node:path";
import { sourceText } from "../../grammar/source.ts";
import { plain, type SaidLine, strong } from "../../kernel/report/said.ts";
import { counted, verdictOf } from "../../kernel/report/verdict.ts";
import type { Units } from "../../kernel/working.ts";
import { type BroughtIn, broughtIn, leftOutWords } from "../bring-in/brought-in.ts";
import type { OutlineLine } from "../bring-in/pieces-on.ts";
import { readAmount } from "../files/amount.ts";
import { readDrawing } from "../files/read-drawing.ts";
import { saveAll } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal, remarkLine, tellFindings } from "./told.ts";
import { chalk } from "./worked.ts";

export interface TraceOptions {
  /** Where the recipe goes; standard output where nothing is said. */
  readonly out?: string;
  readonly overwrite: boolean;
  readonly units?: Units;
  /** As it was written: "2", "1/4", "50%". */
  readonly scale: string;
  readonly line: OutlineLine;
}

/** Traces one drawing. What is said of it goes to the other stream, so that the recipe stays a recipe. */
export const trace = (path: string, options: TraceOptions, out: Paper, err: Paper): number => {
  const refuse = (message: string, hint?: string): number => {
    err.say(refusal(message, hint));
    return exitCode.unreadable;
  };
  const scale = readAmount(options.scale);
  if (scale?.kind !== "number" || !(scale.value > 0))
    return refuse("--scale takes a number above 0, such as 2, 1/4 or 50%.");
  if (options.out !== undefined && !options.overwrite && isThere(options.out))
    return refuse(`${options.out} is there already, and stays as it is.`, "Name another file, or say --overwrite.");
  const drawing = readDrawing(path);
  if ("problem" in drawing) return refuse(drawing.problem.message, drawing.problem.hint);
  const called = basename(path);
  const { units, line } = options;
  const made = broughtIn(
    drawing.text,
    drawing.kind,
    called,
    { ...(units && { units }), scale: scale.value, line },
    chalk,
  );
  if ("problem" in made) {
    const { message, line: row, hint } = made.problem;
    err.say(remarksOn(made));
    return refuse(row === undefined ? `${path}: ${message}` : `${path}:${row}: ${message}`, hint);
  }
  const file = options.out ?? called.replace(/(?:\.\w+)?$/, ".chalk");
  const source = { file, text: made.recipe };
  const outcome = chalk.work(source);
  if (options.out === undefined) out.print(made.recipe);
  else {
    try {
      saveAll([{ path: options.out, content: made.recipe }]);
    } catch (error) {
      return refuse(cannotWrite(error, options.out));
    }
  }
  const texts = new Map([[file, sourceText(made.recipe)]]);
  err.say([
    ...toldOf(made, path, options.out),
    ...tellFindings(file, outcome.findings, verdictOf(outcome), texts, err.width),
  ]);
  return codeFor(outcome);
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
