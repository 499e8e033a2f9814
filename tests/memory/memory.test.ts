// The memory of an editor that is open all day does not grow with every edit, nor with every file that comes and goes: an hour of
// it here, the whole day of 20,000 edits with `npm run bench -- memory`.
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test, vi } from "vitest";
import { build, workroom } from "../terminal/chalkline.ts";
import { languageServerDay } from "./language-server-day.ts";
import type { Day, HeapAfter } from "./measured-program.ts";
import { pageWorkerDay } from "./page-worker-day.ts";

beforeAll(build);
// A few seconds by itself, and much more where others want the machine too.
vi.setConfig({ testTimeout: 240_000 });

const project = fileURLToPath(new URL("../..", import.meta.url));
const hour = (leaks: boolean): Day => ({
  project,
  folder: workroom(),
  edits: leaks ? 400 : 600,
  every: 200,
  filesEvery: 4,
  told: () => {},
  leaks,
});

// MiB by which it grows all the same, for the engine learns the program: measured 0.9 and 0.8 between these two edits, and in a day
// of 20,000 it comes to an end after a few thousand. A leak is more: every worked vest that is kept 60 to 90 KiB, so 24 MiB in the
// same time; every file that is remembered by its name, though it has gone, 20 KiB, so 6 MiB.
const noise = 3;

const grown = (held: readonly HeapAfter[]): number => held.at(-1)!.mb - held[0]!.mb;

test.each([
  ["the language server", languageServerDay],
  ["the page's worker", pageWorkerDay],
])("%s holds as much behind the six hundredth edit as behind the two hundredth", async (_what, day) => {
  expect(grown(await day(hour(false)))).toBeLessThan(noise);
});

test("a leak would be seen: with one planted, the page's worker grows by more than that in fewer edits", async () => {
  expect(grown(await pageWorkerDay(hour(true)))).toBeGreaterThan(2 * noise);
});
