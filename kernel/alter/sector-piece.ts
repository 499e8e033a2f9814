// A piece made to fit by its lengths alone: a ring's sector with a top and a hem, or with a tip in place of the top.
import type { Where } from "../../grammar/diagnostic.ts";
import { arcSpans } from "../geometry/arc.ts";
import { endOf, type Path, startOf, straight } from "../geometry/path.ts";
import { type Point, plus, times } from "../geometry/point.ts";
import { bearing } from "../geometry/trig.ts";
import { emptyPiece } from "../piece.ts";
import { Problem } from "../problem.ts";
import { angleInWords } from "../units.ts";
import type { Allowance, Edge, NamedPlace, OutlinePart, Piece, Role } from "../working.ts";

export interface Sector {
  /** Lengths of its top and its hem along the line, and how deep it is, mm; a top of 0 is a tip. */
  readonly top: number;
  readonly hem: number;
  readonly depth: number;
}

/** Allowances in mm that a piece is made with; undefined where the recipe does not say. */
export interface MadeWith {
  readonly seams: number | undefined;
  readonly hem: number | undefined;
}

/** Radius of the top, mm, and the angle, radians: r = top x depth / (hem - top); a strip has no radius (handbook 3.7). */
export const sectorOf = ({ top, hem, depth }: Sector): { readonly radius: number; readonly angle: number } => ({
  radius: (top * depth) / (hem - top),
  angle: (hem - top) / depth,
});

/** The piece, its top at the origin and its hem below it, the grain down its middle; a Problem where it would meet itself. */
export const sectorPiece = (name: string, sector: Sector, made: MadeWith, where: Where): Piece => {
  const { top, hem, depth } = sector;
  if (top < 0 || hem <= 0 || depth <= 0) {
    throw new Problem("sector-empty", "A piece has a hem and a depth above 0, and no top below 0.", {
      hint: "Name lengths above 0.",
    });
  }
  const { angle } = sectorOf(sector);
  if (Math.abs(angle) >= fullTurn) {
    const pieces = Math.floor(Math.abs(angle) / fullTurn) + 1;
    throw new Problem(
      "sector-full-turn",
      `In one piece this would go round by ${angleInWords(Math.abs(angle))}, and meet itself.`,
      {
        hint: `Make it of ${pieces} pieces or more: \`in ${pieces}\`.`,
      },
    );
  }
  const lines = linesOf(sector);
  const isTip = top === 0;
  const edges: [string, Path, Role][] = [
    ...(isTip ? [] : [["top", lines.top, "seam"] as [string, Path, Role]]),
    ["right-side", straight(endOf(lines.top), endOf(lines.hem)), "seam"],
    ["hem", lines.hem, "hem"],
    ["left-side", straight(startOf(lines.top), startOf(lines.hem)), "seam"],
  ];
  const outline: OutlinePart[] = edges.map(([edge]) => ({ edge, turned: edge === "hem" || edge === "left-side" }));
  const middle = (share: number): Point => ({ x: 0, y: depth * share });
  const allowance = (width: number): Allowance => ({ width, corners: "point", drawnBy: where });
  const places: [string, NamedPlace][] = isTip ? [["tip", { name: "tip", point: middle(0), drawnBy: where }]] : [];
  return {
    ...emptyPiece(name, where),
    edges: new Map(
      edges.map(([edge, path, role]): [string, Edge] => [edge, { name: edge, path, role, drawnBy: where }]),
    ),
    places: new Map(places),
    outline,
    allowances: new Map(
      edges.flatMap(([edge]) => {
        const width = edge === "hem" ? made.hem : made.seams;
        return width === undefined ? [] : [[edge, allowance(width)] as const];
      }),
    ),
    grain: { kind: "line", from: middle(grainFrom), to: middle(1 - grainFrom), drawnBy: where },
  };
};

const fullTurn = 2 * Math.PI;

// The share of the depth that the grain line stays away from top and hem.
const grainFrom = 0.2;

/** Top and hem from left to right; the middle of the top lies at the origin. */
const linesOf = (sector: Sector): { readonly top: Path; readonly hem: Path } => {
  const { top, hem, depth } = sector;
  // So near to a strip that the centre would lie further away than numbers reach.
  if (Math.abs(hem - top) <= nothing) {
    const across = (y: number): Path => straight({ x: -top / 2, y }, { x: hem / 2, y });
    return { top: across(0), hem: across(depth) };
  }
  const { radius, angle } = sectorOf(sector);
  const center: Point = { x: 0, y: -radius };
  // Where the hem is the shorter, the centre lies below it, and all angles and radii turn over.
  const arc = (from: number): Path => {
    const start = plus(center, times(bearing(Math.PI / 2 + angle / 2), from));
    if (Math.abs(from) <= nothing) return straight(center, center);
    return arcSpans(center, start, -angle).map((span) => ({ ...span, pivot: center }));
  };
  return { top: arc(radius), hem: arc(radius + depth) };
};

const nothing = 1e-9;
