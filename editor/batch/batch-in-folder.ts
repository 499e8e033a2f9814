// A batch in its folder: takes the folder, finds out where to go on, drafts what is left, and closes whatever it opened.
import { makeFolder } from "../files/make-folder.ts";
import { TableProblem } from "../files/table-rows.ts";
import { whyRefused } from "../files/why-refused.ts";
import { type Begun, begunAnew, begunIn, drawingsIn, journalIn } from "./begun.ts";
import type { BodiesFile } from "./bodies-file.ts";
import { type ChunkDrafter, drafterFor, type Where } from "./drafter-for.ts";
import { lockFolder } from "./folder-lock.ts";
import { openJournal } from "./journal.ts";
import type { Parcel } from "./parcel.ts";
import { openResults, type Results } from "./results.ts";
import { runBatch } from "./run.ts";
import type { Tally } from "./tally.ts";

/** Where the results go, and who drafts. */
export interface Place extends Where {
  readonly folder: string;
  /** Begin again, whatever lies in the folder. */
  readonly anew: boolean;
}

/** Who hears of a batch on its way. */
export interface Hearer {
  /** Drafting begins, behind so many rows that were done before. */
  begins(done: number): void;
  /** So many rows are done. */
  drafted(done: number): void;
  remark(sentence: string): void;
}

/** How it came out; `here` is the rows that this run drafted, and `ms` how long that took. */
export type BatchEnd =
  | { readonly kind: "refused"; readonly problem: string }
  | { readonly kind: "done before"; readonly tally: Tally }
  | { readonly kind: "finished"; readonly tally: Tally; readonly here: number; readonly ms: number }
  | { readonly kind: "stopped"; readonly done: number; readonly here: number; readonly ms: number }
  | { readonly kind: "failed"; readonly problem: string; readonly done: number };

/** Drafts all bodies into a folder, or those that an earlier run has left, until it is asked to stop. */
export const batchInFolder = async (
  parcel: Parcel,
  bodies: BodiesFile,
  place: Place,
  stop: AbortSignal,
  hearer: Hearer,
): Promise<BatchEnd> => {
  let leave: (() => void) | undefined;
  try {
    makeFolder(place.folder);
    const lock = lockFolder(place.folder);
    if (typeof lock !== "function") return refused(lock.problem);
    leave = lock;
    const begun = place.anew ? begunAnew(place.folder, parcel, bodies) : begunIn(place.folder, parcel, bodies);
    if (typeof begun === "string") return refused(begun);
    if (begun.mark.isFinished) return { kind: "done before", tally: begun.mark.tally };
    return await goneOn({ parcel, bodies, place, begun, stop, hearer });
  } catch (error) {
    return refused(cannotBeWritten(error, place));
  } finally {
    leave?.();
  }
};

const refused = (problem: string): BatchEnd => ({ kind: "refused", problem });

const cannotBeWritten = (error: unknown, { folder }: Place): string => {
  const why = whyRefused(error);
  if (why === undefined) throw error;
  return `${folder} cannot be written: ${why}.`;
};

/** All that is known once it is clear where to begin. */
interface Course {
  readonly parcel: Parcel;
  readonly bodies: BodiesFile;
  readonly place: Place;
  readonly begun: Begun;
  readonly stop: AbortSignal;
  readonly hearer: Hearer;
}

/** Opens the tables and the journal, drafts what is left to do, and closes them again. */
const goneOn = async (course: Course): Promise<BatchEnd> => {
  const { parcel, bodies, place, begun, hearer } = course;
  const results = openResults(place.folder, begun.mark, parcel.headings);
  if ("problem" in results) return refused(results.problem);
  let journal: ReturnType<typeof openJournal> | undefined;
  let done = begun.mark.rows;
  const drafted = (rows: number): void => {
    done = rows;
    hearer.drafted(rows);
  };
  try {
    journal = openJournal(journalIn(place.folder), begun.bytes);
    hearer.begins(done);
    const { run } = begun.head;
    const drafter = await drafterFor(place, run, parcel, drawingsIn(place.folder), bodies.count, hearer.remark);
    if ("problem" in drafter) return refused(drafter.problem);
    return await draftedBy(drafter, course, results, journal, drafted);
  } catch (error) {
    if (error instanceof TableProblem) return refused(`${parcel.table}: ${error.message}`);
    return { kind: "failed", problem: cannotBeWritten(error, place), done };
  } finally {
    results.close();
    journal?.close();
  }
};

const draftedBy = async (
  drafter: ChunkDrafter,
  { parcel, bodies, begun, stop }: Course,
  results: Results,
  journal: ReturnType<typeof openJournal>,
  drafted: (done: number) => void,
): Promise<BatchEnd> => {
  const since = performance.now();
  stop.addEventListener("abort", drafter.stop);
  if (stop.aborted) drafter.stop();
  try {
    const ended = await runBatch(bodies, begun.mark, drafter.rowsAtATime, drafter, results, journal, drafted);
    const { rows: done, tally } = ended.mark;
    if (ended.kind === "failed") return { kind: "failed", problem: ended.problem, done };
    const pace = { here: done - begun.mark.rows, ms: performance.now() - since };
    if (ended.kind === "stopped") return { kind: "stopped", done, ...pace };
    if (!bodies.isUnchanged())
      return refused(
        `${parcel.table} was changed while it was worked, so the results are of no one table. Draft it again with --anew.`,
      );
    results.finish();
    journal.add({ ...ended.mark, isFinished: true });
    return { kind: "finished", tally, ...pace };
  } finally {
    await drafter.close();
  }
};
