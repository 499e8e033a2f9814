// The command line: what may be written behind `chalkline`, and which command it calls. Commands answer with an exit code.
import { Command, CommanderError, InvalidArgumentError, Option } from "commander";
import { manual } from "../../kernel/manual.ts";
import { readable } from "../../kernel/report/readable.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { card, cardFormats } from "./card.ts";
import { chalkOff, chalkOffFormats } from "./chalk-off.ts";
import { check } from "./check.ts";
import type { Asked, CompareOptions } from "./compare.ts";
import { draw, formatNames, paperNames } from "./draw.ts";
import { edit } from "./edit.ts";
import { hang } from "./hang.ts";
import { type MeasureOptions, measure } from "./measure.ts";
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
  readonly paper?: string;
  readonly nestAt?: string;
  readonly as?: string;
  readonly byStep?: boolean;
  readonly markdown?: boolean;
  readonly align?: string;
  readonly merge?: boolean;
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
    .summary("draw the pieces for paper, cutters, plotters and cutting rooms")
    .description(
      "Draws every piece, and one sheet with all of them, true to size. Formats: svg (pieces and sheet), layers (SVG by layers, for cutters and projectors), pdf (paper of any size, tiled where it is small), dxf (for cutting rooms, after ASTM D6673), laser (plain DXF), hpgl (pen plotters).",
    )
    .requiredOption("-o, --out <folder>", "the folder that the drawings go to; made if it is not there")
    .option("--as <formats>", `formats, with commas between: ${formatNames.join(", ")}`, "svg")
    .option("--paper <papers>", `papers for pdf, with commas between: ${paperNames.join(", ")}`, "a4")
    .option("--nest-at <name>", "with --size all: the place or edge at which the sizes lie on one another")
    .addHelpText(
      "after",
      example(
        "chalkline draw lobby-coat-swing.chalk --out out/lobby-coat-swing",
        "chalkline draw lobby-coat-swing.chalk --out out/paper --as pdf --paper a4,roll-36in",
        "chalkline draw blocks/straight-coat.chalk --out out/nest --as svg,pdf --size all",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      const { nestAt } = flags;
      const more = { out: flags.out!, as: listed(flags.as!), paper: listed(flags.paper!) };
      code = await draw(file, { ...given(flags), ...more, ...(nestAt !== undefined && { nestAt }) }, ...papers());
    });

  withGiven(program.command("measure").argument("<file>", "a recipe, or - for standard input"))
    .summary("measure values, edges before and after, and seams")
    .description(
      "Prints values, every edge of every piece (before and after, where a piece was copied), seams, and what the steps did.",
    )
    .option("--by-step", "print how long each altered edge was after every step, in mm to the last digit")
    .option("--json", "print one JSON object, in mm and degrees at full precision")
    .addOption(
      new Option(
        "--as <format>",
        "print every edge and place as a table for spreadsheets, the same as --json, or one fact a line",
      ).choices(["csv", "json", "text"]),
    )
    .addHelpText(
      "after",
      example(
        "chalkline measure lobby-coat-swing.chalk",
        "chalkline measure lobby-coat-swing.chalk --by-step",
        "chalkline measure lobby-coat-swing.chalk --as csv > measures.csv",
        "chalkline measure coat.chalk --body cast.csv --person Usher-3 --json",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      code = await measure(file, { ...given(flags), form: measureForm(flags) }, ...papers());
    });

  withGiven(
    program
      .command("compare")
      .argument("<old>", "a recipe, a folder with recipes, or REVISION or REVISION..REVISION before -- and a recipe")
      .argument(
        "[new]",
        "the recipe or folder to hold against it; left out, every piece is held against what it was copied from",
      ),
  )
    .summary("say what changed in the garment between two recipes or revisions")
    .description(
      "Holds two recipes, two revisions of one, or pieces and what they were copied from, against one another: edges, places, cloth, seams, checks and values that changed, and which edited lines caused it.",
    )
    .option("--json", "print one JSON object, in mm and degrees at full precision")
    .option("--markdown", "print Markdown, for a pull request")
    .option(
      "-o, --out <folder>",
      "also draw every changed piece over what it was, and a page with all of them, compare.html",
    )
    .option("--merge", "hold a merge against both of its parents: chalkline compare --merge REVISION -- FILE")
    .option(
      "--align <by>",
      "how pictures are laid: fold, grain, fit, or the name of a place (default: as the pieces lie)",
    )
    .addHelpText(
      "after",
      example(
        "chalkline compare coat-before.chalk coat.chalk",
        "chalkline compare HEAD -- recipes/lobby-coat-swing.chalk",
        "chalkline compare v1..v2 --markdown -- recipes/lobby-coat-swing.chalk",
        "chalkline compare recipes/lobby-coat-swing.chalk",
      ),
    )
    .action(async (first: string, second: string | undefined, flags: Flags) => {
      if (flags.merge && (second === undefined || flags.out !== undefined || flags.align !== undefined)) {
        papers()[1].say(
          refusal("--merge takes a revision and a file, as in compare --merge HEAD -- FILE, and draws nothing."),
        );
        code = exitCode.unreadable;
        return;
      }
      // Few commands compare, and all others start without it.
      const { compare } = await import("./compare.ts");
      const form = flags.json ? "json" : flags.markdown ? "markdown" : "long";
      if (flags.merge && second !== undefined) {
        const { compareMerge } = await import("./compare-merge.ts");
        code = compareMerge(second, first, { ...given(flags), form }, ...papers());
        return;
      }
      const options = {
        ...given(flags),
        form,
        align: alignOf(flags.align),
        ...(flags.out !== undefined && { out: flags.out }),
      } as const;
      code = await compare(askedOf(first, second, args.includes("--")), options, ...papers());
    });

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
    .action(async (file: string, edge: string, flags: Flags) => {
      const { explain } = await import("./explain.ts");
      code = await explain(file, edge, { ...given(flags), form: flags.json ? "json" : "long" }, ...papers());
    });

  program
    .command("facts")
    .argument("<file>", "a recipe")
    .summary("print a recipe with the facts of its garment, one a line, for git")
    .description(
      "Prints a recipe's text and under it the facts of its garment, one a line and rounded, so that git can compare them; git-setup tells git to.",
    )
    .addHelpText("after", example("chalkline facts recipes/lobby-coat-swing.chalk"))
    .action(async (file: string) => {
      const { facts } = await import("./facts.ts");
      code = facts(file, papers()[0]);
    });

  program
    .command("git-setup")
    .argument("[folder]", "a folder of the clone", ".")
    .summary("let git show garment facts under the text of recipes")
    .description(
      "Writes the settings of one clone that let git diff, git show and git log -p tell what changed in the garment, and prints how to undo it.",
    )
    .addHelpText("after", example("chalkline git-setup", "git diff recipes/lobby-coat-swing.chalk"))
    .action(async (folder: string) => {
      const { gitSetup } = await import("./git-setup.ts");
      code = gitSetup(folder, [process.execPath, process.argv[1] ?? "chalkline"], ...papers());
    });

  withGiven(program.command("hang").argument("<file>", "a recipe, or - for standard input"))
    .summary("show where fullness hangs and folds fall")
    .description(
      "Hangs every piece that has a hem from its neck and shoulder, waist or cap, and says where its fullness falls, how much of it, and into how many folds. Fold counts are indicative.",
    )
    .option("-o, --out <folder>", "also draw it, from both sides and from below, as hanging.svg in this folder")
    .option("--json", "print one JSON object, in mm")
    .addHelpText(
      "after",
      example(
        "chalkline hang lobby-coat-swing.chalk",
        "chalkline hang lobby-coat-swing.chalk --out out/lobby-coat-swing",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      const out = flags.out === undefined ? {} : { out: flags.out };
      code = await hang(file, { ...given(flags), ...out, form: flags.json ? "json" : "long" }, ...papers());
    });

  withGiven(program.command("card").argument("<file>", "a recipe, or - for standard input"))
    .summary("tell a workroom all of a garment on one page")
    .description(
      "Prints the cutting card: what it was drafted with, cloth, pieces and how to cut them, seams in the order of the recipe, finished measures, alterations and cautions.",
    )
    .option("-o, --out <folder>", "write it into this folder instead: as text, and as an A4 page in SVG and PDF")
    .option("--as <formats>", `with --out: formats, with commas between: ${cardFormats.join(", ")} (default: all)`)
    .addHelpText(
      "after",
      example("chalkline card lobby-coat-swing.chalk", "chalkline card lobby-coat-swing.chalk --out out/card --as pdf"),
    )
    .action(async (file: string, flags: Flags) => {
      code = await card(file, { ...given(flags), ...written(flags) }, ...papers());
    });

  withGiven(program.command("chalk-off").argument("<file>", "a recipe, or - for standard input"))
    .summary("mark the pieces straight on the cloth, with tape and chalk and no printer")
    .description(
      "Prints a table of points for each piece: how far down from a named place and how far out from the fold or the grain line, to 2 mm or 1/8 in, as few as keep the ruled line near the true one, and how near that is.",
    )
    .option("-o, --out <folder>", "write it into this folder instead")
    .option(
      "--as <formats>",
      `text or csv; with --out any, with commas between: ${chalkOffFormats.join(", ")} (default: all)`,
    )
    .addHelpText(
      "after",
      example(
        "chalkline chalk-off lobby-coat-swing.chalk",
        "chalkline chalk-off lobby-coat-swing.chalk --as csv > points.csv",
        "chalkline chalk-off lobby-coat-swing.chalk --out out/chalk --as pdf,csv",
      ),
    )
    .action(async (file: string, flags: Flags) => {
      code = await chalkOff(file, { ...given(flags), ...written(flags) }, ...papers());
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

/** "svg, pdf" as a list. */
const listed = (written: string): string[] =>
  written
    .split(",")
    .map((part) => part.trim().toLowerCase())
    .filter((part) => part !== "");

const measureForm = ({ json, as, byStep }: Flags): MeasureOptions["form"] => {
  if (json || as === "json") return "json";
  if (as === "csv" || as === "text") return as;
  return byStep ? "by-step" : "long";
};

const alignOf = (written: string | undefined): CompareOptions["align"] => {
  if (written === undefined) return { by: "table" };
  return written === "fold" || written === "grain" || written === "fit"
    ? { by: written }
    : { by: "place", place: written };
};

/** Behind a -- stands a file, and before it what is held against it. */
const askedOf = (first: string, second: string | undefined, hasRevisions: boolean): Asked => {
  if (second === undefined) return { kind: "pieces", file: first };
  if (!hasRevisions) return { kind: "paths", before: first, after: second };
  const [before, after] = first.split("..", 2) as [string, string?];
  return { kind: "revisions", before, after: after === undefined || after === "" ? undefined : after, file: second };
};

const written = ({ as, out }: Flags) => ({
  as: as === undefined ? [] : listed(as),
  ...(out !== undefined && { out }),
});

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
