// How `chalkline trace` is asked for.
import { Option } from "commander";
import { type Declared, example, type Flags } from "../command.ts";

/** Turn a drawing from elsewhere into a recipe. */
export const traceCommand: Declared = (program, room) => {
  program
    .command("trace")
    .argument("<file>", "a drawing: SVG, DXF, or a table of measured points (CSV)")
    .summary("turn a drawing from elsewhere into a recipe")
    .description(
      "Writes a recipe that draws the pieces of a drawing again, at true size and within 0.1 mm: straight runs as lines, smooth runs as few curves, with notches, grain, folds and texts where the file tells of them. A table has columns x and y, and may have name and kind (corner, curve, notch, drill).",
    )
    .option("-o, --out <recipe>", "the file that the recipe goes to (default: standard output)")
    .option("--overwrite", "write over a recipe that is there already")
    .addOption(
      new Option("--units <units>", "units of the recipe, and of a drawing that does not say its own").choices([
        "mm",
        "cm",
        "in",
      ]),
    )
    .option("--scale <number>", "how many times larger than drawn, such as 2, 1/4 or 50%", "1")
    .addOption(
      new Option("--line <line>", "which line becomes the outline where the drawing tells both")
        .choices(["cutting", "sewing"])
        .default("cutting"),
    )
    .addHelpText(
      "after",
      example(
        "chalkline trace cloak-collar.svg",
        "chalkline trace vest.dxf --out vest.chalk",
        "chalkline trace measured.csv --units in --out yoke.chalk",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      const { trace } = await import("../trace.ts");
      room.finish(
        trace(
          file,
          {
            overwrite: flags.overwrite === true,
            scale: flags.scale!,
            line: flags.line!,
            ...(flags.out !== undefined && { out: flags.out }),
            ...(flags.units !== undefined && { units: flags.units }),
          },
          ...room.papers(),
        ),
      );
    });
};
