// How `chalkline batch` is asked for.
import { type Declared, each, example, type Flags, given, listed } from "../command.ts";

interface BatchFlags extends Flags {
  readonly bodies: string;
  readonly out: string;
  readonly as?: string;
  readonly paper?: string;
  readonly workers?: string;
  readonly queue?: string;
  readonly anew?: boolean;
}

/** Draft one garment for every body of a table. */
export const batchCommand: Declared = {
  declare: (program, room) =>
    program
      .command("batch")
      .argument("<file>", "a recipe")
      .summary("draft one garment for every body of a table")
      .description(
        "Drafts a recipe for every row of a table of bodies, on all cores: a table of measures with a verdict for each row, a table of " +
          "findings, and drawings in a folder a row if asked. A row that cannot be worked is named, and the others go on. Stopped " +
          "or killed, the same command (without --anew) goes on where it was.",
      )
      .requiredOption("--bodies <file>", "a table (CSV) with a column name and one measure a column, of any length")
      .requiredOption("-o, --out <folder>", "the folder that results go to; made if it is not there")
      .option("--as <formats>", "drawings as well, in these formats, with commas between, as chalkline draw has them")
      .option("--paper <papers>", "papers for pdf, as chalkline draw has them")
      .option("--set <name=value>", "another value for a param, or one measure for all; may stand several times", each)
      .option("--size <name>", "a size of the recipe's size table, for measures that the table does not have")
      .option("--root <folder>", "the folder that recipes may be used from (default: the recipe's own)")
      .option("--workers <count>", "threads that draft at a time (default: one for each core)")
      .option(
        "--queue <url>",
        "let chalkline batch-worker processes draft, through this Redis server: redis://host:port",
      )
      .option("--anew", "begin again, in the place of what lies in the folder")
      .addHelpText(
        "after",
        `${example(
          "chalkline batch lobby-coat-swing.chalk --bodies cast.csv --out out/cast",
          "chalkline batch ushers-vest-fitted.chalk --bodies ushers.csv --out out/ushers --as svg,pdf --paper a0",
        )}
Exit code: 0 all rows clean or with warnings only, 1 rows with errors or not worked, 2 something could not be read or written,
130 stopped by Ctrl-C (129 by a closed terminal, 143 by a shutdown).
`,
      )
      .action(async (file: string, flags: BatchFlags) => {
        const { batch } = await import("../batch.ts");
        const { workers, queue, paper, as, bodies, out } = flags;
        const options = {
          ...given(flags),
          version: room.version,
          bodies,
          out,
          as: as === undefined ? [] : listed(as),
          anew: flags.anew === true,
          ...(paper !== undefined && { paper: listed(paper) }),
          ...(workers !== undefined && { workers }),
          ...(queue !== undefined && { queue }),
        };
        room.finish(await batch(file, options, ...room.papers()));
      }),
  builtInOnly: "batch knows the built-in steps only.",
};
