// A piece laid over what it was before, as a drawing: both outlines, the cloth between them, and dimension lines where most changed.
import { clothBetween, type Patch } from "../compare/cloth-between.ts";
import type { ChangedPiece } from "../compare/comparison.ts";
import { asItLies, type LaidBy, type Laying, laid, laidAsAsked, laidOver } from "../compare/laid-over.ts";
import { tellableLength } from "../compare/rounding.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import { type Bounds, bounds } from "../geometry/bounds.ts";
import { endOf, mapped, type Path, startOf } from "../geometry/path.ts";
import { between, distance, dot, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { boundary, outward, walked } from "../outline.ts";
import type { Piece } from "../working.ts";

/** A straight line with a tip at either end, beside an edge or from where a corner was to where it is. */
export interface Dimension {
  readonly from: Point;
  readonly to: Point;
  /** From the edge's ends to the line's; none for a corner. */
  readonly reaches: readonly (readonly [Point, Point])[];
  /** The edge or the corner that it measures. */
  readonly of: { readonly kind: "edge" | "corner"; readonly name: string };
  /** Away from the piece; length 1. */
  readonly out: Point;
}

/** Everything on the table of the earlier piece, mm. */
export interface Overlay {
  readonly piece: string;
  readonly before: readonly Path[];
  readonly after: readonly Path[];
  readonly added: readonly Patch[];
  readonly removed: readonly Patch[];
  readonly dimensions: readonly Dimension[];
  /** Around the outlines. */
  readonly bounds: Bounds;
  /** A two-hundredth of the longer side: what lettering, hatching and gaps are measured in, so that all pictures look alike. */
  readonly grade: number;
}

/**
 * The overlay of a changed piece; one of the two may be missing. Where they cannot be laid as asked, for want of a fold say,
 * they are laid as numbers take them.
 */
export const overlay = (
  before: Piece | undefined,
  after: Piece | undefined,
  changed: ChangedPiece,
  by: LaidBy,
): Overlay => {
  const laying = before && after ? (laidAsAsked(before, after, by) ?? laidOver(before, after)) : asItLies;
  const onTable = (path: Path): Path => mapped(path, (p) => laid(p, laying));
  const [was, is] = [outlineOf(before), outlineOf(after).map(onTable)];
  const [wasLoop, isLoop] = [before && boundary(before), after && boundary(after)];
  const cloth = wasLoop && isLoop ? clothBetween(wasLoop, onTable(isLoop)) : undefined;
  const box = bounds([...was, ...is]);
  const grade = Math.max(box.right - box.left, box.bottom - box.top) / 200;
  const whole = (loop: Path | undefined): Patch[] => (loop ? [flattened(loop, grade / 20)] : []);
  return {
    piece: changed.name,
    before: was,
    after: is,
    added: cloth?.added ?? (before ? [] : whole(isLoop)),
    removed: cloth?.removed ?? (after ? [] : whole(wasLoop)),
    dimensions: before && after ? dimensionsOf(before, after, changed, laying, grade) : [],
    bounds: box,
    grade,
  };
};

const outlineOf = (piece: Piece | undefined): Path[] => (piece ? walked(piece).map(({ path }) => path) : []);

// More than this many of each kind hide one another.
const mostEdges = 3;
const mostCorners = 3;

// A corner that moved less than this many grades would be all arrowhead.
const leastCorner = 3;

const dimensionsOf = (
  before: Piece,
  after: Piece,
  { edges, corners }: ChangedPiece,
  laying: Laying,
  grade: number,
): Dimension[] => {
  const longer = edges.filter(
    ({ difference, isInner }) => !isInner && difference !== null && Math.abs(difference) >= tellableLength,
  );
  const besideEdges = longer
    .slice(0, mostEdges)
    .flatMap(({ name }, index) => besideEdge(after, name, laying, (gap + index * gapMore) * grade) ?? []);
  const moved = corners.flatMap(({ edges: pair }): Dimension[] => {
    const [from, to] = [cornerAt(before, pair), cornerAt(after, pair)];
    if (!from || !to) return [];
    const now = laid(to, laying);
    if (distance(from, now) < leastCorner * grade) return [];
    const away = unit(minus(now, middleOf(before)));
    return [{ from, to: now, reaches: [], of: { kind: "corner", name: pair.join("/") }, out: away }];
  });
  return [...besideEdges, ...moved.slice(0, mostCorners)];
};

// How far a dimension line keeps from its edge, in grades, and how much farther each further one.
const gap = 7;
const gapMore = 3;

/** A line as long as the straight way between the edge's ends, outside of the edge by so many mm at its nearest. */
const besideEdge = (piece: Piece, name: string, laying: Laying, by: number): Dimension | undefined => {
  const part = walked(piece).find(({ edge }) => edge.name === name);
  if (!part) return undefined;
  const [start, end] = [startOf(part.path), endOf(part.path)];
  const along = unit(minus(end, start));
  const out = outward(piece, along);
  const bulge = Math.max(0, ...spotsAlong(part.path).map((spot) => dot(minus(spot, start), out)));
  const place = (p: Point): Point => laid(p, laying);
  const [from, to] = [start, end].map((p) => plus(p, times(out, bulge + by))) as [Point, Point];
  return {
    from: place(from),
    to: place(to),
    reaches: [
      [place(start), place(from)],
      [place(end), place(to)],
    ],
    of: { kind: "edge", name },
    out: unit(minus(place(out), place({ x: 0, y: 0 }))),
  };
};

const spotsAlong = (path: Path): Point[] => {
  const length = pathLength(path);
  return Array.from({ length: 17 }, (_, i) => pointAt(path, (length * i) / 16));
};

const cornerAt = (piece: Piece, [one, other]: readonly [string, string]): Point | undefined => {
  const walk = walked(piece);
  return walk.flatMap(({ edge, path }, index) => {
    const next = walk[(index + 1) % walk.length]!.edge.name;
    const isIt = (edge.name === one && next === other) || (edge.name === other && next === one);
    return isIt ? [endOf(path)] : [];
  })[0];
};

const middleOf = (piece: Piece): Point => {
  const { left, top, right, bottom } = bounds(outlineOf(piece));
  return between({ x: left, y: top }, { x: right, y: bottom }, 0.5);
};
