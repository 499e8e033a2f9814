// How `chalkline facts` is asked for.
import { type Declared, example } from "../command.ts";

/** Print a recipe with the facts of its garment, one a line, for git. */
export const factsCommand: Declared = {
  declare: (program, room) =>
    program
      .command("facts")
      .argument("<file>", "a recipe")
      .summary("print a recipe with the facts of its garment, one a line, for git")
      .description(
        "Prints a recipe's text and under it the facts of its garment, one a line and rounded, so that git can compare them; git-setup tells git to.",
      )
      .addHelpText("after", example("chalkline facts recipes/lobby-coat-swing.chalk"))
      .action(async (file: string) => {
        const { facts } = await import("../facts.ts");
        room.finish(facts(file, room.papers()[0]));
      }),
};
