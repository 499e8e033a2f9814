// The whole day of 20,000 edits: what the language server and the page's worker hold in the course of it.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { languageServerDay } from "./language-server-day.ts";
import type { HeapAfter } from "./measured-program.ts";
import { pageWorkerDay } from "./page-worker-day.ts";

/** What each of the two held after every 2,000 edits, MiB. */
export const wholeDay = async (
  project: string,
  edits: number,
): Promise<{ readonly languageServer: HeapAfter[]; readonly pageWorker: HeapAfter[] }> => {
  const day = async (what: string, work: typeof pageWorkerDay): Promise<HeapAfter[]> => {
    const folder = mkdtempSync(join(tmpdir(), "chalkline-day-"));
    try {
      return await work({
        project,
        folder,
        edits,
        every: edits / 10,
        filesEvery: 20,
        told: telling(what),
        leaks: false,
      });
    } finally {
      rmSync(folder, { recursive: true });
    }
  };
  return {
    languageServer: await day("language server", languageServerDay),
    pageWorker: await day("page's worker", pageWorkerDay),
  };
};

const telling =
  (what: string) =>
  ({ edits, mb }: HeapAfter): void =>
    console.log(`${what}, ${edits} edits: ${mb.toFixed(2)} MiB`);
