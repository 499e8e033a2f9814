// How `chalkline git-setup` is asked for.
import { type Declared, example } from "../command.ts";

/** Let git show garment facts under the text of recipes. */
export const gitSetupCommand: Declared = {
  declare: (program, room) =>
    program
      .command("git-setup")
      .argument("[folder]", "a folder of the clone", ".")
      .summary("let git show garment facts under the text of recipes")
      .description(
        "Writes the settings of one clone that let git diff, git show and git log -p tell what changed in the garment, and prints how to undo it.",
      )
      .addHelpText("after", example("chalkline git-setup", "git diff recipes/lobby-coat-swing.chalk"))
      .action(async (folder: string) => {
        const { gitSetup } = await import("../git-setup.ts");
        room.finish(gitSetup(folder, [process.execPath, process.argv[1] ?? "chalkline"], ...room.papers()));
      }),
};
