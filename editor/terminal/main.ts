// The command line: what may be written behind `chalkline`, and the list of commands. Each is declared in a file of commands/ and
// answers with an exit code.
import { Command, CommanderError } from "commander";
import { readable } from "../../kernel/report/readable.ts";
import { systemCode, whyRefused } from "../files/why-refused.ts";
import type { Declared } from "./command.ts";
import { batchCommand } from "./commands/batch.ts";
import { batchWorkerCommand } from "./commands/batch-worker.ts";
import { cardCommand } from "./commands/card.ts";
import { chalkOffCommand } from "./commands/chalk-off.ts";
import { checkCommand } from "./commands/check.ts";
import { compareCommand } from "./commands/compare.ts";
import { drawCommand } from "./commands/draw.ts";
import { editCommand } from "./commands/edit.ts";
import { explainCommand } from "./commands/explain.ts";
import { factsCommand } from "./commands/facts.ts";
import { gitSetupCommand } from "./commands/git-setup.ts";
import { hangCommand } from "./commands/hang.ts";
import { languageServerCommand } from "./commands/language-server.ts";
import { layCommand } from "./commands/lay.ts";
import { manualCommand } from "./commands/manual.ts";
import { measureCommand } from "./commands/measure.ts";
import { sizesCommand } from "./commands/sizes.ts";
import { stepsCommand } from "./commands/steps.ts";
import { stressCommand } from "./commands/stress.ts";
import { tidyCommand } from "./commands/tidy.ts";
import { traceCommand } from "./commands/trace.ts";
import { trustCommand } from "./commands/trust.ts";
import { NotTakenIn, takeIn } from "./load-plugins.ts";
import { type Paper, paperOn } from "./paper.ts";
import { exitCode, refusal } from "./told.ts";
import { watched } from "./undelivered.ts";

// Set by build.mjs from package.json.
declare const CHALKLINE_VERSION: string;

/** All commands, in the order of the help. */
const commands: readonly Declared[] = [
  checkCommand,
  drawCommand,
  measureCommand,
  compareCommand,
  explainCommand,
  factsCommand,
  gitSetupCommand,
  hangCommand,
  layCommand,
  cardCommand,
  chalkOffCommand,
  sizesCommand,
  stressCommand,
  batchCommand,
  batchWorkerCommand,
  tidyCommand,
  traceCommand,
  editCommand,
  languageServerCommand,
  stepsCommand,
  manualCommand,
  trustCommand,
];

const main = async (args: readonly string[]): Promise<number> => {
  let code: number = exitCode.clean;
  const papers = (): [Paper, Paper] => {
    const color = program.opts<{ color: boolean }>().color;
    return [paperOn(process.stdout, color), paperOn(process.stderr, color)];
  };
  const program = new Command("chalkline")
    .description("Sewing patterns as plain text: drafts, alters, checks, measures and draws garment recipes.")
    .version(CHALKLINE_VERSION, "-v, --version", "print the version")
    .helpOption("-h, --help", "print this help")
    .helpCommand("help [command]", "print the help of a command")
    .option("--no-color", "print without colours (NO_COLOR=1 does the same)")
    .option(
      "--with <file>",
      "take in steps and checks from this file of yours; may stand several times",
      (file: string, before: readonly string[] = []) => [...before, file],
    )
    .exitOverride()
    .configureOutput({
      writeErr: (text) => process.stderr.write(text.split("\n").map(readable).join("\n")),
    })
    .addHelpText("after", exits);

  const room = {
    args,
    version: CHALKLINE_VERSION,
    papers,
    finish: (ended: number): void => {
      code = ended;
    },
  };
  const named = (): readonly string[] => program.opts<{ with?: readonly string[] }>().with ?? [];
  for (const { declare, builtInOnly } of commands)
    declare(program, room).hook("preAction", () => takeIn(named(), builtInOnly, papers()[1]));

  try {
    await program.parseAsync(args, { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.clean : exitCode.unreadable;
    if (error instanceof NotTakenIn) {
      papers()[1].say(refusal(error.message));
      return exitCode.unreadable;
    }
    const why = systemCode(error) === undefined ? undefined : whyRefused(error);
    if (why !== undefined) {
      papers()[1].say(refusal(`Chalkline cannot go on: ${why}.`));
      return exitCode.unreadable;
    }
    // Mistakes in recipes, options and files never come here, so this one is ours.
    const words = error instanceof Error ? error.message : String(error);
    papers()[1].say(refusal(`Chalkline itself failed, and no recipe should make it do that: ${words}`));
    return exitCode.unreadable;
  }
  return code;
};

const exits = `
For example:
  chalkline check recipes
  chalkline measure recipes/lobby-coat-swing.chalk
  chalkline draw recipes/lobby-coat-swing.chalk --out out/lobby-coat-swing

Exit code: 0 clean or warnings only, 1 errors found, 2 something could not be read or written.
`;

const { codeAfter } = watched(process.stdout, process.stderr);
// Without an await, which a script cannot have at its top, and the program is built as one.
void main(process.argv.slice(2)).then((code) => {
  process.exitCode = codeAfter(code);
});
