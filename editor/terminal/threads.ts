// How many threads a command drafts with.
import { availableParallelism } from "node:os";

const mostThreads = 256;

/** What --workers says; one for each core where it is not said. */
export const threadsOf = (written: string | undefined): number | { readonly problem: string } => {
  if (written === undefined) return availableParallelism();
  const count = Number(written);
  if (/^\d+$/.test(written) && count >= 1 && count <= mostThreads) return count;
  return { problem: `--workers takes a whole number from 1 to ${mostThreads}, and this is ${written}.` };
};
