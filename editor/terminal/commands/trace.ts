// How `chalkline trace` is asked for.
import { Option } from "commander";
import type { Units } from "../../../kernel/working.ts";
import { type DrawingKind, drawingKinds } from "../../bring-in/drawing-kinds.ts";
import type { OutlineLine } from "../../bring-in/pieces-on.ts";
import { type Declared, example } from "../command.ts";

interface TraceFlags {
  readonly out?: string;
  readonly overwrite?: boolean;
  readonly units?: Units;
  readonly scale: string;
  readonly as?: DrawingKind;
  readonly line?: OutlineLine;
  readonly allowance?: string;
}

/** Turn a drawing from elsewhere into a recipe. */
export const traceCommand: Declared = {
  declare: (program, room) =>
    program
      .command("trace")
      .argument("<file>", "a drawing: SVG, DXF, or a table of measured points (CSV); - for standard input")
      .summary("turn a drawing from elsewhere into a recipe")
      .description(
        "Writes a recipe that draws the pieces of a drawing again, at true size and within 0.1 mm: straight runs as lines, smooth runs as few curves, with notches, grain, folds and texts where the file tells of them. Where it draws cutting and sewing lines, each edge gets the allowance that lies between them. A table has columns x and y, and may have name and kind (corner, curve, notch, drill).",
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
        new Option("--as <format>", "what kind of file it is, where neither its name nor its beginning says").choices(
          drawingKinds,
        ),
      )
      .addOption(
        new Option(
          "--line <line>",
          "which line becomes the outline where the drawing tells both; round a sewing line the allowances are measured (default: sewing)",
        ).choices(["cutting", "sewing"]),
      )
      .option("--allowance <width>", "the allowance that the drawn cutting line has, such as 1.5cm: it is stripped off")
      .addHelpText(
        "after",
        example(
          "chalkline trace cloak-collar.svg",
          "chalkline trace vest.dxf --out vest.chalk",
          "chalkline trace vest.dxf --allowance 1.5cm --out vest.chalk",
          "chalkline trace measured.csv --units in --out yoke.chalk",
        ),
      )
      .action(async (file: string, flags: TraceFlags) => {
        const { trace } = await import("../trace.ts");
        room.finish(
          await trace(
            file,
            {
              overwrite: flags.overwrite === true,
              scale: flags.scale,
              ...(flags.line !== undefined && { line: flags.line }),
              ...(flags.allowance !== undefined && { allowance: flags.allowance }),
              ...(flags.as !== undefined && { as: flags.as }),
              ...(flags.out !== undefined && { out: flags.out }),
              ...(flags.units !== undefined && { units: flags.units }),
            },
            ...room.papers(),
          ),
        );
      }),
};
