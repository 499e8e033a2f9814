// How `chalkline tidy` is asked for.

import { type Declared, example } from "../command.ts";

/** Rewrite recipes in the one tidy style. */
export const tidyCommand: Declared = {
  declare: (program, room) =>
    program
      .command("tidy")
      .argument("<file...>", "recipes, folders with recipes, or - for standard input to standard output")
      .summary("rewrite recipes in the one tidy style")
      .description(
        "Rewrites recipes in the one style there is; what they mean never changes. A recipe with lines that cannot be read is left alone.",
      )
      .option("--check", "change nothing; say which recipes are not tidy, and exit with 1")
      .addHelpText("after", example("chalkline tidy recipes", "chalkline tidy --check recipes"))
      .action(async (files: string[], { check }: { check?: boolean }) => {
        const { tidy } = await import("../tidy.ts");
        room.finish(await tidy(files, check === true, ...room.papers()));
      }),
};
