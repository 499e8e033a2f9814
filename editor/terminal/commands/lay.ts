// How `chalkline lay` is asked for.
import { Option } from "commander";
import { efforts } from "../../../kernel/cloth/lay/efforts.ts";
import { type Declared, example, type Flags, given, withGiven } from "../command.ts";

interface LayFlags extends Flags {
  readonly cloth: "flat" | "folded" | "tubular";
  readonly width?: string;
  readonly selvedge: string;
  readonly tilt: string;
  readonly effort?: (typeof efforts)[number]["name"];
  readonly try: string;
  readonly most?: string;
  readonly length?: readonly string[];
  readonly over?: string;
  readonly from?: string;
  readonly to?: string;
  readonly by?: string;
  readonly out?: string;
  readonly json?: boolean;
}

/** Lay the pieces on the cloth. */
export const layCommand: Declared = {
  declare: (program, room) =>
    withGiven(program.command("lay").argument("<file>", "a recipe, or - for standard input"))
      .summary("lay the pieces on the cloth and say how much to buy")
      .description(
        "Lays the pieces with their allowances on every cloth that the recipe cuts from, as short as it can, the grain along the cloth. The length to buy has 2 cm at both ends and is rounded up as shops sell it.",
      )
      .addOption(
        new Option("--cloth <how>", "how the cloth lies on the table")
          .choices(["flat", "folded", "tubular"])
          .default("flat"),
      )
      .option("--width <length>", "the width of the cloth, such as 45in (default: as the recipe says)")
      .option("--selvedge <length>", "what is not used along each selvedge", "1cm")
      .option("--tilt <angle>", "by how much the grain of a piece may lie aslant", "0deg")
      .addOption(
        new Option(
          "--effort <level>",
          `how long to look: ${efforts.map(({ name, title }) => `${name} (${title})`).join(", ")}; where not said, buying, and quick with --most and --over`,
        ).choices(efforts.map(({ name }) => name)),
      )
      .option("--try <number>", "another number gives another lay, the same one the same", "1")
      .option(
        "--most <param>",
        "the largest value of a param or measure at which every piece fits the width of its cloth",
      )
      .option(
        "--length <length>",
        "with --most: the cloth at hand, such as 3m, or shell=3m for one of several cloths",
        (value: string, before: readonly string[] = []) => [...before, value],
      )
      .option(
        "--over <param>",
        "a table of the cloth needed over the values of a param or measure; with --out, a curve",
      )
      .option("--from <value>", "with --most or --over: where to begin (default: as the recipe says)")
      .option("--to <value>", "with --most or --over: where to end (default: as the recipe says)")
      .option("--by <value>", "with --most or --over: the step from value to value")
      .option(
        "-o, --out <folder>",
        "also draw it into this folder: SVG and PDF at a tenth of the size, and PDF at life size; with --over, the curve as SVG",
      )
      .option("--json", "print one JSON object, in mm and degrees")
      .addHelpText(
        "after",
        example(
          "chalkline lay lobby-coat-swing.chalk",
          "chalkline lay lobby-coat-swing.chalk --width 45in --out out/lobby-coat-swing",
          "chalkline lay lobby-coat-swing.chalk --cloth folded --json",
          "chalkline lay lobby-coat-swing.chalk --most flare --length 2.4m",
          "chalkline lay lobby-coat-swing.chalk --over flare --by 2cm --out out/lobby-coat-swing",
        ),
      )
      .action(async (file: string, flags: LayFlags) => {
        const { lay } = await import("../lay.ts");
        const options = {
          ...given(flags),
          cloth: flags.cloth,
          selvedge: flags.selvedge,
          tilt: flags.tilt,
          try: flags.try,
          length: flags.length ?? [],
          form: flags.json ? "json" : "long",
          ...(flags.width !== undefined && { width: flags.width }),
          ...(flags.effort !== undefined && { effort: flags.effort }),
          ...(flags.most !== undefined && { most: flags.most }),
          ...(flags.over !== undefined && { over: flags.over }),
          ...(flags.from !== undefined && { from: flags.from }),
          ...(flags.to !== undefined && { to: flags.to }),
          ...(flags.by !== undefined && { by: flags.by }),
          ...(flags.out !== undefined && { out: flags.out }),
        } as const;
        room.finish(await lay(file, options, ...room.papers()));
      }),
};
