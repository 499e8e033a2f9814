// chalkline draw: a garment's pieces as files of every kind that a workroom can use, into a folder.
import { didYouMean } from "../../grammar/nearest.ts";
import { type Drawings, draw as drawingsOf } from "../../kernel/drawing/draw.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { doesNotFit, type TooLarge } from "../../kernel/paper/does-not-fit.ts";
import { type PaperKind, papers } from "../../kernel/paper/papers.ts";
import { blank, plain, quiet, type SaidLine, strong } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { counted } from "../../kernel/report/verdict.ts";
import type { Nest } from "../../kernel/sizes/nest-groups.ts";
import { canNestAt, nested } from "../../kernel/sizes/nested.ts";
import { garmentsOf, sizeTables } from "../../kernel/sizes/size-tables.ts";
import { lengthIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import { type DraftedWith, remarksOn } from "../files/drawn-files.ts";
import type { PaperFile } from "../files/paper-files.ts";
import { isLettered, type Pattern, type PatternFile, patternFiles, patternFormats } from "../files/pattern-files.ts";
import type { PrintedFile } from "../files/printed-file.ts";
import { saveInto } from "../files/save.ts";
import { cannotWrite } from "./cannot-write.ts";
import { chalk } from "./known.ts";
import { lettersTold } from "./letters-told.ts";
import type { Paper } from "./paper.ts";
import { codeFor, exitCode, refusal, remarkLine } from "./told.ts";
import type { Given } from "./worked.ts";
import { type WorkedFile, workFile } from "./worked-file.ts";

export interface DrawOptions extends Given {
  readonly root?: string;
  readonly out: string;
  /** Formats by name. */
  readonly as: readonly string[];
  /** Papers by name, for `pdf`; A4 where none is named. */
  readonly paper?: readonly string[];
  /** Where nested sizes are laid on one another. */
  readonly nestAt?: string;
}

/** All formats that `--as` takes: those of a pattern, and prints. */
export const formatNames: readonly string[] = [...patternFormats.map(({ name }) => name), "pdf"];

/** All papers that `--paper` takes. */
export const paperNames: readonly string[] = papers.map(({ name }) => name);

/** Draws what can be drawn, whatever the findings; tells them, and what it wrote. */
export const draw = async (path: string, options: DrawOptions, out: Paper, err: Paper): Promise<number> => {
  const unknown = cannotBeDrawn(options);
  if (unknown !== undefined) {
    err.say(refusal(unknown));
    return exitCode.unreadable;
  }
  const { size, ...unsized } = options;
  const file = await workFile(path, size === allSizes ? unsized : options, err);
  if (!file) return exitCode.unreadable;
  const pattern = size === allSizes ? nestOf(file, options) : patternOf(file, options);
  if ("problem" in pattern) {
    err.say([...file.told, blank, ...refusal(pattern.problem)]);
    return exitCode.unreadable;
  }
  const made = await filesOf(pattern, options);
  try {
    saveInto(options.out, made.files);
  } catch (error) {
    err.say([...file.told, blank, ...refusal(cannotWrite(error, options.out))]);
    return exitCode.unreadable;
  }
  if (made.files.length > 0) out.say(written(made.files, options.out));
  // Findings come last: there the eye of whoever typed the command is.
  const lettered = isDrawnLettered(options.as) ? [pattern.drawings.sheet] : [];
  err.say([blank, ...pattern.notes.map(remarkLine), ...(await lettersTold(file, lettered))]);
  const refused = made.refused.flatMap((each) => refusal(each));
  if (refused.length > 0) err.say(refused);
  return refused.length > 0 ? exitCode.unreadable : codeFor(file.outcome);
};

/** Why drawings cannot be had as these options have them; undefined when they can. */
export const cannotBeDrawn = (options: Omit<DrawOptions, "out" | "set">): string | undefined =>
  notAsked(options) ??
  unknownIn(options.as, formatNames, "format") ??
  unknownIn(options.paper ?? [], paperNames, "paper");

/** The files of one garment, what no paper takes, and the drawings that the font has to have letters for. */
export const garmentFiles = async (
  outcome: Outcome,
  options: DraftedWith & Pick<DrawOptions, "as" | "paper">,
): Promise<Awaited<ReturnType<typeof filesOf>> & { readonly lettered: readonly Drawings["sheet"][] }> => {
  const pattern = patternOf({ outcome }, options);
  return {
    ...(await filesOf(pattern, options)),
    lettered: isDrawnLettered(options.as) ? [pattern.drawings.sheet] : [],
  };
};

/** Whether something that is asked for is lettered with the font of the program: prints always are. */
const isDrawnLettered = (as: readonly string[]): boolean => as.includes("pdf") || isLettered(as);

/** What `--size` says for all sizes on one paper. */
const allSizes = "all";

/** An option that would do nothing beside the others. */
const notAsked = ({ as, paper, nestAt, size }: Omit<DrawOptions, "out" | "set">): string | undefined => {
  if (paper !== undefined && !as.includes("pdf"))
    return "--paper is what a PDF is laid out on: write --as pdf as well.";
  if (nestAt !== undefined && size !== allSizes)
    return "--nest-at is where sizes lie on one another: write --size all as well.";
  return undefined;
};

const unknownIn = (given: readonly string[], known: readonly string[], what: string): string | undefined => {
  const stranger = given.find((name) => !known.includes(name));
  if (stranger === undefined) return undefined;
  return `There is no ${what} ${stranger}. ${didYouMean(stranger, known) ?? `There is ${known.join(", ")}.`}`;
};

/** A pattern with all that is said of it. */
interface ToDraw extends Pattern {
  readonly units: Units;
  readonly notes: readonly string[];
}

const patternOf = ({ outcome }: Pick<WorkedFile, "outcome">, options: DraftedWith): ToDraw => {
  const remarks = remarksOn(outcome, options);
  const drawings = drawingsOf(outcome.garment, remarks);
  const { size } = options;
  return {
    drawings,
    garments: [{ base: true, garment: outcome.garment, ...(size !== undefined && { size }) }],
    remarks,
    units: outcome.garment.units,
    notes: [],
  };
};

/** All sizes on one paper; the recipe has to have sizes, and the place to lay them at has to be in them. */
const nestOf = (
  { outcome, source, circumstances }: WorkedFile,
  options: DrawOptions,
): ToDraw | { readonly problem: string } => {
  const [table, ...others] = sizeTables(chalk, source, circumstances);
  if (!table) return { problem: `--size all: the recipe has no size table, and uses none.` };
  const sized = garmentsOf(table);
  if (options.nestAt !== undefined && !canNestAt(sized, options.nestAt))
    return { problem: `--nest-at ${options.nestAt}: no piece has a place or an edge of that name in every size.` };
  const { size: _all, ...made } = options;
  const remarks = remarksOn(outcome, made);
  const drawings = nested(sized, remarks, options.nestAt);
  const failing = table.outcomes.flatMap((each, index) =>
    codeFor(each) === exitCode.clean ? [] : [table.sizes[index]!.name],
  );
  return {
    drawings,
    garments: sized,
    remarks,
    units: outcome.garment.units,
    notes: [
      ...(others.length > 0
        ? [
            `These are the sizes of ${table.table}; those of ${others.map((each) => each.table).join(", ")} are another nest.`,
          ]
        : []),
      ...elsewhereLaid(drawings.nests, options.nestAt),
      ...(failing.length > 0
        ? [`Not every size comes out clean: ${failing.join(", ")}. chalkline draw --size ${failing[0]} says why.`]
        : []),
    ],
  };
};

/** The pieces that are not laid where it was asked for, since some size of them has no such place or edge. */
const elsewhereLaid = (nests: readonly Nest[], nestAt: string | undefined): string[] =>
  nests.flatMap(({ name, about }) =>
    nestAt === undefined || about === undefined || about === `at ${nestAt}` || about === `at the upper end of ${nestAt}`
      ? []
      : [`--nest-at ${nestAt}: ${name} has none in every size, and is laid ${about}.`],
  );

interface MadeFile extends PrintedFile {
  readonly facts: readonly string[];
}

const filesOf = async (
  pattern: ToDraw,
  { as, paper = ["a4"] }: Pick<DrawOptions, "as" | "paper">,
): Promise<{
  readonly files: readonly MadeFile[];
  readonly refused: readonly string[];
}> => {
  const { drawings, units } = pattern;
  const lettering = isDrawnLettered(as)
    ? (await import("../files/shipped-lettering.ts")).shippedLettering()
    : undefined;
  const drawn = patternFiles(pattern, as, lettering).map((file) => ({ ...file, facts: factsOf(file, units) }));
  if (!lettering || !as.includes("pdf")) return { files: drawn, refused: [] };
  const { paperFile } = await import("../files/paper-files.ts");
  const prints: (PaperFile | TooLarge)[] = [];
  for (const kind of papers) if (paper.includes(kind.name)) prints.push(await paperFile(drawings, kind, lettering));
  return {
    files: [...drawn, ...prints.flatMap((print) => ("content" in print ? [printedFile(print)] : []))],
    refused: prints.flatMap((print) => ("tooLarge" in print ? [doesNotFit(print, units, namesOf)] : [])),
  };
};

const factsOf = ({ drawing }: PatternFile, units: Units): string[] => {
  if (!drawing) return ["ASTM D6673", "1 unit is 1 mm"];
  const { left, top, right, bottom } = drawing.paper;
  return [`${lengthIn(right - left, units)} wide`, `${lengthIn(bottom - top, units)} high`];
};

const printedFile = (file: PaperFile): MadeFile => ({
  ...file,
  facts: [counted(file.pages, file.paper.use === "tiles" ? "page" : "sheet"), file.paper.title],
});

const namesOf = (others: readonly PaperKind[]): string => `--paper ${others.map(({ name }) => name).join(", ")}`;

const written = (files: readonly MadeFile[], folder: string): SaidLine[] => [
  [plain(`Wrote ${counted(files.length, "file")} into `), strong(folder), quiet("  (true to scale)")],
  ...aligned(files.map(({ name, facts }) => [words(name), ...facts.map((fact) => amount(fact))])),
];
