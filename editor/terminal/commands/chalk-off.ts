// How `chalkline chalk-off` is asked for.
import { chalkOffFormats } from "../chalk-off.ts";
import { type Declared, example, given, type SheetFlags, withGiven, written } from "../command.ts";

/** Mark the pieces straight on the cloth, with tape and chalk and no printer. */
export const chalkOffCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("chalk-off").argument("<file>", "a recipe, or - for standard input"))
      .summary("mark the pieces straight on the cloth, with tape and chalk and no printer")
      .description(
        "Prints a table of points for each piece: how far down from a named place and how far out from the fold or the grain line, to 2 mm or 1/8 in, as few as keep the ruled line near the true one, and how near that is.",
      )
      .option("-o, --out <folder>", "write it into this folder instead")
      .option(
        "--as <formats>",
        `text or csv; with --out any, with commas between: ${chalkOffFormats.join(", ")} (default: all)`,
      )
      .option("--paper <paper>", "with --out: what its pages are laid out on, a4 or letter (default: a4)")
      .addHelpText(
        "after",
        example(
          "chalkline chalk-off lobby-coat-swing.chalk",
          "chalkline chalk-off lobby-coat-swing.chalk --as csv > points.csv",
          "chalkline chalk-off lobby-coat-swing.chalk --out out/chalk --as pdf,csv",
        ),
      )
      .action(async (file: string, flags: SheetFlags) => {
        const { chalkOff } = await import("../chalk-off.ts");
        room.finish(await chalkOff(file, { ...given(flags), ...written(flags) }, ...room.papers()));
      }),
};
