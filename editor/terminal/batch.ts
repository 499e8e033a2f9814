// chalkline batch: one garment for every row of a table of bodies, into tables of measures and findings, and drawings if asked.
import { measuredRow } from "../../kernel/report/measured-row.ts";
import { blank } from "../../kernel/report/said.ts";
import { verdictOf } from "../../kernel/report/verdict.ts";
import { type BatchEnd, batchInFolder, type Hearer } from "../batch/batch-in-folder.ts";
import { batchTold, countsOf, failedTold, goesOnTold, paceTold, stoppedTold } from "../batch/batch-told.ts";
import { openBodies } from "../batch/bodies-file.ts";
import { columnsFit } from "../batch/columns-fit.ts";
import { type Parcel, recorded } from "../batch/parcel.ts";
import { programNamed } from "../batch/program.ts";
import { endingSignals } from "../files/uninterrupted.ts";
import { cannotBeDrawn } from "./draw.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { threadsOf } from "./threads.ts";
import { exitCode, refusal, remarkLine, tellFindings } from "./told.ts";
import { codeAfterSignal, untilStopped } from "./until-stopped.ts";
import { worked } from "./worked.ts";

export interface BatchOptions {
  readonly version: string;
  readonly bodies: string;
  readonly out: string;
  readonly set: readonly string[];
  readonly size?: string;
  readonly root?: string;
  /** Formats of drawings by name; none where none are asked for. */
  readonly as: readonly string[];
  readonly paper?: readonly string[];
  readonly workers?: string;
  readonly queue?: string;
  /** Begin again, whatever lies in the folder. */
  readonly anew: boolean;
}

/** Drafts all bodies, or those that an earlier run has left; tells how they came out. */
export const batch = async (path: string, options: BatchOptions, out: Paper, err: Paper): Promise<number> => {
  const refuse = (problem: string, hint?: string): number => {
    err.say(refusal(problem, hint));
    return exitCode.unreadable;
  };
  const threads = threadsOf(options.workers);
  if (typeof threads !== "number") return refuse(threads.problem);
  if (options.queue !== undefined && options.workers !== undefined)
    return refuse(
      "--workers is for this machine; how many work from a queue is said where chalkline batch-worker is started.",
    );
  const undrawable = cannotBeDrawn(options);
  if (undrawable !== undefined) return refuse(undrawable);

  const opened = await openNamed(path, options.root);
  if ("problem" in opened) return refuse(opened.problem.message, opened.problem.hint);
  const recipe = recorded(opened);
  const base = worked(recipe, options);
  if ("problem" in base) return refuse(base.problem);
  if (base.outcome.incomplete) {
    // What fails for the recipe's own body would fail a hundred thousand times.
    const { findings } = base.outcome;
    err.say([
      ...tellFindings(recipe.source.file, findings, verdictOf(base.outcome), recipe.texts, err.width),
      blank,
      ...refusal("Lines of the recipe cannot be worked with its own measures, so nothing was drafted."),
    ]);
    return exitCode.errors;
  }
  const bodies = openBodies(options.bodies);
  if ("problem" in bodies) return refuse(bodies.problem);
  try {
    const set = new Set(options.set.map((each) => each.slice(0, each.indexOf("=")).trim()));
    const fit = columnsFit(bodies.columns, options.bodies, set, base.outcome);
    if ("problem" in fit) return refuse(fit.problem);
    const parcel: Parcel = {
      program: programNamed(options.version),
      recipe: opened.source,
      used: recipe.used(),
      set: options.set,
      size: options.size ?? null,
      as: options.as,
      paper: options.paper ?? [],
      table: options.bodies,
      columns: bodies.columns,
      headings: [...measuredRow(base.outcome).keys()],
    };
    const stop = new AbortController();
    const place = { folder: options.out, anew: options.anew, queue: options.queue, threads };
    const { result: end, signal } = await untilStopped(
      endingSignals,
      () => stop.abort(),
      () => batchInFolder(parcel, bodies, place, stop.signal, hearerOn(err, fit.remarks, bodies.count)),
    );
    tell(end, parcel, bodies.count, options, out, err);
    return codeOf(end, signal);
  } finally {
    bodies.close();
  }
};

const hearerOn = (err: Paper, remarks: readonly string[], count: number): Hearer => ({
  begins: (done) => {
    err.say(remarks.map(remarkLine));
    if (done > 0) err.say([goesOnTold(done, count)]);
  },
  drafted: (done) => err.progress(done, count, "drafted"),
  remark: (sentence) => err.say([remarkLine(sentence)]),
});

const tell = (
  end: BatchEnd,
  { recipe, as }: Parcel,
  count: number,
  { out: folder, anew }: BatchOptions,
  out: Paper,
  err: Paper,
): void => {
  switch (end.kind) {
    case "refused":
      err.say(refusal(end.problem));
      break;
    case "failed":
      err.say(failedTold(end.problem, end.done, count, anew));
      break;
    case "stopped":
      err.say([...stoppedTold(end.done, count, anew), paceTold(end.here, end.ms / 1000)]);
      break;
    case "done before":
      out.say(batchTold(recipe.file, folder, end.tally, as.length > 0, out.width));
      err.say([blank, remarkLine("All of it was done before. --anew drafts it again.")]);
      break;
    case "finished":
      out.say(batchTold(recipe.file, folder, end.tally, as.length > 0, out.width));
      err.say([paceTold(end.here, end.ms / 1000)]);
      break;
  }
};

const codeOf = (end: BatchEnd, signal: NodeJS.Signals | undefined): number => {
  if (end.kind === "refused" || end.kind === "failed") return exitCode.unreadable;
  if (end.kind === "stopped") return codeAfterSignal(signal ?? "SIGINT");
  const { errors, notWorked } = countsOf(end.tally);
  return errors + notWorked > 0 ? exitCode.errors : exitCode.clean;
};
