// A drawing from elsewhere becomes the text of a recipe: read, sorted into pieces, written, tidied.
import { limits } from "../../grammar/limits.ts";
import { tidy } from "../../grammar/print.ts";
import { mapped, type Path } from "../../kernel/geometry/path.ts";
import { plus, times } from "../../kernel/geometry/point.ts";
import type { Kernel } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import { millimetresIn } from "../../kernel/units.ts";
import type { Units } from "../../kernel/working.ts";
import { allowancesDrawn } from "./allowances-drawn.ts";
import type { DrawingKind } from "./drawing-kinds.ts";
import { dxfSheet } from "./dxf-sheet.ts";
import { Names } from "./piece-names.ts";
import { type OutlineLine, piecesOn } from "./pieces-on.ts";
import { type RecipeUnits, recipeUnits } from "./recipe-units.ts";
import { Refused } from "./refused.ts";
import { type LeftOut, plainWords, type Sheet } from "./sheet.ts";
import { svgSheet } from "./svg-sheet.ts";
import { tableSheet } from "./table-sheet.ts";
import { type TracedPiece, tracedPiece } from "./traced-piece.ts";

export interface BringInOptions {
  /** The units of the recipe, and of a file that does not say its own. */
  readonly units?: Units;
  /** How many times larger the pieces are than they are drawn. */
  readonly scale: number;
  /** Which line becomes the outline where the file draws both; around a sewing line the allowances are measured. */
  readonly line: OutlineLine;
  /** How wide an allowance is drawn in, mm, where outlines are cutting lines. */
  readonly drawnIn?: number;
}

/** A recipe, and everything that is to be said of how it came about. */
export interface BroughtIn {
  readonly recipe: string;
  readonly pieces: readonly TracedPiece[];
  readonly notes: readonly string[];
  readonly leftOut: readonly LeftOut[];
  /** How far, in mm, the recipe strays from the drawing where it is furthest off. */
  readonly straying: number;
}

/** Why there is no recipe, and at which line of the file, counted from 1. */
export interface NotBroughtIn {
  readonly problem: { readonly message: string; readonly line?: number; readonly hint?: string };
  /** What was said of the reading before it stopped. */
  readonly notes: readonly string[];
  readonly leftOut: readonly LeftOut[];
}

/** Makes a recipe of a drawing; `called` is the name of the file, without folders. */
export const broughtIn = (
  text: string,
  kind: DrawingKind,
  called: string,
  options: BringInOptions,
  kernel: Pick<Kernel, "parse" | "work">,
): BroughtIn | NotBroughtIn => {
  let sheet: Sheet | undefined;
  try {
    const unit = options.units === undefined ? undefined : millimetresIn.get(options.units)!;
    sheet = scaledSheet(readers[kind](text.replace(/^\ufeff/, ""), unit), options.scale);
    const { pieces: found, leftOut, notes } = piecesOn(sheet, options.line);
    const units = recipeUnits(options.units ?? sheet.units ?? "cm");
    const names = new Names();
    const { drawnIn } = options;
    const allowed = found.map((each) => {
      const traced = tracedPiece(names.take(each.called, "piece"), each, units, drawnIn);
      return each.cutting === undefined ? { traced, notes: [] } : withAllowances(traced, each.cutting, units, kernel);
    });
    const pieces = allowed.map(({ traced }) => traced);
    const all = { pieces, leftOut: [...sheet.leftOut, ...leftOut] };
    const recipe = tidied(recipeText(called, units, all), kernel);
    const straying = Math.max(...pieces.map((piece) => piece.straying));
    const unstripped =
      drawnIn !== undefined && found.every(({ along }) => along === "sewing")
        ? ["Every outline is a sewing line, so that no allowance is taken off."]
        : [];
    return {
      recipe,
      ...all,
      notes: [...sheet.notes, ...notes, ...allowed.flatMap((each) => each.notes), ...unstripped],
      straying,
    };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const { message, line, hint } = error;
    const problem = { message, ...(line !== undefined && { line }), ...(hint !== undefined && { hint }) };
    return { problem, notes: sheet?.notes ?? [], leftOut: sheet?.leftOut ?? [] };
  }
};

