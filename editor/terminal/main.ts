// The command line: what may be written behind `chalkline`, and which command it calls. Commands answer with an exit code.
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { manual } from "../../kernel/manual.ts";
import { readable } from "../../kernel/report/readable.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { check } from "./check.ts";
import { draw } from "./draw.ts";
import { edit } from "./edit.ts";
import { hang } from "./hang.ts";
import { measure } from "./measure.ts";
import { type Paper, paperOn } from "./paper.ts";
import { sizes } from "./sizes.ts";
import { steps } from "./steps.ts";
import { stress } from "./stress.ts";
import { tidy } from "./tidy.ts";
import { exitCode, refusal } from "./told.ts";

// Set by build.mjs from package.json.
declare const CHALKLINE_VERSION: string;

interface Flags {
  readonly set?: readonly string[];
  readonly body?: string;
  readonly person?: string;
  readonly size?: string;
  readonly root?: string;
  readonly json?: boolean;
  readonly byStep?: boolean;
  readonly tries?: string;
  readonly seed?: string;
  readonly bodies?: string;
  readonly format?: "long" | "short";
  readonly check?: boolean;
  readonly out?: string;
  readonly port?: number;
}

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
    .exitOverride()
    .configureOutput({
      writeErr: (text) => process.stderr.write(text.split("\n").map(readable).join("\n")),
    })
    .addHelpText("after", exits);

  withGiven(program.command("check").argument("<file...>", "recipes, folders with recipes, or - for standard input"))
    .summary("look for mistakes and judge what fits")
    .description("Works recipes and prints every finding with the line it is about, then a verdict for each recipe.")
    .option("--json", "print one JSON object instead")
    .addOption(
      new Option("--format <form>", "findings with excerpts, or one line each for editors")
        .choices(["long", "short"])
        .default("long"),
    )
    .addHelpText(
      "after",
      example(
        "chalkline check recipes",
        "chalkline check lobby-coat-swing.chalk --set flare=12cm",
        "chalkline check --format short -",
      ),
    )
    .action(async (files: string[], flags: Flags) => {
      code = await check(files, { ...given(flags), form: flags.json ? "json" : (flags.format ?? "long") }, ...papers());
    });

  withGiven(program.command("draw").argument("<file>", "a recipe, or - for standard input"))
    .summary("draw the pieces as SVG, true to size")
    .description("Draws every piece, and one sheet with all of them, as SVG files true to size.")
    .requiredOption("-o, --out <folder>", "the folder that the drawings go to; made if it is not there")
    .addHelpText("after", example("chalkline draw lobby-coat-swing.chalk --out out/lobby-coat-swing"))
    .action(async (file: string, flags: Flags) => {
      code = await draw(file, { ...given(flags), out: flags.out! }, ...papers());
    });

  withGiven(program.command("measure").argument("<file>", "a recipe, or - for standard input"))
    .summary("measure values, edges before and after, and seams")
    .description(
      "Prints values, every edge of every piece (before and after, where a piece was copied), seams, and what the steps did.",
    )
    .option("--by-step", "print how long each altered edge was after every step, in mm to the last digit")
    .option("--json", "print one JSON object, in mm and degrees at full precision")
    .addHelpText(
      "after",
      example(
        "chalkline measure lobby-coat-swing.chalk",
        "chalkline measure lobby-coat-swing.chalk --by-step",
        "chalkline measure coat.chalk --body cast.csv --person Usher-3 --json",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      code = await measure(
        file,
        { ...given(flags), form: flags.json ? "json" : flags.byStep ? "by-step" : "long" },
        ...papers(),
      );
    });

  withGiven(program.command("hang").argument("<file>", "a recipe, or - for standard input"))
    .summary("show where fullness hangs and folds fall")
    .description(
      "Hangs every piece that has a hem from its neck and shoulder, waist or cap, and says where its fullness falls, how much of it, and into how many folds. Fold counts are indicative.",
    )
    .option("--json", "print one JSON object, in mm")
    .addHelpText("after", example("chalkline hang lobby-coat-swing.chalk"))
    .action(async (file: string, flags: Flags) => {
      code = await hang(file, { ...given(flags), form: flags.json ? "json" : "long" }, ...papers());
    });

  program
    .command("sizes")
    .argument("<file>", "a recipe with a size table")
    .summary("measure every size and the growth between sizes")
    .description(
      "Drafts a recipe in each of its sizes, prints what every edge measures and how it grows, and says what grows unevenly.",
    )
    .option("--root <folder>", "the folder that used recipes have to lie in")
    .option("--json", "print one JSON object, in mm")
    .addHelpText("after", example("chalkline sizes blocks/straight-coat.chalk"))
    .action(async (file: string, flags: Flags) => {
      const root = flags.root === undefined ? {} : { root: flags.root };
      code = await sizes(file, { ...root, form: flags.json ? "json" : "long" }, ...papers());
    });

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
    .action(async (file: string, flags: Flags) => {
      code = await stress(
        file,
        {
          tries: flags.tries!,
          seed: flags.seed!,
          form: flags.json ? "json" : "long",
          ...(flags.bodies !== undefined && { bodies: flags.bodies }),
          ...(flags.root !== undefined && { root: flags.root }),
        },
        ...papers(),
      );
    });

  program
    .command("tidy")
    .argument("<file...>", "recipes, folders with recipes, or - for standard input to standard output")
    .summary("rewrite recipes in the one tidy style")
    .description(
      "Rewrites recipes in the one style there is; what they mean never changes. A recipe with lines that cannot be read is left alone.",
    )
    .option("--check", "change nothing; say which recipes are not tidy, and exit with 1")
    .addHelpText("after", example("chalkline tidy recipes", "chalkline tidy --check recipes"))
    .action(async (files: string[], flags: Flags) => {
      code = await tidy(files, flags.check === true, ...papers());
    });

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
    .action(async (file: string | undefined, flags: Flags) => {
      code = await edit(
        file,
        { port: flags.port ?? 0, ...(flags.root !== undefined && { root: flags.root }) },
        ...papers(),
      );
    });

  program
    .command("language-server")
    .summary("serve other editors over standard input and output")
    .description(
      "Speaks the language server protocol over standard input and output, for editors that start it themselves: findings while typing, hover, completion, names and their uses, renaming, and the rest of what the cutting table knows.",
    )
    // Most editors say which way they talk, and there is only this one.
    .addOption(new Option("--stdio", "over standard input and output").hideHelp())
    .action(async () => {
      // Only this command needs the protocol, and every other starts without it.
      const { languageServer } = await import("../language-server/language-server.ts");
      code = await languageServer(process.stdin, process.stdout, CHALKLINE_VERSION);
    });

  program
    .command("steps")
    .argument("[name]", "a step, statement, function or check")
    .summary("explain steps, statements, functions and checks")
    .description(
      "Prints the reference: a list of all that a recipe may say, or one entry with its form and an example.",
    )
    .addHelpText("after", example("chalkline steps", "chalkline steps spread-from", "chalkline steps hem-square"))
    .action((name: string | undefined) => {
      code = steps(name, ...papers());
    });

  program
    .command("manual")
    .summary("print the whole manual as Markdown")
    .description("Prints the whole manual as Markdown, made from the declarations of this very program.")
    .addHelpText("after", example("chalkline manual > MANUAL.md"))
    .action(() => {
      papers()[0].print(manual(vocabulary));
    });

  try {
    await program.parseAsync(args, { from: "user" });
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? exitCode.clean : exitCode.unreadable;
    // Mistakes in recipes, options and files never come here, so this one is ours.
    const words = error instanceof Error ? error.message : String(error);
    papers()[1].say(refusal(`Chalkline itself failed, and no recipe should make it do that: ${words}`));
    return exitCode.unreadable;
  }
  return code;
};

