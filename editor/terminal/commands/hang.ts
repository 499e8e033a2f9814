// How `chalkline hang` is asked for.

import { type Declared, example, type Flags, given, withGiven } from "../command.ts";

interface HangFlags extends Flags {
  readonly out?: string;
  readonly json?: boolean;
}

/** Show where fullness hangs and folds fall. */
export const hangCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("hang").argument("<file>", "a recipe, or - for standard input"))
      .summary("show where fullness hangs and folds fall")
      .description(
        "Hangs every piece that has a hem from its neck and shoulder, waist or cap, and says where its fullness falls, how much of it, and into how many folds. Fold counts are indicative.",
      )
      .option("-o, --out <folder>", "also draw it, from both sides and from below, as hanging.svg in this folder")
      .option("--json", "print one JSON object, in mm")
      .addHelpText(
        "after",
        example(
          "chalkline hang lobby-coat-swing.chalk",
          "chalkline hang lobby-coat-swing.chalk --out out/lobby-coat-swing",
        ),
      )
      .action(async (file: string, flags: HangFlags) => {
        const { hang } = await import("../hang.ts");
        const out = flags.out === undefined ? {} : { out: flags.out };
        room.finish(
          await hang(file, { ...given(flags), ...out, form: flags.json ? "json" : "long" }, ...room.papers()),
        );
      }),
};
