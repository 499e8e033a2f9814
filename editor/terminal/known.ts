// The steps and checks that this run of the program knows, and the kernel that works with them: the built-in ones, and those of
// the plugins that are taken in before the command begins (load-plugins.ts), never later.
import { type Kernel, kernel, type Vocabulary } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

export let known: Vocabulary = vocabulary;
export let chalk: Kernel = kernel(vocabulary);

/** Takes more steps and checks in. */
export const learn = ({ steps, checks }: Vocabulary): void => {
  known = { steps: [...known.steps, ...steps], checks: [...known.checks, ...checks] };
  chalk = kernel(known);
};