/** A piece with the allowances that its drawn cutting line shows, measured on the piece as the recipe draws it. */
const withAllowances = (
  traced: TracedPiece,
  cutting: Path,
  units: RecipeUnits,
  kernel: Pick<Kernel, "work">,
): { readonly traced: TracedPiece; readonly notes: readonly string[] } => {
  const { name, text, moved } = traced;
  const { garment } = kernel.work({ file: "traced.chalk", text: `chalkline 1\nunits ${units.units}\n${text}\n` });
  const piece = garment.pieces.get(name);
  if (!piece || !boundary(piece))
    return { traced, notes: [`${name}: its outline does not close, so that no allowance was measured.`] };
  const laid = mapped(cutting, (p) => plus(p, moved));
  const { lines, straying } = allowancesDrawn(piece, laid, units);
  const isNear = straying <= nearEnough;
  return {
    traced: { ...traced, text: text.replace(/\n\}$/, `\n${lines.map((line) => `  ${line}`).join("\n")}\n}`) },
    notes: isNear
      ? []
      : [
          `${name}: its allowances are no single width, or its corners are cut in a way of their own; the cutting line lies up to ${straying.toFixed(1)} mm off the drawn one.`,
        ],
  };
};

// As near as two lines of a drawing are to what they stand for, mm.
const nearEnough = 0.15;

const readers: Readonly<Record<DrawingKind, (text: string, unit: number | undefined) => Sheet>> = {
  svg: svgSheet,
  dxf: dxfSheet,
  csv: tableSheet,
};

const scaledSheet = (sheet: Sheet, scale: number): Sheet => {
  if (scale === 1) return sheet;
  return {
    ...sheet,
    lines: sheet.lines.map((each) => ({ ...each, path: mapped(each.path, (p) => times(p, scale)) })),
    spots: sheet.spots.map((each) => ({ ...each, at: times(each.at, scale) })),
    words: sheet.words.map((each) => ({ ...each, at: times(each.at, scale) })),
  };
};

const recipeText = (
  called: string,
  { units }: RecipeUnits,
  { pieces, leftOut }: { readonly pieces: readonly TracedPiece[]; readonly leftOut: readonly LeftOut[] },
): string => {
  const name = plainWords(called);
  const said = [
    `Traced from ${name}. Rename what has a number to what it is:`,
    ...pieces.map((piece) => `  ${piece.name}: ${runOf(piece.edges)}`),
    ...(leftOut.length === 0 ? [] : ["Left out:", ...leftOut.map((each) => `  ${leftOutWords(each)}`)]),
  ];
  return [
    "chalkline 1",
    `recipe "${titleOf(name)}"`,
    `units ${units}`,
    "",
    ...said.map((line) => `# ${line}`),
    ...pieces.flatMap(({ text }) => ["", text]),
    "",
  ].join("\n");
};

/** What was left out, with its count and its first line. */
export const leftOutWords = ({ what, count, line }: LeftOut): string =>
  `${plainWords(what)} (${count === 1 ? `1, line ${line}` : `${count}, the first at line ${line}`})`;

const runOf = (edges: readonly string[]): string =>
  edges.length <= 2 ? edges.join(", ") : `${edges[0]} to ${edges.at(-1)}`;

/** A title out of a file's name: "side-panel.svg" is "Side panel". */
const titleOf = (name: string): string => {
  const words = name
    .replace(/\.[A-Za-z0-9]+$/, "")
    .replace(/[-_]+/g, " ")
    .replace(/[\\"]/g, "")
    .trim();
  return words === "" ? "Traced" : `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

const tidied = (text: string, kernel: Pick<Kernel, "parse">): string => {
  if (new TextEncoder().encode(text).length > limits.fileBytes)
    throw new Refused(`The recipe would be larger than ${limits.fileBytes / 1024 / 1024} MiB, and none may be.`);
  const { tree, forms, diagnostics } = kernel.parse({ file: "traced.chalk", text });
  const [first] = diagnostics;
  if (first && (first.code.startsWith("limit-") || first.code === "line-too-long"))
    throw new Refused(`The drawing is too finely cut for a recipe. ${first.message}`);
  if (first) throw new Error(`a traced recipe cannot be read: ${first.message}`);
  return tidy(tree, forms);
};
