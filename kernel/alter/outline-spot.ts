// Where on a piece's outline a point lies, counted along the edges as the outline walks them.
import { pathLength, pointAt, spanLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { distance, type Point, sameSpotTolerance } from "../geometry/point.ts";
import { boundary, gaps, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";

/** A place on the outline: the edge by its turn in it, and the arc length in mm from where the outline enters the edge. */
export interface Spot {
  readonly index: number;
  readonly at: number;
}

/** All spots of the outline that count as the same spot as a point; two at a corner, none away from the outline. */
export const spotsAt = (piece: Piece, point: Point): Spot[] =>
  walked(piece).flatMap(({ path }, index) => {
    const foot = nearest(path, point);
    return foot.distance <= sameSpotTolerance ? [{ index, at: settled(path, foot.at) }] : [];
  });

/** The point at a spot. */
export const pointAtSpot = (piece: Piece, { index, at }: Spot): Point => {
  const { path } = walked(piece)[index]!;
  if (at <= 0) return startOf(path);
  return at >= pathLength(path) ? endOf(path) : pointAt(path, at);
};

/** The same spot, told as the start of the next edge when it is the end of one. */
export const onward = (piece: Piece, { index, at }: Spot): Spot => {
  const walk = walked(piece);
  return at >= pathLength(walk[index]!.path) ? { index: (index + 1) % walk.length, at: 0 } : { index, at };
};

/** An arc length moved onto an end of the path within 0.01 mm of it, or onto a joint of its spans within rounding. */
export const settled = (path: Path, at: number): number => {
  const length = pathLength(path);
  if (at <= sameSpotTolerance) return 0;
  if (at >= length - sameSpotTolerance) return length;
  let joint = 0;
  for (const span of path) {
    joint += spanLength(span);
    if (Math.abs(joint - at) <= rounding) return joint;
  }
  return at;
};

/** The boundary of a piece; a Problem while it is not drawn, or stands open. */
export const closedBoundary = (piece: Piece, units: Units): Path => {
  if (piece.outline.length === 0) {
    throw new Problem("outline-missing", `${piece.name} has no outline yet.`, {
      hint: "Draw its `outline` above this line.",
    });
  }
  const whole = boundary(piece);
  if (whole) return whole;
  const [{ before, after, from, to }] = gaps(piece) as [ReturnType<typeof gaps>[number]];
  const apart = distance(from, to);
  throw new Problem(
    "outline-open",
    `The outline of ${piece.name} is open: ${before.edge.name} and ${after.edge.name} are ${lengthIn(apart, units)} apart.`,
    { hint: "Close it with `replace` above this line." },
  );
};

/** The turn that an edge has in the outline; a Problem where it has none. */
export const turnInOutline = (piece: Piece, edge: string): number => {
  const index = piece.outline.findIndex((part) => part.edge === edge);
  if (index >= 0) return index;
  throw new Problem("edge-off-outline", `${edge} is no edge of the outline of ${piece.name}.`, {
    hint:
      piece.outline.length === 0
        ? "Draw the `outline` above this line."
        : `Name one of ${piece.outline.map((part) => part.edge).join(", ")}.`,
  });
};

// Arc lengths that ought to agree differ by less than this, in mm.
const rounding = 1e-6;
