// An edge of a piece by name, as the outline walks it or, for an inner line, as it was drafted.
import type { Path } from "../geometry/path.ts";
import { walked } from "../outline.ts";
import type { Piece } from "../working.ts";

/** The path of an edge and whether the outline walks it; undefined where the piece has no such edge. */
export const walkedEdge = (piece: Piece, name: string): { path: Path; walked: boolean } | undefined => {
  const part = walked(piece).find(({ edge }) => edge.name === name);
  if (part) return { path: part.path, walked: true };
  const edge = piece.edges.get(name);
  return edge && { path: edge.path, walked: false };
};
