// How `chalkline draw` is asked for.

import { type Declared, example, type Flags, given, listed, withGiven } from "../command.ts";
import { draw, formatNames, paperNames } from "../draw.ts";
import { exitCode, refusal } from "../told.ts";

interface DrawFlags extends Flags {
  readonly out?: string;
  readonly as: string;
  readonly paper?: string;
  readonly nestAt?: string;
}

/** Draw the pieces for paper, cutters, plotters and cutting rooms. */
export const drawCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("draw").argument("<file>", "a recipe, or - for standard input"))
      .summary("draw the pieces for paper, cutters, plotters and cutting rooms")
      .description(
        "Draws every piece, and one sheet with all of them, true to size. Formats: svg (pieces and sheet), layers (SVG by layers, for cutters and projectors), pdf (paper of any size, tiled where it is small), dxf (for cutting rooms, after ASTM D6673), laser (plain DXF), hpgl (pen plotters).",
      )
      // Not a required option of the library's: it would be missed before another that is mistyped is named.
      .option("-o, --out <folder>", "the folder that the drawings go to (required); made if it is not there")
      .option("--as <formats>", `formats, with commas between: ${formatNames.join(", ")}`, "svg")
      .option("--paper <papers>", `papers for pdf, with commas between: ${paperNames.join(", ")} (default: a4)`)
      .option("--nest-at <name>", "with --size all: the place or edge at which the sizes lie on one another")
      .addHelpText(
        "after",
        example(
          "chalkline draw lobby-coat-swing.chalk --out out/lobby-coat-swing",
          "chalkline draw lobby-coat-swing.chalk --out out/paper --as pdf --paper a4,roll-36in",
          "chalkline draw blocks/straight-coat.chalk --out out/nest --as svg,pdf --size all",
        ),
      )
      .action(async (file: string, flags: DrawFlags) => {
        const { nestAt, out } = flags;
        if (out === undefined) {
          room
            .papers()[1]
            .say(refusal("There is nowhere to draw to.", "Write --out FOLDER: it is made if it is not there."));
          room.finish(exitCode.unreadable);
          return;
        }
        const papers = flags.paper === undefined ? {} : { paper: listed(flags.paper) };
        const more = { out, as: listed(flags.as), ...papers };
        room.finish(
          await draw(file, { ...given(flags), ...more, ...(nestAt !== undefined && { nestAt }) }, ...room.papers()),
        );
      }),
};
