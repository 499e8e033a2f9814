// chalkline stress: does a recipe hold for everybody?
import { jsonText } from "../../kernel/report/json.ts";
import { stressJson, stressReport } from "../../kernel/report/stress-report.ts";
import { stress as stressed } from "../../kernel/stress/stress.ts";
import type { NamedBody } from "../../kernel/stress/trials.ts";
import { bodiesIn } from "../files/body-table.ts";
import { readText } from "../files/read-text.ts";
import { chalk } from "./known.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { exitCode, refusal, remarkLine } from "./told.ts";

export interface StressOptions {
  readonly root?: string;
  readonly bodies?: string;
  readonly tries: string;
  readonly seed: string;
  readonly form: "long" | "json";
}

// Oftener than this nobody reads it.
const toldEvery = 50;

// A sample of more takes hours and finds nothing that this many did not.
const mostTries = 1_000_000;

export const stress = async (path: string, options: StressOptions, out: Paper, err: Paper): Promise<number> => {
  const opened = await openNamed(path, options.root);
  const tries = wholeNumber(options.tries, mostTries);
  const seed = wholeNumber(options.seed, 0xffff_ffff);
  const bodies = options.bodies === undefined ? { bodies: [], problems: [] } : readBodies(options.bodies);
  const problem =
    "problem" in opened
      ? opened.problem.message
      : tries === undefined
        ? `--tries takes a whole number up to ${mostTries}, and this is ${options.tries}.`
        : seed === undefined
          ? `--seed takes a whole number, and this is ${options.seed}.`
          : "problem" in bodies
            ? bodies.problem
            : undefined;
  if (problem !== undefined || "problem" in opened || "problem" in bodies) {
    err.say(refusal(problem!));
    return exitCode.unreadable;
  }
  err.say(bodies.problems.map(remarkLine));
  const plan = { tries: tries!, seed: seed!, bodies: bodies.bodies };
  const report = stressed(chalk, opened.source, { sources: opened.sources }, plan, (done, of) => {
    if (done % toldEvery === 0 || done === of) err.progress(done, of, "tried");
  });
  if (options.form === "json") out.print(jsonText(stressJson(report)));
  else out.say(stressReport(path, report, out.width));
  return report.failures.length === 0 ? exitCode.clean : exitCode.errors;
};

const wholeNumber = (text: string, most: number): number | undefined => {
  const value = Number(text);
  return /^\d+$/.test(text) && value <= most ? value : undefined;
};

const readBodies = (path: string): { bodies: NamedBody[]; problems: string[] } | { problem: string } => {
  const read = readText(path, path);
  return "problem" in read ? { problem: read.problem.message } : bodiesIn(read.text, path);
};
