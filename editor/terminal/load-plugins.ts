// Takes in steps and checks from outside before a command begins: from the files that --with names, and from those that the user
// trusts. Nothing else is ever loaded, whatever lies beside a recipe or in it.
import { realpathSync } from "node:fs";
import type { Vocabulary } from "../../kernel/kernel.ts";
import { kit } from "../../kernel/kit.ts";
import { type StepsTaken, takenSteps, wordsOf } from "../../kernel/taken-steps.ts";
import { readText } from "../files/read-text.ts";
import { readTrusted, sha256Of, type Trusted, trustedFile } from "../files/trusted.ts";
import { importText } from "./import-text.ts";
import { known, learn } from "./known.ts";
import type { Paper } from "./paper.ts";
import { remarkLine } from "./told.ts";

/** Steps that were asked for and cannot be taken in: the command is not begun without them. */
export class NotTakenIn extends Error {}

/**
 * Takes in the files that --with named and those that are trusted, and says what was left out. A command that works with the
 * built-in steps only says so in `builtInOnly`, and gets none.
 */
export const takeIn = async (named: readonly string[], builtInOnly: string | undefined, err: Paper): Promise<void> => {
  if (builtInOnly === undefined) {
    const taken = await loadPlugins(named, trustedFile());
    if ("problem" in taken) throw new NotTakenIn(taken.problem);
    err.say(taken.remarks.map(remarkLine));
  } else if (named.length > 0) throw new NotTakenIn(`${builtInOnly} --with does nothing here.`);
};

/** A file of steps as it was read: what is run is this text and nothing else. */
export interface PluginFile {
  /** As the user wrote it. */
  readonly called: string;
  /** Its real path. */
  readonly path: string;
  readonly text: string;
  readonly sha256: string;
}

/** The file at a path, or one sentence that says why it is not read. */
export const pluginFile = (path: string): PluginFile | { readonly problem: string } => {
  const read = readText(path, path);
  if ("problem" in read) return { problem: read.problem.message };
  return { called: path, path: realpathSync(path), text: read.text, sha256: sha256Of(read.text) };
};

/** The steps and checks of a file. It is run for that, with all rights of the user. */
export const stepsOf = async ({ called, text }: PluginFile, beside: Vocabulary): Promise<StepsTaken> => {
  let given: unknown;
  try {
    // By its text: so no more runs than what was read, shown and pinned, and it can bring no other file in that was not.
    const module = await importText(text);
    if (typeof module.default !== "function")
      return {
        problem: `${called} is no file of steps: its default export has to be a function that is given the kit.`,
      };
    given = await (module.default as (given: typeof kit) => unknown)(kit);
  } catch (error) {
    return { problem: `${called} could not be loaded: ${wordsOf(error).replaceAll(/data:\S+/g, "it")}` };
  }
  return takenSteps(given, beside, called);
};

/**
 * Takes in what is trusted, then what is named here; gives remarks about what was left out, or the sentence that ends the command.
 */
const loadPlugins = async (
  named: readonly string[],
  trustedIn: string | undefined,
): Promise<{ readonly remarks: readonly string[] } | { readonly problem: string }> => {
  const remarks: string[] = [];
  const loaded = new Set<string>();
  const trusted = readTrusted(trustedIn);
  if ("problem" in trusted) remarks.push(`${trusted.problem.message} No trusted steps are loaded.`);
  else
    for (const each of trusted) {
      const file = unchanged(each);
      const more = "problem" in file ? file : await stepsOf(file, known);
      if ("problem" in more) remarks.push(`${more.problem} Its steps are not loaded.`);
      else {
        learn(more);
        loaded.add(each.path);
      }
    }
  for (const path of named) {
    const file = pluginFile(path);
    if ("problem" in file) return file;
    if (loaded.has(file.path)) continue;
    loaded.add(file.path);
    const more = await stepsOf(file, known);
    if ("problem" in more) return more;
    learn(more);
  }
  return { remarks };
};

/** A trusted file as long as it is what it was. */
const unchanged = ({ path, sha256 }: Trusted): PluginFile | { readonly problem: string } => {
  const file = pluginFile(path);
  if ("problem" in file || file.sha256 === sha256) return file;
  return {
    problem: `${path} has changed since you trusted it: look at it, then say chalkline trust ${path} again, or chalkline trust --remove ${path}.`,
  };
};
