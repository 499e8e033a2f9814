// How `chalkline manual` is asked for.
import { manual } from "../../../kernel/manual.ts";
import { type Declared, example } from "../command.ts";
import { known } from "../known.ts";

/** Print the whole manual as Markdown. */
export const manualCommand: Declared = {
  declare: (program, room) =>
    program
      .command("manual")
      .summary("print the whole manual as Markdown")
      .description("Prints the whole manual as Markdown, made from the declarations of this very program.")
      .addHelpText("after", example("chalkline manual > MANUAL.md"))
      .action(() => {
        room.papers()[0].print(manual(known));
      }),
};
