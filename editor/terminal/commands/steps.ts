// How `chalkline steps` is asked for.

import { type Declared, example } from "../command.ts";
import { steps } from "../steps.ts";

/** Explain steps, statements, functions and checks. */
export const stepsCommand: Declared = {
  declare: (program, room) =>
    program
      .command("steps")
      .argument("[name]", "a step, statement, function or check")
      .summary("explain steps, statements, functions and checks")
      .description(
        "Prints the reference: a list of all that a recipe may say, or one entry with its form and an example.",
      )
      .addHelpText("after", example("chalkline steps", "chalkline steps spread-from", "chalkline steps hem-square"))
      .action(async (name: string | undefined) => {
        room.finish(steps(name, ...room.papers()));
      }),
};
