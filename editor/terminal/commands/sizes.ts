// How `chalkline sizes` is asked for.

import { type Declared, example } from "../command.ts";

interface SizesFlags {
  readonly root?: string;
  readonly json?: boolean;
}

/** Measure every size and the growth between sizes. */
export const sizesCommand: Declared = {
  declare: (program, room) =>
    program
      .command("sizes")
      .argument("<file>", "a recipe with a size table")
      .summary("measure every size and the growth between sizes")
      .description(
        "Drafts a recipe in each of its sizes, prints what every edge measures and how it grows, and says what grows unevenly.",
      )
      .option("--root <folder>", "the folder that used recipes have to lie in")
      .option("--json", "print one JSON object, in mm")
      .addHelpText("after", example("chalkline sizes blocks/straight-coat.chalk"))
      .action(async (file: string, flags: SizesFlags) => {
        const { sizes } = await import("../sizes.ts");
        const root = flags.root === undefined ? {} : { root: flags.root };
        room.finish(await sizes(file, { ...root, form: flags.json ? "json" : "long" }, ...room.papers()));
      }),
};
