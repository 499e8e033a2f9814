// Garments made as plain data, for tests of what judges them. Every statement that a finding may point at has a line of
// its own, so that a test can tell them apart.
import type { Where } from "../../grammar/diagnostic.ts";
import type { Check } from "../../kernel/check.ts";
import { endOf, type Path, reversed, startOf, straight } from "../../kernel/geometry/path.ts";
import { type Point, sameSpot } from "../../kernel/geometry/point.ts";
import type { Edge, Fabric, Garment, Judgement, Notch, Piece, Role, Run, Seam } from "../../kernel/working.ts";

export const atLine = (line: number, file = "test.chalk"): Where => ({ file, from: 0, to: 1, line });

export const at = (x: number, y: number): Point => ({ x, y });

/** A piece of these edges; in the outline each starts where the one before ends, so some are walked from their end. */
export const madePiece = (
  name: string,
  edges: readonly (readonly [string, Path])[],
  more: Partial<Piece> = {},
): Piece => ({
  name,
  edges: new Map(
    edges.map(([edge, path], index): [string, Edge] => [
      edge,
      { name: edge, path, role: "seam", drawnBy: atLine(11 + index) },
    ]),
  ),
  places: new Map(),
  outline: edges.map(([edge, path], index) => ({
    edge,
    turned: isTurned(path, edges[(index + 1) % edges.length]![1]),
  })),
  allowances: new Map(),
  notches: [],
  drills: [],
  labels: [],
  hinges: [],
  darts: new Map(),
  takeUps: [],
  keeps: [],
  doubtful: false,
  drawnBy: atLine(10),
  ...more,
});

/** A four-sided piece from its corners A (top left), B, C, D: edges top (A to B), side (B to C), hem (D to C), center (A to D). */
export const panel = (
  name: string,
  [a, b, c, d]: readonly [Point, Point, Point, Point],
  more: Partial<Piece> = {},
): Piece =>
  madePiece(
    name,
    [
      ["top", straight(a, b)],
      ["side", straight(b, c)],
      ["hem", straight(d, c)],
      ["center", straight(a, d)],
    ],
    more,
  );

/** The panel that is a rectangle at the origin. */
export const rectangle = (name: string, width: number, height: number, more: Partial<Piece> = {}): Piece =>
  panel(name, [at(0, 0), at(width, 0), at(width, height), at(0, height)], more);

/** The piece with another role for one of its edges. */
export const marked = (piece: Piece, edge: string, role: Role): Piece => ({
  ...piece,
  edges: new Map(piece.edges).set(edge, { ...piece.edges.get(edge)!, role }),
});

/** The piece with its edges allowed for; all of the outline but folds where none are named. */
export const allowed = (piece: Piece, width: number, edges = [...piece.edges.keys()]): Piece => ({
  ...piece,
  allowances: new Map(
    edges
      .filter((edge) => piece.edges.get(edge)?.role !== "fold")
      .map((edge) => [edge, { width, corners: "point", drawnBy: atLine(30) }]),
  ),
});

export const notch = (edge: string, point: Point, double = false): Notch => ({
  edge,
  point,
  double,
  drawnBy: atLine(double ? 21 : 20),
});

/** A whole edge as a seam walks it, from its start or, turned, from its end. */
export const run = (piece: Piece, edge: string, turned = false): Run => {
  const { path } = piece.edges.get(edge)!;
  return { piece: piece.name, edge, path: turned ? reversed(path) : path, turned, whole: true, taken: [] };
};

export const seam = (first: readonly Run[], second: readonly Run[], more: Partial<Seam> = {}): Seam => ({
  first,
  second,
  ease: 0,
  within: 1,
  drawnBy: atLine(50),
  ...more,
});

export const shell: Fabric = { name: "shell", title: "gabardine", width: 1500, oneWay: false, drawnBy: atLine(5) };

export const garment = (pieces: readonly Piece[], more: Partial<Garment> = {}): Garment => ({
  title: "Test",
  file: "test.chalk",
  units: "mm",
  pieces: new Map(pieces.map((piece) => [piece.name, piece])),
  fabrics: new Map([["shell", shell]]),
  seams: [],
  cuts: [],
  accepts: [],
  incomplete: false,
  ...more,
});

export const cut = (piece: string, fabric = "shell"): Garment["cuts"][number] => ({
  piece,
  count: 2,
  fabric,
  drawnBy: atLine(60),
});

export const judgementsOf = (check: Check, of: Garment): Judgement[] => [...check.judge(of)];

export const verdictsOf = (check: Check, of: Garment): string[] =>
  judgementsOf(check, of).map(({ on, verdict }) => `${on}: ${verdict}`);

const isTurned = (path: Path, next: Path): boolean => {
  const meetsNext = (end: Point): boolean => sameSpot(end, startOf(next)) || sameSpot(end, endOf(next));
  return meetsNext(startOf(path)) && !meetsNext(endOf(path));
};
