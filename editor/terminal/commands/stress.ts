// How `chalkline stress` is asked for.

import { type Declared, example } from "../command.ts";

interface StressFlags {
  readonly tries: string;
  readonly seed: string;
  readonly bodies?: string;
  readonly root?: string;
  readonly json?: boolean;
}

/** Try a recipe on every size, many bodies and the corners of its ranges. */
export const stressCommand: Declared = {
  declare: (program, room) =>
    program
      .command("stress")
      .argument("<file>", "a recipe")
      .summary("try a recipe on every size, many bodies and the corners of its ranges")
      .description(
        "Works a recipe with its defaults, every size, the corners of its param ranges and a sample of bodies and params, and says which " +
          "combination breaks what, brought down to the fewest values.",
      )
      .option("--tries <count>", "how many sampled combinations", "200")
      .option("--seed <number>", "another sample", "1")
      .option(
        "--bodies <file>",
        "real bodies to try and to vary: a table (CSV) with a column name and one measure a column",
      )
      .option("--root <folder>", "the folder that used recipes have to lie in")
      .option("--json", "print one JSON object, in mm and degrees")
      .addHelpText("after", example("chalkline stress blocks/straight-coat.chalk --tries 2000 --bodies cast.csv"))
      .action(async (file: string, flags: StressFlags) => {
        const { stress } = await import("../stress.ts");
        room.finish(
          await stress(
            file,
            {
              tries: flags.tries,
              seed: flags.seed,
              form: flags.json ? "json" : "long",
              ...(flags.bodies !== undefined && { bodies: flags.bodies }),
              ...(flags.root !== undefined && { root: flags.root }),
            },
            ...room.papers(),
          ),
        );
      }),
};
