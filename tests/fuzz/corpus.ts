// Recipes that once went wrong: each begins with a comment that says how, and is run through every target on every run.
import { readdirSync, readFileSync } from "node:fs";

/** A recipe of the corpus. */
export interface Kept {
  readonly file: string;
  /** The first comment: what went wrong. */
  readonly story: string;
  /** The kinds of fault that it still shows, said in its second line: `# open: tidy: a comment is lost; hang: it does not end`. */
  readonly open: ReadonlySet<string>;
  readonly text: string;
}

const folder = new URL("corpus/", import.meta.url);

/** The whole corpus, by name. */
export const corpus = (): Kept[] =>
  readdirSync(folder)
    .filter((file) => file.endsWith(".chalk"))
    .sort()
    .map((file) => {
      const text = readFileSync(new URL(file, folder), "utf8");
      const [first = "", second = ""] = text.split("\n");
      const open = /^# open: (.*)$/.exec(second)?.[1]?.split("; ") ?? [];
      return { file, story: first.replace(/^# /, ""), open: new Set(open), text };
    });
