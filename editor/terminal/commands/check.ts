// How `chalkline check` is asked for.
import { Option } from "commander";
import { check } from "../check.ts";
import { type Declared, example, type Flags, given, withGiven } from "../command.ts";

interface CheckFlags extends Flags {
  readonly json?: boolean;
  readonly format: "long" | "short";
}

/** Look for mistakes and judge what fits. */
export const checkCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("check").argument("<file...>", "recipes, folders with recipes, or - for standard input"))
      .summary("look for mistakes and judge what fits")
      .description("Works recipes and prints every finding with the line it is about, then a verdict for each recipe.")
      .option("--json", "print one JSON object instead")
      .addOption(
        new Option("--format <form>", "findings with excerpts, or one line each for editors")
          .choices(["long", "short"])
          .default("long"),
      )
      .addHelpText(
        "after",
        example(
          "chalkline check recipes",
          "chalkline check lobby-coat-swing.chalk --set flare=12cm",
          "chalkline check --format short -",
        ),
      )
      .action(async (files: string[], flags: CheckFlags) => {
        room.finish(
          await check(files, { ...given(flags), form: flags.json ? "json" : flags.format }, ...room.papers()),
        );
      }),
};
