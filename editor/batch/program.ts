// Which program drafts, to the last letter: results of two programs are never mixed, in a folder or over a queue.
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

/** "0.1.0 4f2a91c": the version, and what tells two builds of it apart. */
export const programNamed = (version: string): string => {
  // The build names every part after what is in it, so that this one file, which names its parts, stands for all that drafts.
  const text = readFileSync(new URL("batch-thread.js", import.meta.url));
  return `${version} ${createHash("sha256").update(text).digest("hex").slice(0, 7)}`;
};
