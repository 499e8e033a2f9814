// Which of a dart's legs the folded cloth is pressed against, so that the edge beyond that leg covers it.
import { dartMeasures } from "../dart-measures.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { between, dot, minus, type Point } from "../geometry/point.ts";
import { walked } from "../outline.ts";
import type { Dart, Piece } from "../working.ts";

/**
 * The leg that a dart is folded to. As is the custom (handbook of the trade 4.10), upright darts are pressed toward the
 * center and level ones down, unless the dart says otherwise.
 */
export const foldedSide = (piece: Piece, dart: Dart): "first" | "second" => {
  const { middle, outward } = dartMeasures(dart);
  const across = minus(dart.second, dart.first);
  const toward = (place: Point): "first" | "second" => (dot(across, minus(place, middle)) > 0 ? "second" : "first");
  const named = dart.folded === undefined ? undefined : piece.edges.get(dart.folded);
  if (named) return toward(nearest(named.path, middle).point);
  const isLevel = Math.abs(outward.x) > Math.abs(outward.y);
  return isLevel ? toward({ x: middle.x, y: middle.y + 1 }) : toward(centerOf(piece, middle));
};

// The center is where the fold is, else the opening, else the grain line, else the edge that the outline starts with.
const centerOf = (piece: Piece, from: Point): Point => {
  const walk = walked(piece);
  const edge =
    walk.find(({ edge: { role } }) => role === "fold") ?? walk.find(({ edge: { role } }) => role === "opening");
  if (edge) return nearest(edge.path, from).point;
  const { grain } = piece;
  if (grain?.kind === "line") return between(grain.from, grain.to, 0.5);
  const along = grain && piece.edges.get(grain.edge)?.path;
  if (along) return nearest(along, from).point;
  const first = walk[0]?.path;
  return first ? pointAt(first, pathLength(first) / 2) : from;
};
