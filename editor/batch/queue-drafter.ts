// Drafts through a queue: chunks become jobs that workers anywhere take, and each answer is taken back once. Loaded only where a
// queue is asked for.
import { nameIn, type TableRow } from "../files/table-rows.ts";
import { NotAsWanted } from "./as-wanted.ts";
import { type Answer, answerIn, chunkText, type RowAnswer } from "./chunk.ts";
import type { Parcel } from "./parcel.ts";
import { recipeDigest, unpackedAnswer, unreachable } from "./queue.ts";
import { queueJobs } from "./queue-jobs.ts";
import { passwordVariable, redisAddress } from "./redis-address.ts";
import type { Drafter } from "./run.ts";
import { DrawingsNotSaved, saveDrawings } from "./save-drawings.ts";

// Chunks in the queue at a time: enough for some dozens of cores, few enough to hold in memory when one is slow.
const most = 64;

// A chunk whose answer is no answer, or whose workers died too often, is handed out again so many times.
const tries = 5;

/** Hands chunks of the batch `run` to workers; drawings that come back are saved into a folder. `tell` hears what a person should know. */
export const queueDrafter = async (
  written: string,
  run: string,
  parcel: Parcel,
  folder: string,
  tell: (remark: string) => void,
): Promise<Drafter | { readonly problem: string }> => {
  const address = redisAddress(written, process.env[passwordVariable]);
  if ("problem" in address) return address;
  const problem = await unreachable(address);
  if (problem !== undefined) return { problem };

  const jobs = queueJobs(address, parcel.program, tell);
  const parcelText = JSON.stringify(parcel);
  const common = { program: parcel.program, recipe: recipeDigest(parcelText), parcel: parcelText };
  let stop = (): void => {};
  const stopped = new Promise<Answer>((resolve) => {
    stop = () => resolve({ stopped: true });
  });

  const drafted = async (rows: readonly TableRow[]): Promise<Answer> => {
    const numbers = rows.map(({ row }) => row);
    const id = `${run}-${numbers[0]}-${numbers.length}`;
    let reason = "";
    for (let attempt = 0; attempt < tries; attempt += 1) {
      const outcome = await jobs.outcomeOf(id, { ...common, chunk: chunkText(rows) });
      try {
        if ("answer" in outcome) {
          const answer = answerIn(unpackedAnswer(outcome.answer), numbers, parcel.headings.length);
          return "rows" in answer
            ? { rows: answer.rows.map((each, index) => saved(each, rows[index]!, folder)) }
            : answer;
        }
        reason = outcome.failed;
      } catch (error) {
        if (error instanceof DrawingsNotSaved) return { problem: error.message };
        if (!(error instanceof NotAsWanted)) throw error;
        reason = error.message;
      }
    }
    return {
      problem: `Rows ${numbers[0]} to ${numbers.at(-1)} came back from the queue without an answer ${tries} times: ${reason}.`,
    };
  };

  return {
    most,
    draft: (rows) => Promise.race([drafted(rows), stopped]),
    stop: () => stop(),
    close: () => {
      stop();
      return jobs.close();
    },
  };
};

/** An answer whose drawings are where they belong. The name is that of the table, whatever the worker calls the body. */
const saved = (answer: RowAnswer, row: TableRow, folder: string): RowAnswer => {
  const name = nameIn(row);
  const files = answer.files.map((file) => ({ name: file.name, content: Buffer.from(file.base64, "base64") }));
  saveDrawings(folder, row.row, name, files);
  return { ...answer, name, files: [] };
};
