// Adding to a piece what a step has drawn.
import type { Where } from "../grammar/diagnostic.ts";
import type { Path } from "./geometry/path.ts";
import type { Point } from "./geometry/point.ts";
import type { Edge, Piece } from "./working.ts";

/** The piece with one more edge, or with an edge redrawn. */
export const withEdge = (piece: Piece, edge: Edge): Piece => ({
  ...piece,
  edges: new Map(piece.edges).set(edge.name, edge),
});

/** The piece with a new edge along a path, sewn unless it is marked otherwise. */
export const withNewEdge = (piece: Piece, name: string, path: Path, drawnBy: Where): Piece =>
  withEdge(piece, { name, path, role: "seam", drawnBy });

export const withPlace = (piece: Piece, name: string, point: Point, drawnBy: Where): Piece => ({
  ...piece,
  places: new Map(piece.places).set(name, { name, point, drawnBy }),
});
