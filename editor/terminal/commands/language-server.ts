// How `chalkline language-server` is asked for.
import { Option } from "commander";
import type { Declared } from "../command.ts";
import { known } from "../known.ts";

/** Serve other editors over standard input and output. */
export const languageServerCommand: Declared = {
  declare: (program, room) =>
    program
      .command("language-server")
      .summary("serve other editors over standard input and output")
      .description(
        "Speaks the language server protocol over standard input and output, for editors that start it themselves: findings while typing, hover, completion, names and their uses, renaming, and the rest of what the cutting table knows.",
      )
      // Most editors say which way they talk, and there is only this one.
      .addOption(new Option("--stdio", "over standard input and output").hideHelp())
      .action(async () => {
        const { languageServer } = await import("../../language-server/language-server.ts");
        room.finish(await languageServer(process.stdin, process.stdout, room.version, known));
      }),
};
