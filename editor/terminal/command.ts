// What declarations of commands share: how a command is told apart, the options that several of them take, and what they are given.
import { type Command, InvalidArgumentError } from "commander";
import type { Paper } from "./paper.ts";

/** What a command finds when it is asked for. */
export interface Room {
  /** All that was written behind `chalkline`. */
  readonly args: readonly string[];
  readonly version: string;
  /** Where it speaks: to standard output, and to the other stream. */
  papers(): [Paper, Paper];
  /** Ends the command with an exit code. */
  finish(code: number): void;
}

/** A command as its file declares it. */
export interface Declared {
  /** Its arguments, options and help, and what it calls. It loads what it calls only when it is asked for. */
  declare(program: Command, room: Room): Command;
  /** Why steps from outside do not come into it, as a sentence; every other command takes them in before it begins. */
  readonly builtInOnly?: string;
}

/** The options of all that work a recipe, as commander reads them. */
export interface Flags {
  readonly set?: readonly string[];
  readonly body?: string;
  readonly person?: string;
  readonly size?: string;
  readonly root?: string;
}

/** The options of a sheet that is printed, or written into a folder. */
export interface SheetFlags extends Flags {
  readonly as?: string;
  readonly out?: string;
  readonly paper?: string;
}

/** The command with the options of all that work a recipe. */
export const withGiven = (command: Command): Command =>
  command
    .option("--set <name=value>", "another value for a param or measure; may stand several times", each)
    .option("--body <file>", "body measures, as JSON or as a table (CSV)")
    .option("--person <name>", "which row of the table")
    .option("--size <name>", "a size of the recipe's size table")
    .option("--root <folder>", "the folder that recipes may be used from (default: the recipe's own)");

/** What was given for the recipe, of all options. */
export const given = ({ set = [], body, person, size, root }: Flags) => ({
  set,
  ...(body !== undefined && { body }),
  ...(person !== undefined && { person }),
  ...(size !== undefined && { size }),
  ...(root !== undefined && { root }),
});

/** The formats, the paper and the folder of a written sheet. */
export const written = ({ as, out, paper }: SheetFlags) => ({
  as: as === undefined ? [] : listed(as),
  ...(out !== undefined && { out }),
  ...(paper !== undefined && { paper: paper.trim().toLowerCase() }),
});

/** "svg, pdf" as a list. */
export const listed = (written: string): string[] =>
  written
    .split(",")
    .map((part) => part.trim().toLowerCase())
    .filter((part) => part !== "");

/** Lines to try, under the help of a command. */
export const example = (...lines: string[]): string =>
  `\nFor example:\n${lines.map((line) => `  ${line}`).join("\n")}\n`;

/** Gathers the values of --set. */
export const each = (value: string, before: readonly string[] = []): string[] => {
  if (!value.includes("=")) throw new InvalidArgumentError("It takes NAME=VALUE, such as flare=12cm.");
  return [...before, value];
};