const withGiven = (command: Command): Command =>
  command
    .option("--set <name=value>", "another value for a param or measure; may stand several times", each)
    .option("--body <file>", "body measures, as JSON or as a table (CSV)")
    .option("--person <name>", "which row of the table")
    .option("--size <name>", "a size of the recipe's size table")
    .option("--root <folder>", "the folder that recipes may be used from (default: the recipe's own)");

const portOf = (written: string): number => {
  const port = Number(written);
  if (Number.isInteger(port) && port > 0 && port < 65536) return port;
  throw new InvalidArgumentError("It takes a number from 1 to 65535.");
};

const each = (value: string, before: readonly string[] = []): string[] => {
  if (!value.includes("=")) throw new InvalidArgumentError("It takes NAME=VALUE, such as flare=12cm.");
  return [...before, value];
};

const given = ({ set = [], body, person, size, root }: Flags) => ({
  set,
  ...(body !== undefined && { body }),
  ...(person !== undefined && { person }),
  ...(size !== undefined && { size }),
  ...(root !== undefined && { root }),
});

const example = (...lines: string[]): string => `\nFor example:\n${lines.map((line) => `  ${line}`).join("\n")}\n`;

const exits = `
For example:
  chalkline check recipes
  chalkline measure recipes/lobby-coat-swing.chalk
  chalkline draw recipes/lobby-coat-swing.chalk --out out/lobby-coat-swing

Exit code: 0 clean or warnings only, 1 errors found, 2 something could not be read or written.
`;

// Whoever reads our output may stop reading: `chalkline measure coat.chalk | head -3`.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code !== "EPIPE") throw error;
    process.exit();
  });
}

process.exitCode = await main(process.argv.slice(2));
