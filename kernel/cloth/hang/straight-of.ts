// A piece as it was before any alteration: the first in its line whose outline is drawn.
import { boundary } from "../../outline.ts";
import type { Piece } from "../../working.ts";

/** The straight version of a piece; the piece itself where it was copied from none. */
export const straightOf = (piece: Piece): Piece => {
  let straight = piece;
  for (let each = piece.source; each && boundary(each) !== undefined; each = each.source) straight = each;
  return straight;
};
