// Traces a drawing, works the recipe that comes of it, and measures how far its outlines lie from the drawing.
import { expect } from "vitest";
import { type BringInOptions, type BroughtIn, broughtIn, type NotBroughtIn } from "../../editor/bring-in/brought-in.ts";
import type { DrawingKind } from "../../editor/bring-in/drawing-kinds.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { mapped, type Path } from "../../kernel/geometry/path.ts";
import { minus, type Point } from "../../kernel/geometry/point.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import type { Piece } from "../../kernel/working.ts";
import { chalkline, workedText } from "../worked-recipe.ts";

export const plainly: BringInOptions = { scale: 1, line: "cutting" };

export interface Traced {
  readonly made: BroughtIn;
  readonly outcome: Outcome;
  /** The outlines of the worked recipe, moved back to where they lay on the sheet. */
  readonly outlines: readonly Path[];
  readonly pieces: readonly Piece[];
}

export const tried = (
  text: string,
  kind: DrawingKind,
  options: Partial<BringInOptions> = {},
): BroughtIn | NotBroughtIn => broughtIn(text, kind, `drawing.${kind}`, { ...plainly, ...options }, chalkline);

/** Traces a drawing that has to come out: as a recipe without errors. */
export const traced = (text: string, kind: DrawingKind, options: Partial<BringInOptions> = {}): Traced => {
  const made = tried(text, kind, options);
  if ("problem" in made) throw new Error(`${made.problem.line}: ${made.problem.message}`);
  const outcome = workedText(made.recipe);
  expect(outcome.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const pieces = made.pieces.map(({ name }) => outcome.garment.pieces.get(name)!);
  const outlines = pieces.map((piece, i) => mapped(boundary(piece)!, (p) => minus(p, made.pieces[i]!.moved)));
  return { made, outcome, outlines, pieces };
};

/** Why a drawing is not brought in. */
export const refusalOf = (text: string, kind: DrawingKind): NotBroughtIn["problem"] => {
  const made = tried(text, kind);
  if (!("problem" in made)) throw new Error("it was brought in");
  return made.problem;
};

/** The greatest distance of any point of either path from the other, mm (Hausdorff), looked at so closely that nothing of a hundredth hides between. */
export const howFar = (a: Path, b: Path): number => Math.max(farthest(closely(a), b), farthest(closely(b), a));

export const farthest = (points: readonly Point[], path: Path): number =>
  Math.max(...points.map((p) => nearest(path, p).distance));

const closely = (path: Path): Point[] =>
  path.flatMap((span) => {
    if (span.kind === "cubic") return flattened([span], 0.01);
    const count = Math.max(1, Math.ceil(Math.hypot(span.end.x - span.start.x, span.end.y - span.start.y) / 25));
    return Array.from({ length: count + 1 }, (_, i) => ({
      x: span.start.x + ((span.end.x - span.start.x) * i) / count,
      y: span.start.y + ((span.end.y - span.start.y) * i) / count,
    }));
  });

/** An SVG of 1 m by 1 m in which one unit is 1 mm. */
export const inMillimetres = (...elements: readonly string[]): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="1000mm" height="1000mm" viewBox="0 0 1000 1000">\n${elements.join("\n")}\n</svg>\n`;
