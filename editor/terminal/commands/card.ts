// How `chalkline card` is asked for.
import { cardFormats } from "../card.ts";
import { type Declared, example, given, type SheetFlags, withGiven, written } from "../command.ts";

/** Tell a workroom all of a garment on one page. */
export const cardCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("card").argument("<file>", "a recipe, or - for standard input"))
      .summary("tell a workroom all of a garment on one page")
      .description(
        "Prints the cutting card: what it was drafted with, cloth, pieces and how to cut them, seams in the order of the recipe, finished measures, alterations and cautions.",
      )
      .option("-o, --out <folder>", "write it into this folder instead: as text, and as a page in SVG and PDF")
      .option("--as <formats>", `with --out: formats, with commas between: ${cardFormats.join(", ")} (default: all)`)
      .option("--paper <paper>", "with --out: what its page is laid out on, a4 or letter (default: a4)")
      .addHelpText(
        "after",
        example(
          "chalkline card lobby-coat-swing.chalk",
          "chalkline card lobby-coat-swing.chalk --out out/card --as pdf --paper letter",
        ),
      )
      .action(async (file: string, flags: SheetFlags) => {
        const { card } = await import("../card.ts");
        room.finish(await card(file, { ...given(flags), ...written(flags) }, ...room.papers()));
      }),
};
