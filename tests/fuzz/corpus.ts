// Recipes and drawings that once went wrong, or stand for a danger: each says in its first lines what it guards, and is run through
// every target on every run.
import { readdirSync, readFileSync } from "node:fs";
import { extname } from "node:path";
import { drawingKinds } from "../../editor/bring-in/drawing-kinds.ts";
import type { Kind } from "./target.ts";

/** A text of the corpus. */
export interface Kept {
  readonly file: string;
  readonly kind: Kind;
  /** What went wrong, or what it guards; empty where it does not say. */
  readonly story: string;
  /** The kinds of fault that it still shows, said in its second line: `# open: tidy: a comment is lost; hang: it does not end`. */
  readonly open: ReadonlySet<string>;
  readonly text: string;
}

const folder = new URL("corpus/", import.meta.url);

/** The whole corpus, by name. */
export const corpus = (): Kept[] =>
  readdirSync(folder)
    .sort()
    .map((file) => {
      const written = readFileSync(new URL(file, folder), "utf8");
      const [first = "", second = ""] = written.split("\n");
      const kind = drawingKinds.find((each) => extname(file) === `.${each}`) ?? "recipe";
      const open = /^# open: (.*)$/.exec(second)?.[1]?.split("; ") ?? [];
      // A DXF file has its comments behind the group code 999, and a table has none, so that there it is taken off.
      const story = /(?:went wrong|guards): (.*?)(?: -->)?$/.exec(kind === "dxf" ? second : first)?.[0] ?? "";
      const text = kind === "csv" ? written.slice(first.length + 1) : written;
      return { file, kind, story, open: new Set(open), text };
    });
