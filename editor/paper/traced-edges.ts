// An outline as it was clicked round: points that are corners or lie on a curve, and the edges that they make. The curve through
// a run of points is the very one that `curve … through` draws in a recipe.
import { hobbyCurve } from "../../kernel/geometry/hobby.ts";
import { joined, type Path, straight } from "../../kernel/geometry/path.ts";
import { minus, type Point, plus, size, times } from "../../kernel/geometry/point.ts";
import { angleOf } from "../../kernel/geometry/trig.ts";

/** One point of the outline, and what is said of the stretch that begins at it, should it be a corner. */
export interface TracedPoint {
  readonly at: Point;
  readonly kind: "corner" | "curve";
  /** The name given to the edge that begins here; empty for the name it has by its number. */
  readonly edge: string;
  readonly isFold: boolean;
  /** The width of this edge's own allowance as written; empty where it is that of the piece. */
  readonly allowance: string;
}

/** What lies between two neighbouring corners. */
export interface Stretch {
  /** The place in the outline of the point it begins at. */
  readonly index: number;
  readonly edge: string;
  /** From corner to corner, both included. */
  readonly points: readonly Point[];
  readonly isStraight: boolean;
  /** Of an outline without any corner, the direction in which its only curve leaves and arrives, radians. */
  readonly heading: number | undefined;
  readonly path: Path;
}

/** One edge of the piece: a stretch, or several neighbours that were given one name. */
export interface TracedEdge {
  readonly name: string;
  readonly stretches: readonly Stretch[];
  readonly isStraight: boolean;
  readonly isFold: boolean;
  /** As written; empty where it is that of the piece. */
  readonly allowance: string;
}

/** The stretches in order, from the first corner on; none while there are fewer than three points. */
export const stretchesOf = (outline: readonly TracedPoint[]): Stretch[] => {
  if (outline.length < 3) return [];
  const corners = outline.flatMap(({ kind }, index) => (kind === "corner" ? [index] : []));
  const starts = corners.length === 0 ? [0] : corners;
  return starts.map((from, at) => {
    const to = starts[(at + 1) % starts.length]!;
    const count = to > from ? to - from : to + outline.length - from;
    const points = Array.from({ length: count + 1 }, (_, i) => outline[(from + i) % outline.length]!.at);
    const heading = corners.length === 0 ? tangent(points.at(-2)!, points[0]!, points[1]!) : undefined;
    const isStraight = points.length === 2;
    return {
      index: from,
      edge: outline[from]!.edge === "" ? `edge-${at + 1}` : outline[from]!.edge,
      points,
      isStraight,
      heading,
      path: isStraight ? straight(points[0]!, points[1]!) : curved(points, heading),
    };
  });
};

/** The edges in order: neighbouring stretches of one name are one edge, across the first corner too. */
export const tracedEdges = (outline: readonly TracedPoint[]): TracedEdge[] => {
  const stretches = stretchesOf(outline);
  const first = stretches.findIndex(({ edge }, i) => edge !== stretches.at(i - 1)!.edge);
  const inOrder = first > 0 ? [...stretches.slice(first), ...stretches.slice(0, first)] : stretches;
  const groups: Stretch[][] = [];
  for (const stretch of inOrder) {
    const last = groups.at(-1);
    if (last && last[0]!.edge === stretch.edge) last.push(stretch);
    else groups.push([stretch]);
  }
  return groups.map((group) => {
    const said = outline[group[0]!.index]!;
    const isStraight = group.length === 1 && group[0]!.isStraight;
    return {
      name: group[0]!.edge,
      stretches: group,
      isStraight,
      isFold: isStraight && said.isFold,
      allowance: said.allowance,
    };
  });
};

/** All round, as one closed line. */
export const loopOf = (stretches: readonly Stretch[]): Path => joined(stretches.map(({ path }) => path));

const curved = (points: readonly Point[], heading: number | undefined): Path =>
  hobbyCurve(
    points.map((point, i) => ({
      point,
      ...(heading !== undefined && i === 0 && { leaving: heading }),
      ...(heading !== undefined && i === points.length - 1 && { arriving: heading }),
    })),
  );

/**
 * The direction at a point of the circle through it and its two neighbours, radians: turned inside out about the point, the circle
 * is a straight line of that direction.
 */
const tangent = (before: Point, here: Point, after: Point): number => {
  const [behind, ahead] = [minus(here, before), minus(after, here)];
  const weighed = (v: Point): Point => times(v, 1 / Math.max(size(v) ** 2, 1e-12));
  return angleOf(plus(weighed(behind), weighed(ahead)));
};
