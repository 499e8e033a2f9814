// Pieces made as plain data, and steps worked on them directly, for tests of alterations.
import type { Where } from "../../grammar/diagnostic.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { type Path, straight } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { boundary } from "../../kernel/outline.ts";
import { emptyPiece } from "../../kernel/piece.ts";
import { Problem } from "../../kernel/problem.ts";
import type { PieceStep } from "../../kernel/step.ts";
import type { Edge, NamedPlace, Piece, Role, Units } from "../../kernel/working.ts";

export const nowhere: Where = { file: "test.chalk", from: 0, to: 0, line: 1 };

export const at = (x: number, y: number): Point => ({ x, y });

export interface MadeEdge {
  readonly name: string;
  readonly path: Path;
  readonly role?: Role;
  /** The outline walks it from its end. */
  readonly turned?: true;
  /** A line inside the piece. */
  readonly inner?: true;
}

/** A piece of these edges, in outline order, with these named places. */
export const madePiece = (
  edges: readonly MadeEdge[],
  places: Readonly<Record<string, Point>> = {},
  more: Partial<Piece> = {},
): Piece => ({
  ...emptyPiece("back", nowhere),
  edges: new Map(
    edges.map(({ name, path, role }): [string, Edge] => [name, { name, path, role: role ?? "seam", drawnBy: nowhere }]),
  ),
  outline: edges.filter(({ inner }) => !inner).map(({ name, turned }) => ({ edge: name, turned: turned ?? false })),
  places: new Map(
    Object.entries(places).map(([name, point]): [string, NamedPlace] => [name, { name, point, drawnBy: nowhere }]),
  ),
  ...more,
});

/** A rectangle from the origin, drafted as one does: top and hem to the right, side and center down. */
export const rectangle = (
  width: number,
  height: number,
  roles: Readonly<Record<string, Role>> = {},
  more: Partial<Piece> = {},
): Piece => {
  const role = (name: string): { role?: Role } => (roles[name] ? { role: roles[name] } : {});
  return madePiece(
    [
      { name: "top", path: straight(at(0, 0), at(width, 0)), ...role("top") },
      { name: "side", path: straight(at(width, 0), at(width, height)), ...role("side") },
      { name: "hem", path: straight(at(0, height), at(width, height)), turned: true, ...role("hem") },
      { name: "center", path: straight(at(0, 0), at(0, height)), turned: true, ...role("center") },
    ],
    { A: at(0, 0), B: at(width, 0), C: at(width, height), D: at(0, height) },
    more,
  );
};

/** Works a step on a piece, the slots filled as given. */
export const worked = (step: PieceStep, fill: Readonly<Record<string, unknown>>, piece: Piece, units: Units = "mm") =>
  step.work(fill as never, piece, { where: nowhere, units });

/** The code and message of the Problem that a step raises; fails when it raises none. */
export const problemOf = (
  step: PieceStep,
  fill: Readonly<Record<string, unknown>>,
  piece: Piece,
): { code: string; message: string; hint: string | undefined } => {
  try {
    worked(step, fill, piece);
  } catch (error) {
    if (error instanceof Problem) return { code: error.code, message: error.message, hint: error.details.hint };
    throw error;
  }
  throw new Error("the step raised no problem");
};

export const place = (x: number, y: number, more: { on?: string; name?: string } = {}) => ({
  kind: "place",
  point: at(x, y),
  ...more,
});

export const pathOf = (piece: Piece, edge: string): Path => piece.edges.get(edge)!.path;
export const lengthOf = (piece: Piece, edge: string): number => pathLength(pathOf(piece, edge));
export const areaOf = (piece: Piece): number => Math.abs(signedArea(boundary(piece)!));
export const placeOf = (piece: Piece, name: string): Point => piece.places.get(name)!.point;
export const apart = (a: Point, b: Point): number => distance(a, b);
