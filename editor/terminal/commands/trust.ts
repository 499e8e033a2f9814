// How `chalkline trust` is asked for.
import { type Declared, example } from "../command.ts";

/** Steps of one's own or of a colleague, taken in from now on. */
export const trustCommand: Declared = {
  declare: (program, room) =>
    program
      .command("trust")
      .argument("[file]", "a file of steps, such as eyelets.mjs")
      .summary("take in steps from a file of yours, from now on")
      .description(
        "Shows what a file of steps and checks is and pins it by its content: every command knows its steps from then on, until a " +
          "letter of it changes. Recipes never bring steps in by themselves. For one command only, write --with FILE instead.",
      )
      .option("--list", "list the files that are trusted")
      .option("--remove <file>", "trust a file no longer")
      .addHelpText(
        "after",
        example("chalkline trust eyelets.mjs", "chalkline trust --list", "chalkline trust --remove eyelets.mjs"),
      )
      .action(async (file: string | undefined, { list, remove }: { list?: boolean; remove?: string }) => {
        const { distrust, trust, trustedList } = await import("../trust.ts");
        const [out, err] = room.papers();
        const asked = [file, list, remove].filter((each) => each !== undefined).length;
        if (asked !== 1) {
          const { exitCode, refusal } = await import("../told.ts");
          err.say(refusal("Name one file to trust, or say --list, or --remove FILE.", "chalkline trust eyelets.mjs"));
          room.finish(exitCode.unreadable);
        } else if (list) room.finish(trustedList(out, err));
        else if (remove !== undefined) room.finish(distrust(remove, out, err));
        else room.finish(await trust(file!, out, err));
      }),
  builtInOnly: "trust looks at the file itself: say chalkline trust FILE.",
};
