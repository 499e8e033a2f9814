// Which way the lengthwise threads run in a piece.
import { endOf, startOf } from "./geometry/path.ts";
import { minus, type Point, size, unit } from "./geometry/point.ts";
import { walked } from "./outline.ts";
import type { Edge, Piece } from "./working.ts";

/** The direction of the grain, length 1; a piece on the fold that says none has it along the fold; else undefined. */
export const grainDirection = (piece: Piece): Point | undefined => {
  const { grain } = piece;
  if (grain === undefined) {
    const fold = foldOf(piece);
    return fold && alongEdge(fold);
  }
  if (grain.kind === "line") return ofLength(minus(grain.to, grain.from));
  const edge = piece.edges.get(grain.edge);
  return edge && alongEdge(edge);
};

/** The first fold of the outline; undefined where there is none. */
export const foldOf = (piece: Piece): Edge | undefined => walked(piece).find(({ edge }) => edge.role === "fold")?.edge;

/** The direction from an edge's start to its end, length 1; undefined where they are one. */
export const alongEdge = (edge: Edge): Point | undefined => ofLength(minus(endOf(edge.path), startOf(edge.path)));

const ofLength = (v: Point): Point | undefined => (size(v) > 0 ? unit(v) : undefined);
