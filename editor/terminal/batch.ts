// chalkline batch: one garment for every row of a table of bodies, into tables of measures and findings, and drawings if asked.
import { join } from "node:path";
import { measuredRow } from "../../kernel/report/measured-row.ts";
import { blank } from "../../kernel/report/said.ts";
import { verdictOf } from "../../kernel/report/verdict.ts";
import { takeAlone } from "../batch/alone.ts";
import { batchLimits } from "../batch/batch-limits.ts";
import { batchTold, countsOf, failedTold, goesOnTold, paceTold, stoppedTold } from "../batch/batch-told.ts";
import { type Begun, begunAnew, begunIn, drawingsIn, journalIn } from "../batch/begun.ts";
import { type BodiesFile, openBodies } from "../batch/bodies-file.ts";
import { columnsFit } from "../batch/columns-fit.ts";
import { openJournal } from "../batch/journal.ts";
import { localDrafter } from "../batch/local-drafter.ts";
import { type Parcel, recorded } from "../batch/parcel.ts";
import { programNamed } from "../batch/program.ts";
import { openResults } from "../batch/results.ts";
import { type Drafter, type Ended, rowsAtATime, runBatch } from "../batch/run.ts";
import type { Tally } from "../batch/tally.ts";
import { makeFolder } from "../files/save.ts";
import { TableProblem } from "../files/table-rows.ts";
import { whyRefused } from "../files/why-refused.ts";
import { cannotBeDrawn } from "./draw.ts";
import { openNamed } from "./opened.ts";
import type { Paper } from "./paper.ts";
import { threadsOf } from "./threads.ts";
import { exitCode, refusal, remarkLine, tellFindings } from "./told.ts";
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
    return await inFolder(parcel, bodies, { ...options, threads, remarks: fit.remarks }, out, err);
  } finally {
    bodies.close();
  }
};

interface Place extends Pick<BatchOptions, "out" | "anew" | "queue"> {
  readonly threads: number;
  readonly remarks: readonly string[];
}

/** Takes the folder, finds out where to go on, drafts what is left, and tells. */
const inFolder = async (parcel: Parcel, bodies: BodiesFile, place: Place, out: Paper, err: Paper): Promise<number> => {
  const problem = (message: string): number => {
    err.say(refusal(message));
    return exitCode.unreadable;
  };
  let leave: ReturnType<typeof takeAlone> | undefined;
  try {
    makeFolder(place.out);
    leave = takeAlone(join(place.out, "batch.lock"));
    if (typeof leave !== "function") return problem(leave.problem);
    const begun = place.anew ? begunAnew(place.out, parcel, bodies) : begunIn(place.out, parcel, bodies);
    if (typeof begun === "string") return problem(begun);
    if (begun.mark.isFinished) {
      out.say([...batchTold(parcel.recipe.file, place.out, begun.mark.tally, parcel.as.length > 0, out.width)]);
      err.say([blank, remarkLine("All of it was done before. --anew drafts it again.")]);
      return codeOf(begun.mark.tally);
    }
    return await drafted(parcel, bodies, place, begun, out, err);
  } catch (error) {
    if (error instanceof TableProblem) return problem(`${parcel.table}: ${error.message}`);
    const why = whyRefused(error);
    if (why === undefined) throw error;
    return problem(
      `${place.out} cannot be written: ${why}. What is done is kept, and the same command goes on with it.`,
    );
  } finally {
    if (typeof leave === "function") leave();
  }
};

/** Drafts what is left to do, and tells how all of it came out. */
const drafted = async (
  parcel: Parcel,
  bodies: BodiesFile,
  { out: folder, threads, queue, remarks }: Place,
  begun: Begun,
  out: Paper,
  err: Paper,
): Promise<number> => {
  const results = openResults(folder, begun.mark, parcel.headings);
  if ("problem" in results) {
    err.say(refusal(results.problem));
    return exitCode.unreadable;
  }
  const journal = openJournal(journalIn(folder), begun.bytes);
  err.say(remarks.map(remarkLine));
  if (begun.mark.rows > 0) err.say([goesOnTold(begun.mark.rows, bodies.count)]);
  const drawings = drawingsIn(folder);
  const drafter = await drafterFor(parcel, begun, drawings, queue, threads, bodies.count, err);
  if ("problem" in drafter) {
    err.say(refusal(drafter.problem));
    return exitCode.unreadable;
  }
  const since = performance.now();
  const { ended, signal } = await untilStopped(drafter, () =>
    runBatch(bodies, begun.mark, drafter.rowsAtATime, drafter, results, journal, (done) =>
      err.progress(done, bodies.count, "drafted"),
    ),
  );
  const { mark } = ended;
  const pace = paceTold(mark.rows - begun.mark.rows, (performance.now() - since) / 1000);
  try {
    if (ended.kind === "failed") {
      err.say(failedTold(ended.problem, mark.rows, bodies.count));
      return exitCode.unreadable;
    }
    if (ended.kind === "stopped") {
      err.say([...stoppedTold(mark.rows, bodies.count), pace]);
      return signal === "SIGTERM" ? 143 : 130;
    }
    if (!bodies.isUnchanged()) {
      const words = `${parcel.table} was changed while it was worked, so the results are of no one table. Draft it again with --anew.`;
      err.say(refusal(words));
      return exitCode.unreadable;
    }
    results.finish();
    journal.add({ ...mark, isFinished: true });
    out.say(batchTold(parcel.recipe.file, folder, mark.tally, parcel.as.length > 0, out.width));
    err.say([pace]);
    return codeOf(mark.tally);
  } finally {
    results.close();
    journal.close();
  }
};

/** Runs until the end, or until Ctrl-C, a closed terminal or a shutdown; the second Ctrl-C does not wait. */
const untilStopped = async (
  drafter: Drafter,
  run: () => Promise<Ended>,
): Promise<{ readonly ended: Ended; readonly signal: NodeJS.Signals | undefined }> => {
  let signal: NodeJS.Signals | undefined;
  const stop = (heard: NodeJS.Signals): void => {
    if (signal !== undefined) process.exit(130);
    signal = heard;
    drafter.stop();
  };
  const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
  for (const each of signals) process.on(each, stop);
  try {
    return { ended: await run(), signal };
  } finally {
    await drafter.close();
    for (const each of signals) process.off(each, stop);
  }
};

const drafterFor = async (
  parcel: Parcel,
  { head }: Begun,
  drawings: string,
  queue: string | undefined,
  threads: number,
  count: number,
  err: Paper,
): Promise<(Drafter & { readonly rowsAtATime: number }) | { readonly problem: string }> => {
  const text = JSON.stringify(parcel);
  if (queue === undefined) {
    const rows = rowsAtATime(count, batchLimits.rows);
    return { ...localDrafter(text, Math.min(threads, Math.ceil(count / rows)), drawings), rowsAtATime: rows };
  }
  // What talks to a server is large, and the only part of the program that reaches a network.
  const { queueDrafter } = await import("../batch/queue-drafter.ts");
  const drafter = await queueDrafter(queue, head.run, parcel, text, drawings, (remark) =>
    err.say([remarkLine(remark)]),
  );
  if ("problem" in drafter) return drafter;
  // Drawings come back over the queue, those of a few bodies at a time.
  return { ...drafter, rowsAtATime: rowsAtATime(count, parcel.as.length > 0 ? 5 : batchLimits.rows) };
};

const codeOf = (tally: Tally): number => {
  const { errors, notWorked } = countsOf(tally);
  return errors + notWorked > 0 ? exitCode.errors : exitCode.clean;
};
