// The recipes among which a name is looked for: the opened one, those it uses, and others that the editor knows of.
import { textWritten } from "../../../grammar/line-parser.ts";
import type { Kernel } from "../../../kernel/kernel.ts";
import type { Source } from "../../../kernel/sources.ts";
import type { WorkedText } from "../worked-text.ts";
import { type Written, type WrittenLine, written } from "../written.ts";
import type { WrittenWord } from "../written-word.ts";
import { type Blocks, blocksOf } from "./blocks.ts";

/** One recipe with its names. */
export interface NamedRecipe {
  readonly source: Source;
  readonly written: Written;
  readonly blocks: Blocks;
  /** Its `use` lines, and the file that each leads to; undefined where it leads to none that can be read. */
  readonly uses: ReadonlyMap<WrittenLine, string | undefined>;
}

/** Recipes by the names of their files. */
export interface Recipes {
  readonly opened: NamedRecipe;
  readonly all: ReadonlyMap<string, NamedRecipe>;
}

/** The opened recipe with all that it uses, and these others with all that they use. */
export const recipesAround = (worked: WorkedText, others: readonly Source[] = []): Recipes => {
  // The opened text stands, whatever else is said of its file.
  const texts = new Map([...others, worked.source].map((source) => [source.file, source]));
  const all = new Map<string, NamedRecipe>();
  const left = [...texts.values()];
  for (let source = left.pop(); source; source = left.pop()) {
    if (all.has(source.file)) continue;
    const read = readNames(worked, source);
    const uses = new Map<WrittenLine, string | undefined>();
    for (const line of read.written.lines) {
      const path = pathWritten(line);
      if (!path) continue;
      const found = worked.sources.read(textWritten(path.text), source.file);
      uses.set(line, "problem" in found ? undefined : found.file);
      if (!("problem" in found)) left.push(texts.get(found.file) ?? found);
    }
    all.set(source.file, { source, ...read, uses });
  }
  return { opened: all.get(worked.source.file)!, all };
};

/** The text that says which file a `use` line means, quotes included. */
export const pathWritten = ({ verb, isEntry, words }: WrittenLine): WrittenWord | undefined => {
  const [, path] = words;
  return verb === "use" && !isEntry && path?.means === "Text" ? path : undefined;
};

type ReadNames = Pick<NamedRecipe, "written" | "blocks">;

const readNames = (worked: WorkedText, source: Source): ReadNames => {
  const files = known.get(worked.kernel) ?? new Map<string, ReadNames & { text: string }>();
  known.set(worked.kernel, files);
  const before = files.get(source.file);
  if (before?.text === source.text) return before;
  // What is written depends on the text and the kernel alone, whatever came of working another recipe.
  const read = written(source === worked.source ? worked : { ...worked, source });
  const now = { text: source.text, written: read, blocks: blocksOf(source.file, read) };
  files.set(source.file, now);
  return now;
};

/** For each file the text that was read last: used recipes are asked about again and again, and seldom change. */
const known = new WeakMap<Kernel, Map<string, ReadNames & { text: string }>>();

/** The files that a recipe uses, and those that they use; its own file first. */
export const usedBy = ({ all }: Recipes, file: string): NamedRecipe[] => {
  const files = new Set([file]);
  for (const each of files)
    for (const used of all.get(each)?.uses.values() ?? []) if (used !== undefined) files.add(used);
  return [...files].flatMap((each) => all.get(each) ?? []);
};
