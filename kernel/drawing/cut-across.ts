// Where a mark on the sewing line is carried out to the cutting line.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { longestReach } from "../cloth/allowances/flank.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import type { Point } from "../geometry/point.ts";
import { boundary } from "../outline.ts";
import type { Piece } from "../working.ts";

/** The spot of the cutting line straight out from a spot of an edge, and how far it is, mm. */
export interface CutAcross {
  readonly point: Point;
  readonly away: number;
}

/**
 * Where one comes to the cutting line from a spot of an edge in a direction of length 1, be it beyond a corner; undefined
 * where the edge has no allowance, where the piece itself lies before it, as in a slot that two allowances fill, and where
 * the line is farther off than the point of a corner may be.
 */
export const cutAcross = (piece: Piece, edge: string, from: Point, out: Point): CutAcross | undefined => {
  const cutting = cuttingLine(piece);
  const own = cutting?.stretches.find((stretch) => stretch.edge === edge);
  if (!cutting || !own || own.width === 0) return undefined;
  const met = crossingsWithRay(cutting.path, from, out).find(({ ahead }) => ahead > onLine);
  const cloth = crossingsWithRay(boundary(piece) ?? [], from, out).find(({ ahead }) => ahead > onLine);
  if (!met || met.ahead > longestReach * own.width || (cloth && cloth.ahead < met.ahead - onLine)) return undefined;
  return { point: met.point, away: met.ahead };
};

// A line nearer than this, in mm, is the one that the spot lies on.
const onLine = 0.01;
