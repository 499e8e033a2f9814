// Pieces made directly from paths, for tests of what comes after the recipe.
import type { Where } from "../../grammar/diagnostic.ts";
import { type Path, straight, through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Allowance, Corners, Edge, Piece, Role } from "../../kernel/working.ts";

export const nowhere: Where = { file: "test.chalk", from: 0, to: 0, line: 1 };

export interface MadeEdge {
  readonly name: string;
  readonly path: Path;
  readonly role?: Role;
  readonly allow?: number;
  readonly corners?: Corners;
  /** An inner line and no part of the outline. */
  readonly inner?: true;
}

/** A piece with these edges, in outline order. */
export const madePiece = (name: string, edges: readonly MadeEdge[], more: Partial<Piece> = {}): Piece => ({
  name,
  edges: new Map(edges.map((edge) => [edge.name, edgeOf(edge)])),
  places: new Map(),
  outline: edges.filter(({ inner }) => !inner).map((edge) => ({ edge: edge.name, turned: false })),
  allowances: new Map(edges.flatMap((edge) => (edge.allow === undefined ? [] : [[edge.name, allowanceOf(edge)]]))),
  notches: [],
  drills: [],
  labels: [],
  hinges: [],
  darts: new Map(),
  takeUps: [],
  keeps: [],
  doubtful: false,
  drawnBy: nowhere,
  ...more,
});

/** The straight edges of a polygon, named "0", "1" …, all with the same allowance. */
export const polygonEdges = (points: readonly Point[], allow: number, corners: Corners = "point"): MadeEdge[] =>
  points.map((point, index) => ({
    name: String(index),
    path: straight(point, points[(index + 1) % points.length]!),
    allow,
    corners,
  }));

export const at = (x: number, y: number): Point => ({ x, y });

/** A bent line through (x, y) pairs. */
export const bent = (...pairs: readonly (readonly [number, number])[]): Path =>
  through(pairs.map(([x, y]) => at(x, y)));

const edgeOf = ({ name, path, role = "seam" }: MadeEdge): Edge => ({ name, path, role, drawnBy: nowhere });

const allowanceOf = ({ allow = 0, corners = "point" }: MadeEdge): Allowance => ({
  width: allow,
  corners,
  drawnBy: nowhere,
});
