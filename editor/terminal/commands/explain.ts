// How `chalkline explain` is asked for.
import { type Declared, example, type Flags, given, withGiven } from "../command.ts";

interface ExplainFlags extends Flags {
  readonly json?: boolean;
}

/** Tell the life of an edge: which lines drafted and changed it. */
export const explainCommand: Declared = {
  declare: (program, room) =>
    withGiven(
      program
        .command("explain")
        .argument("<file>", "a recipe, or - for standard input")
        .argument("<edge>", "a piece and an edge of it, such as back.hem"),
    )
      .summary("tell the life of an edge: which lines drafted and changed it")
      .description("Prints every line that drafted or changed an edge, and how long it was after each.")
      .option("--json", "print one JSON object, in mm")
      .addHelpText("after", example("chalkline explain lobby-coat-swing.chalk back.hem"))
      .action(async (file: string, edge: string, flags: ExplainFlags) => {
        const { explain } = await import("../explain.ts");
        room.finish(
          await explain(file, edge, { ...given(flags), form: flags.json ? "json" : "long" }, ...room.papers()),
        );
      }),
};
