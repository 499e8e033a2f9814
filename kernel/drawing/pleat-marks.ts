// A pleat: the two lines that come to lie on one another, and an arrow from the one that is lifted to the other.
import { directionAt } from "../geometry/arc-length.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { straight } from "../geometry/path.ts";
import { between, distance, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { boundary, outward, walked } from "../outline.ts";
import type { Piece, TakeUp } from "../working.ts";
import { arrowhead } from "./arrowhead.ts";
import type { Stroke } from "./drawing.ts";

/** The strokes of a pleat on an edge of the outline. */
export const pleatMarks = (piece: Piece, { edge, from, to, laid, long }: TakeUp): Stroke[] => {
  const path = walked(piece).find((each) => each.edge.name === edge)?.path;
  if (!path || laid === undefined) return [];
  const lineFrom = (point: Point): Point => {
    const inward = times(outward(piece, directionAt(path, nearest(path, point).at)), -1);
    const ahead = crossingsWithRay(boundary(piece) ?? path, point, inward).find((crossing) => crossing.ahead > onEdge);
    return plus(point, times(inward, Math.min(long ?? usual, ahead?.ahead ?? usual)));
  };
  const ends = new Map([
    [from, lineFrom(from)],
    [to, lineFrom(to)],
  ]);
  // The line further from the end that the pleat is laid toward is lifted, and laid on the other.
  const [lifted, under] = laid === "end" ? [from, to] : [to, from];
  const [tail, tip] = [lifted, under].map((point) => between(point, ends.get(point)!, arrowAt)) as [Point, Point];
  const direction = unit(minus(tip, tail));
  const size = Math.min(arrowSize, distance(tail, tip) / 3);
  return [
    ...[...ends].map(([start, end]): Stroke => ({ kind: "inner-line", path: straight(start, end) })),
    { kind: "inner-line", path: straight(tail, minus(tip, times(direction, size / 2))) },
    { kind: "arrowhead", path: arrowhead(tip, direction, size) },
  ];
};

// How far down its lines the arrow of a pleat stands, as a ratio.
const arrowAt = 0.5;
const arrowSize = 7;
const usual = 60;
const onEdge = 0.01;
