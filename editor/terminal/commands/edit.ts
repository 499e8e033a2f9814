// How `chalkline edit` is asked for.
import { InvalidArgumentError } from "commander";
import { type Declared, example } from "../command.ts";

interface EditFlags {
  readonly port?: number;
  readonly root?: string;
}

/** Open the cutting table in a browser. */
export const editCommand: Declared = {
  declare: (program, room) =>
    program
      .command("edit")
      .argument("[file]", "a recipe, or a folder with recipes (default: this folder)")
      .summary("open the cutting table in a browser")
      .description(
        "Serves the editor and one folder of recipes on this machine, and prints the address to open. Nothing leaves the machine, and only .chalk files of that folder are read or written.",
      )
      .option("--port <number>", "the port to listen on (default: any that is free)", portOf)
      .option("--root <folder>", "the folder that recipes may be used from (default: the recipe's own)")
      .addHelpText("after", example("chalkline edit recipes/lobby-coat-swing.chalk", "chalkline edit recipes"))
      .action(async (file: string | undefined, flags: EditFlags) => {
        const { edit } = await import("../edit.ts");
        room.finish(
          await edit(
            file,
            { port: flags.port ?? 0, ...(flags.root !== undefined && { root: flags.root }) },
            ...room.papers(),
          ),
        );
      }),
  builtInOnly: "The cutting table knows the built-in steps only.",
};

const portOf = (written: string): number => {
  const port = Number(written);
  if (Number.isInteger(port) && port > 0 && port < 65536) return port;
  throw new InvalidArgumentError("It takes a number from 1 to 65535.");
};
