// What is told of a recipe, one short line for each finding: "3 value-kind".
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import { type Circumstances, kernel, type Outcome } from "../../kernel/kernel.ts";
import type { Sources } from "../../kernel/sources.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

export const { work, parse, forms } = kernel(vocabulary);
/** The built-in checks are not run: for recipes of half a piece. */
export const drafting = kernel({ ...vocabulary, checks: [] });

/** Recipes by name, for `use`. */
export const filesNamed = (files: Readonly<Record<string, string>>): Sources => {
  const texts = new Map(Object.entries(files));
  return {
    read: (path) => {
      const text = texts.get(path);
      if (text !== undefined) return { file: path, text };
      return { problem: { code: "file-missing", message: `There is no file ${path} here.` } };
    },
  };
};

export const drafted = (text: string, circumstances: Circumstances = {}): Outcome =>
  drafting.work({ file: "test.chalk", text }, circumstances);

const inShort = ({ code, where }: Diagnostic): string =>
  `${where.file === "test.chalk" ? "" : `${where.file} `}${where.line} ${code}`;

/** The findings of a recipe whose piece may be unfinished. */
export const told = (text: string, circumstances: Circumstances = {}): string[] =>
  drafted(text, circumstances).findings.map(inShort);

/** Milliseconds of computing that some work takes, whatever else the machine has to do meanwhile. */
export const timed = (work: () => void): number => {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
};
