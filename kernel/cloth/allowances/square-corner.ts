// The stepped corner: the allowance ends square to its own seam, so that two pieces of different angle match when sewn.
import { dot, minus, plus, times } from "../../geometry/point.ts";
import { carriedOnToCutting, type Flank, type Meeting, wayAcross } from "./flank.ts";

/** The sewing line goes on to the neighbour's cutting line, from there square out; undefined where it does not get there. */
export const squareCorner = (own: Flank, other: Flank): Meeting | undefined => {
  const sewn = carriedOnToCutting(own, other);
  if (!sewn) return undefined;
  const ownAt = dot(minus(sewn.point, own.end), own.away);
  const outer = plus(own.end, times(own.away, ownAt));
  return { ownAt, otherAt: sewn.otherAt, across: wayAcross(outer, sewn.point) };
};
