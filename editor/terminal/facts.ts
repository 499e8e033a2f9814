// chalkline facts: a recipe's text with the facts of its garment underneath, one a line, for git to compare.
import { basename } from "node:path";
import { factsText } from "../../kernel/report/facts-text.ts";
import { readable } from "../../kernel/report/readable.ts";
import type { Sources } from "../../kernel/sources.ts";
import { findRecipes } from "../files/find-recipes.ts";
import { type OpenedRecipe, openRecipe } from "../files/recipe-files.ts";
import { chalk } from "./known.ts";
import type { Paper } from "./paper.ts";
import { exitCode } from "./told.ts";

/** Prints text and facts. That a file cannot be read, or a recipe not be worked, is a fact too: git would stop at a failure. */
export const facts = (path: string, out: Paper): number => {
  const opened = openRecipe(path, undefined);
  if ("problem" in opened) {
    out.print(`# ${readable(opened.problem.message.replaceAll(path, basename(path)))}\n`);
    return exitCode.clean;
  }
  const { source } = opened;
  const outcome = chalk.work(source, { sources: sourcesFor(path, opened) });
  // Of an old text git does not say which others it used then; so that no line differs for that alone, it is said every time.
  const note = outcome.uses.size === 0 ? "" : ", with used recipes as they lie here now";
  const text = source.text === "" || source.text.endsWith("\n") ? source.text : `${source.text}\n`;
  out.print(`${text}\n# The garment, as chalkline measures it${note}\n${factsText(outcome)}`);
  return exitCode.clean;
};

/**
 * Git hands over an old text as a file of its own, far from the recipes that it uses: they are read from beside the one recipe of
 * the same name in the folder that git runs in.
 */
const sourcesFor = (path: string, { source, sources }: OpenedRecipe): Sources => {
  if (!/[/\\]git-blob-[^/\\]+[/\\]/.test(path)) return sources;
  const [home, another] = findRecipes(".").filter((each) => basename(each) === basename(path));
  if (home === undefined || another !== undefined) return sources;
  const beside = openRecipe(home, undefined);
  if ("problem" in beside) return sources;
  return { read: (used, from) => beside.sources.read(used, from === source.file ? beside.source.file : from) };
};
