// Where the grain line of a piece is drawn. A line given by its two places stays as given; one that runs along an edge is
// laid through the body of the piece, near that edge.
import { contains } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, mapped, type Path, startOf, straight } from "../geometry/path.ts";
import { between, distance, dot, minus, type Point, plus, quarterTurn, times, unit } from "../geometry/point.ts";
import { boundary } from "../outline.ts";
import type { Edge, Piece } from "../working.ts";

/** The grain line of a piece; undefined where there is none, or no closed outline to lay it in. */
export const grainLine = (piece: Piece): Path | undefined => {
  if (piece.grain?.kind === "line") return straight(piece.grain.from, piece.grain.to);
  const edge = piece.grain ? piece.edges.get(piece.grain.edge) : foldOf(piece);
  const loop = boundary(piece);
  return edge && loop && laidAlong(edge, isInOutline(piece, edge), loop);
};

/** The edge of the outline that lies on the fold of the cloth, if there is one. */
export const foldOf = (piece: Piece): Edge | undefined =>
  piece.outline.map(({ edge }) => piece.edges.get(edge)).find((edge) => edge?.role === "fold");

const isInOutline = (piece: Piece, edge: Edge): boolean => piece.outline.some((part) => part.edge === edge.name);

// How far in from an edge of the outline the line is drawn, mm: clear of the fold bracket and the edge's name. In a piece
// too narrow for that it is drawn a third of the way across, which leaves room for the label on the other side.
const clearOfEdge = 32;
const shareOfNarrow = 1 / 3;

// Clear of the outline at both ends, mm, where the piece is long enough.
const clearOfEnds = 12;

// Common practice, no source: the line is two thirds of what there is room for, or more, so that it can be laid true.
const leastShare = 2 / 3;
const usualShare = 0.8;

// The lines tried across the piece; the edge itself is tried first where it is an inner line.
const triedAcross = 40;

const laidAlong = (edge: Edge, inOutline: boolean, loop: Path): Path | undefined => {
  const along = unit(minus(endOf(edge.path), startOf(edge.path)));
  if (along.x === 0 && along.y === 0) return undefined;
  const edgeAt = dot(between(startOf(edge.path), endOf(edge.path), 0.5), quarterTurn(along));
  const across = levels(loop, along);
  const breadth = Math.abs(across[across.length - 1]! - across[0]!);
  const wanted = inOutline ? Math.min(clearOfEdge, breadth * shareOfNarrow) : 0;
  const stretches = [...across, ...(inOutline ? [] : [edgeAt])]
    .map((level) => ({ away: Math.abs(level - edgeAt), stretch: longestWithin(loop, along, level) }))
    .sort((a, b) => a.away - b.away);
  const longest = Math.max(...stretches.map(({ stretch }) => lengthOf(stretch)));
  const long = stretches.filter(({ stretch }) => usualShare * lengthOf(stretch) >= leastShare * longest);
  const clear = long.find(({ away }) => away >= wanted) ?? long[long.length - 1];
  return clear?.stretch && shortened(clear.stretch, leastShare * longest);
};

/** Distances, across the direction, of the parallel lines to try. */
const levels = (loop: Path, along: Point): number[] => {
  const across = quarterTurn(along);
  const turned = bounds([mapped(loop, (p) => ({ x: dot(p, across), y: dot(p, along) }))]);
  return Array.from(
    { length: triedAcross - 1 },
    (_, i) => turned.left + ((turned.right - turned.left) * (i + 1)) / triedAcross,
  );
};

type Stretch = readonly [Point, Point];

const lengthOf = (stretch: Stretch | undefined): number => (stretch ? distance(...stretch) : 0);

/** The longest stretch inside the piece of the line in a direction at a distance across it. */
const longestWithin = (loop: Path, along: Point, level: number): Stretch | undefined => {
  const places = crossingsWithRay(loop, times(quarterTurn(along), level), along).map(({ point }) => point);
  const stretches = places
    .slice(1)
    .map((end, i): Stretch => [places[i]!, end])
    .filter(([start, end]) => contains(loop, between(start, end, 0.5)));
  return stretches.sort((a, b) => lengthOf(b) - lengthOf(a))[0];
};

const shortened = ([start, end]: Stretch, least: number): Path => {
  const whole = distance(start, end);
  const length = Math.max(least, Math.min(usualShare * whole, whole - 2 * clearOfEnds));
  const middle = between(start, end, 0.5);
  const half = times(unit(minus(end, start)), length / 2);
  return straight(minus(middle, half), plus(middle, half));
};
