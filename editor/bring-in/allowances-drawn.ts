// The allowances of a piece whose cutting line was drawn round its sewing line: how wide each is, and how it turns its corners. They
// are measured, and then tried: the cutting line that they make is laid over the drawn one.
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { directionAt, pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { crossingsWithRay } from "../../kernel/geometry/intersect.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, type Path, startOf } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { outward, type Walked, walked } from "../../kernel/outline.ts";
import { millimetresIn } from "../../kernel/units.ts";
import type { Allowance, Corners, Piece } from "../../kernel/working.ts";
import type { RecipeUnits } from "./recipe-units.ts";

/** Allowances as a recipe says them. */
export interface AllowancesDrawn {
  readonly lines: readonly string[];
  /** How far, in mm, the cutting line that they make strays from the drawn one. */
  readonly straying: number;
}

/** The allowances of a worked piece that is to be cut along this line, which lies where the piece does. */
export const allowancesDrawn = (piece: Piece, cutting: Path, units: RecipeUnits): AllowancesDrawn => {
  const edges = walked(piece).filter(({ edge }) => edge.role !== "fold");
  const allowances = new Map<string, Allowance>();
  for (const { edge, path } of edges) {
    const width = told(widthBeyond(piece, path, cutting), units);
    allowances.set(edge.name, { width, corners: "point", drawnBy: piece.drawnBy });
  }
  const settled = edges.reduce<Piece>((now, each) => withCorners(now, each, cutting), { ...piece, allowances });
  return {
    lines: linesOf(settled.allowances, units),
    straying: Math.max(0, ...spotsApart(settled, cutting).map(({ apart }) => apart)),
  };
};

// Where along an edge its allowance is measured: clear of the corners, where another edge's begins.
const measuredAt = [0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8];

/** How far the cutting line lies beyond an edge, square to it, mm: the middle one of several measurements. */
const widthBeyond = (piece: Piece, path: Path, cutting: Path): number => {
  const length = pathLength(path);
  const widths = measuredAt
    .flatMap((share) => {
      const from = pointAt(path, share * length);
      const square = outward(piece, directionAt(path, share * length));
      const ahead = crossingsWithRay(cutting, from, square).find((crossing) => crossing.ahead > -onTheLine);
      return ahead ? [Math.max(0, ahead.ahead)] : [];
    })
    .sort((a, b) => a - b);
  return widths[Math.floor(widths.length / 2)] ?? 0;
};

// The two lines are one within this, mm, where there is no allowance.
const onTheLine = 0.2;

/** The width as somebody meant it, where that is as near as a drawing is exact. */
const told = (width: number, { units }: RecipeUnits): number => {
  const step = units === "in" ? millimetresIn.get("in")! / 16 : 0.5;
  const meant = Math.round(width / step) * step;
  return Math.abs(meant - width) <= asExact ? meant : width;
};

// Of a bent line that stands for a curve, as DXF has it, mm.
const asExact = 0.06;

/** The piece with those corners at an edge that come nearest to the drawn line; plain points where others come no nearer. */
const withCorners = (piece: Piece, { edge, path }: Walked, cutting: Path): Piece => {
  const own = piece.allowances.get(edge.name)!;
  if (own.width === 0) return piece;
  const about = [startOf(path), endOf(path)];
  const reach = reachOfCorners * Math.max(...[...piece.allowances.values()].map(({ width }) => width));
  const misfit = (tried: Piece): number =>
    spotsApart(tried, cutting, (p) => about.some((corner) => distance(corner, p) <= reach))
      .map(({ apart }) => Math.max(0, apart - unseen))
      .reduce((sum, each) => sum + each, 0);
  let [best, least] = [piece, misfit(piece)];
  for (const corners of otherCorners) {
    if (least === 0) break;
    const tried = { ...piece, allowances: new Map(piece.allowances).set(edge.name, { ...own, corners }) };
    const off = misfit(tried);
    if (off < least * markedlyLess) [best, least] = [tried, off];
  }
  return best;
};

const otherCorners: readonly Corners[] = ["turned", "square", "cut"];

// So many widths from a corner of the outline its cutting line may turn.
const reachOfCorners = 3;

// Two drawn lines are one within this, mm, and a corner counts as better when it halves what is off.
const unseen = 0.12;
const markedlyLess = 0.5;

/** Spots of either cutting line, and how far each lies from the other line, mm. */
const spotsApart = (
  piece: Piece,
  drawn: Path,
  isAsked: (p: Point) => boolean = () => true,
): { readonly at: Point; readonly apart: number }[] => {
  const made = cuttingLine(piece)?.path;
  if (!made) return [];
  return [[made, drawn] as const, [drawn, made] as const].flatMap(([from, to]) =>
    spotsOn(from)
      .filter(isAsked)
      .map((at) => ({ at, apart: nearest(to, at).distance })),
  );
};

/** The joints of a path and spots between them. */
const spotsOn = (path: Path): Point[] =>
  path.flatMap((span) => {
    const length = pathLength([span]);
    const count = Math.max(1, Math.ceil(length / looksApart));
    return Array.from({ length: count }, (_, index) => pointAt([span], (index / count) * length));
  });

const looksApart = 4;

/** One line for all edges with the same allowance, in the order of the outline. */
const linesOf = (allowances: ReadonlyMap<string, Allowance>, { length }: RecipeUnits): string[] => {
  const lines = new Map<string, string[]>();
  for (const [edge, { width, corners }] of allowances) {
    const by = `by ${length(width)}${corners === "point" || length(width) === "0" ? "" : ` corners ${corners}`}`;
    lines.set(by, [...(lines.get(by) ?? []), edge]);
  }
  return [...lines].map(([by, edges]) => `allow ${edges.join(", ")} ${by}`);
};
