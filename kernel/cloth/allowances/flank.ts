// A corner of the outline seen from its net point: two flanks, one edge each, both looking away from the corner.
// Seen so, a corner looks the same from either side, and each kind of corner is written once.
import { crossings } from "../../geometry/intersect.ts";
import { type Path, straight } from "../../geometry/path.ts";
import { distance, minus, type Point, plus, times } from "../../geometry/point.ts";

/** One edge as a corner sees it. */
export interface Flank {
  /** The net corner: where the two sewing lines meet. */
  readonly corner: Point;
  /** Direction, of length 1, in which the sewing line leaves the corner. */
  readonly away: Point;
  /** Where the allowance ends when it is not carried on: square out from the net corner. */
  readonly end: Point;
  /** Width of the allowance, mm. */
  readonly width: number;
  readonly fold: boolean;
  /** The cutting line, running away from the corner; it begins `carried` mm before it, carried on straight. */
  readonly cutting: Path;
  /** How far the cutting line is carried on past the corner, mm. */
  readonly carried: number;
  /** How much of it an inner corner may trim off, mm, without a look at what else it meets; 0 where it runs back on itself. */
  readonly trimmable: number;
}

/** How two cutting lines meet; places are mm away from the corner, negative where a line was carried on past it. */
export interface Meeting {
  /** Where the first flank's cutting line stops. */
  readonly ownAt: number;
  /** Where the second flank's cutting line stops. */
  readonly otherAt: number;
  /** The way from the first stop to the second; empty where the two are one place. */
  readonly across: Path;
}

/** How far from the net corner a corner may reach: times the wider allowance (common practice, no source, is 2 to 2.5). */
export const longestReach = 2.5;

/** The farthest, in mm, that a corner of two allowances may lie from the net corner. */
export const reachOf = (own: Flank, other: Flank): number => longestReach * Math.max(own.width, other.width);

/** The straight way between two places, or none where they are one. */
export const wayAcross = (from: Point, to: Point): Path => (distance(from, to) < onePlace ? [] : straight(from, to));

/** Where a flank's sewing line, carried on straight past the corner, comes to the other's cutting line; undefined out of reach. */
export const carriedOnToCutting = (own: Flank, other: Flank): { point: Point; otherAt: number } | undefined => {
  const reach = reachOf(own, other);
  // It starts a little inside, so that a cutting line through the net corner itself is crossed and not only touched.
  const inside = plus(own.corner, own.away);
  const carriedOn = straight(inside, minus(own.corner, times(own.away, reach)));
  const found = crossings(carriedOn, other.cutting).map(({ point, onSecond }) => ({
    point,
    otherAt: onSecond - other.carried,
  }));
  return found.sort((a, b) => distance(a.point, own.corner) - distance(b.point, own.corner))[0];
};

// Nearer than this, in mm, two places on cutting lines are one; far below what any knife follows.
const onePlace = 1e-6;
