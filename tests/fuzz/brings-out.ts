// Small recipes that each bring out one finding, in a file for each word that the line at fault begins with: what a slip at that
// step or statement looks like, as short as it can be.
import { readdirSync, readFileSync } from "node:fs";

/** A recipe with the code of the finding that it brings out. */
export interface BringsOut {
  readonly file: string;
  readonly code: string;
  readonly text: string;
}

const folder = new URL("brings-out/", import.meta.url);

/** All of them; above each stands `== ` and its code, and what stands above the first is for people. */
export const bringsOut = (): BringsOut[] =>
  readdirSync(folder)
    .sort()
    .flatMap((file) =>
      readFileSync(new URL(file, folder), "utf8")
        .split(/^== /m)
        .slice(1)
        .map((entry) => {
          const head = entry.indexOf("\n");
          return { file, code: entry.slice(0, head), text: entry.slice(head + 1) };
        }),
    );
