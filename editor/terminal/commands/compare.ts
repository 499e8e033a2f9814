// How `chalkline compare` is asked for.

import { type Declared, example, type Flags, given, withGiven } from "../command.ts";
import type { Asked, CompareOptions } from "../compare.ts";
import { exitCode, refusal } from "../told.ts";

interface CompareFlags extends Flags {
  readonly json?: boolean;
  readonly markdown?: boolean;
  readonly out?: string;
  readonly merge?: boolean;
  readonly align?: string;
}

/** Say what changed in the garment between two recipes or revisions. */
export const compareCommand: Declared = {
  declare: (program, room) =>
    withGiven(
      program
        .command("compare")
        .argument("<old>", "a recipe, a folder with recipes, or REVISION or REVISION..REVISION before -- and a recipe")
        .argument(
          "[new]",
          "the recipe or folder to hold against it; left out, every piece is held against what it was copied from",
        )
        .argument("[file]", "the recipe, where two revisions stand before --"),
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
      .action(async (one: string, other: string | undefined, file: string | undefined, flags: CompareFlags) => {
        // git's own spelling of two revisions is understood as well.
        const [first, second] = file === undefined ? [one, other] : [`${one}..${other}`, file];
        if (flags.merge && (second === undefined || flags.out !== undefined || flags.align !== undefined)) {
          room
            .papers()[1]
            .say(
              refusal("--merge takes a revision and a file, as in compare --merge HEAD -- FILE, and draws nothing."),
            );
          room.finish(exitCode.unreadable);
          return;
        }
        const { compare } = await import("../compare.ts");
        const form = flags.json ? "json" : flags.markdown ? "markdown" : "long";
        if (flags.merge && second !== undefined) {
          const { compareMerge } = await import("../compare-merge.ts");
          room.finish(compareMerge(second, first, { ...given(flags), form }, ...room.papers()));
          return;
        }
        const options = {
          ...given(flags),
          form,
          align: alignOf(flags.align),
          ...(flags.out !== undefined && { out: flags.out }),
        } as const;
        room.finish(await compare(askedOf(first, second, room.args.includes("--")), options, ...room.papers()));
      }),
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
