// How far a line has to be carried on to leave a piece for certain.
import { bounds } from "../geometry/bounds.ts";
import { walked } from "../outline.ts";
import type { Piece } from "../working.ts";

/** A length, mm, that no two points of the outline are apart. */
export const reachOf = (piece: Piece): number => {
  const { left, top, right, bottom } = bounds(walked(piece).map(({ path }) => path));
  return right - left + (bottom - top);
};
