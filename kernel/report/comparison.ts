// Before and after: every edge of a piece's outline with its length, held against the piece it was copied from.
import { pathLength } from "../geometry/arc-length.ts";
import { walked } from "../outline.ts";
import { sewnLengthOf } from "../sewn.ts";
import type { Keep, Piece, Role } from "../working.ts";

export interface ComparedEdge {
  readonly edge: string;
  readonly role: Role;
  /** Sewn length now, mm; undefined when an alteration took the edge out of the outline. */
  readonly now?: number;
  /** Its length as it is cut, where darts, pleats or gathers make that another. */
  readonly cut?: number;
  /** Length in the piece it was copied from, mm; undefined where that has no such edge. */
  readonly before?: number;
  /** Now less before, mm; undefined where there is nothing to hold it against. */
  readonly difference?: number;
  /** What the recipe promises for it. */
  readonly keep?: Keep;
}

// Lengths nearer than this, in mm, are one.
const asLong = 1e-6;

/** The outline's edges in its order, then those that only the source's outline has. */
export const compared = (piece: Piece): ComparedEdge[] => {
  const { source } = piece;
  const before = new Map(
    (source ? walked(source) : []).map(({ edge }) => [edge.name, { edge, length: sewnLengthOf(source!, edge.name) }]),
  );
  const kept = new Map(piece.keeps.map((keep) => [keep.edge, keep]));
  const present = walked(piece).map(({ edge, path }): ComparedEdge => {
    const was = before.get(edge.name)?.length;
    const now = sewnLengthOf(piece, edge.name);
    const cut = pathLength(path);
    const keep = kept.get(edge.name);
    return {
      edge: edge.name,
      role: edge.role,
      now,
      ...(Math.abs(cut - now) > asLong && { cut }),
      ...(was !== undefined && { before: was, difference: now - was }),
      ...(keep && { keep }),
    };
  });
  const names = new Set(present.map(({ edge }) => edge));
  const gone = [...before.values()].filter(({ edge }) => !names.has(edge.name));
  return [...present, ...gone.map(({ edge, length }) => ({ edge: edge.name, role: edge.role, before: length }))];
};
