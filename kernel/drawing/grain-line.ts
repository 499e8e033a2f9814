// Where the grain line of a piece is drawn. A line given by its two places stays as given unless it would lie on an edge;
// one that runs along an edge is laid through the body of the piece, near that edge and clear of the others.
import { contains, flattened } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, mapped, type Path, startOf, straight } from "../geometry/path.ts";
import { between, distance, dot, minus, type Point, plus, quarterTurn, times, unit } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { boundary } from "../outline.ts";
import type { Edge, Piece } from "../working.ts";
import { type Line, room } from "./box.ts";

/** The grain line of a piece; undefined where there is none, or no closed outline to lay it in. */
export const grainLine = (piece: Piece): Path | undefined => {
  if (!laidBefore.has(piece)) laidBefore.set(piece, grainLaidIn(piece));
  return laidBefore.get(piece);
};

// A piece never changes, and both its grain and its label ask.
const laidBefore = new WeakMap<Piece, Path | undefined>();

const grainLaidIn = (piece: Piece): Path | undefined => {
  const { grain } = piece;
  const loop = boundary(piece);
  if (grain?.kind === "line") {
    const given = straight(grain.from, grain.to);
    return loop && runsOnEdge(given, loop) ? (laidAlong(given, true, loop) ?? given) : given;
  }
  const edge = grain ? piece.edges.get(grain.edge) : foldOf(piece);
  return edge && loop && laidAlong(edge.path, isInOutline(piece, edge), loop);
};

/** Whether most of a given line lies so near the outline that one could not tell the two apart. */
const runsOnEdge = (given: Path, loop: Path): boolean => {
  const at = (share: number): Point => between(startOf(given), endOf(given), share);
  const outline = flattened(loop, drawnWithin);
  if (isClear([at(0.1), at(0.9)], onEdge, outline)) return false;
  const along = fifths.filter((share) => !isClear([at(share), at(share + 0.2)], onEdge, outline));
  return along.length > fifths.length / 2;
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

// A line nearer to an edge than this, in mm, seems to lie on it. A given line is looked at in the fifths that begin here.
const onEdge = 2;
const fifths = [0, 0.2, 0.4, 0.6, 0.8];

// Clear of the outline on either side, mm; where no line has so much room, the other has to do.
const clearOfSides = [10, 4];

// How near, in mm, the bent line follows the outline.
const drawnWithin = 0.5;

// The lines tried across the piece; the edge itself is tried first where it is an inner line.
const triedAcross = 40;

const laidAlong = (path: Path, inOutline: boolean, loop: Path): Path | undefined => {
  const along = unit(minus(endOf(path), startOf(path)));
  if (along.x === 0 && along.y === 0) return undefined;
  const edgeAt = dot(between(startOf(path), endOf(path), 0.5), quarterTurn(along));
  const across = levels(loop, along);
  const breadth = Math.abs(across[across.length - 1]! - across[0]!);
  const wanted = inOutline ? Math.min(clearOfEdge, breadth * shareOfNarrow) : 0;
  const stretches = [...across, ...(inOutline ? [] : [edgeAt])]
    .map((level) => ({ away: Math.abs(level - edgeAt), stretch: longestWithin(loop, along, level) }))
    .sort((a, b) => a.away - b.away);
  const longest = Math.max(...stretches.map(({ stretch }) => lengthOf(stretch)));
  const lines = stretches
    .filter(({ stretch }) => usualShare * lengthOf(stretch) >= leastShare * longest)
    .map(({ away, stretch }) => ({ away, line: shortened(stretch!, leastShare * longest) }));
  const far = lines.filter(({ away }) => away >= wanted);
  // Near its edge, but not near another: a line that touches a curve there would be taken for a part of it.
  const outline = flattened(loop, drawnWithin);
  for (const side of clearOfSides) {
    const clear = [...far, ...lines].find(({ line }) => isClear(line, Math.min(side, breadth / 5), outline));
    if (clear) return straight(...clear.line);
  }
  const any = far[0] ?? lines[lines.length - 1];
  return any && straight(...any.line);
};

/** Whether a line has the outline no nearer than so many mm on either side. */
const isClear = ([start, end]: Stretch, side: number, outline: Line): boolean =>
  room(
    {
      center: between(start, end, 0.5),
      turn: angleOf(minus(end, start)),
      halfWidth: distance(start, end) / 2,
      halfHeight: side,
    },
    [outline],
  ) >= 1;

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

const shortened = ([start, end]: Stretch, least: number): Stretch => {
  const whole = distance(start, end);
  const length = Math.max(least, Math.min(usualShare * whole, whole - 2 * clearOfEnds));
  const middle = between(start, end, 0.5);
  const half = times(unit(minus(end, start)), length / 2);
  return [minus(middle, half), plus(middle, half)];
};
