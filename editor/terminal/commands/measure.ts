// How `chalkline measure` is asked for.
import { Option } from "commander";
import { type Declared, example, type Flags, given, withGiven } from "../command.ts";
import type { MeasureOptions } from "../measure.ts";

interface MeasureFlags extends Flags {
  readonly byStep?: boolean;
  readonly json?: boolean;
  readonly as?: "csv" | "json" | "text";
}

/** Measure values, edges before and after, and seams. */
export const measureCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("measure").argument("<file>", "a recipe, or - for standard input"))
      .summary("measure values, edges before and after, and seams")
      .description(
        "Prints values, every edge of every piece (before and after, where a piece was copied), seams, and what the steps did.",
      )
      .option("--by-step", "print how long each altered edge was after every step, in mm to the last digit")
      .option("--json", "print one JSON object, in mm and degrees at full precision")
      .addOption(
        new Option(
          "--as <format>",
          "print every edge and place as a table for spreadsheets, the same as --json, or one fact a line",
        ).choices(["csv", "json", "text"]),
      )
      .addHelpText(
        "after",
        example(
          "chalkline measure lobby-coat-swing.chalk",
          "chalkline measure lobby-coat-swing.chalk --by-step",
          "chalkline measure lobby-coat-swing.chalk --as csv > measures.csv",
          "chalkline measure coat.chalk --body cast.csv --person Usher-3 --json",
        ),
      )
      .action(async (file: string, flags: MeasureFlags) => {
        const { measure } = await import("../measure.ts");
        room.finish(await measure(file, { ...given(flags), form: measureForm(flags) }, ...room.papers()));
      }),
};

const measureForm = ({ json, as, byStep }: MeasureFlags): MeasureOptions["form"] => {
  if (json || as === "json") return "json";
  if (as === "csv" || as === "text") return as;
  return byStep ? "by-step" : "long";
};
