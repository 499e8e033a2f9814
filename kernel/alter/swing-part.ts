// A fit alteration: the piece is cut from a pivot inside it to three places of its outline. The part between the hinge and
// the mouth swings about the hinge; the part between the mouth and the third place is carried along without turning, so that
// it stays on grain; the rest stays. Bust, round back and hollow back are all made of this.
import { pathLength } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { joined, type Path, straight } from "../geometry/path.ts";
import {
  between,
  cross,
  distance,
  dot,
  minus,
  type Point,
  plus,
  sameSpot,
  sameSpotTolerance,
  times,
  unit,
} from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { turnBetween } from "../geometry/trig.ts";
import { boundary, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { angleInWords } from "../units.ts";
import type { Dart, Piece } from "../working.ts";
import { alongBoundary, boundaryFrom, type Move, partsMoved, type Stretch, shifted, stays } from "./parts-moved.ts";
import { withDart } from "./with-dart.ts";

export interface Swing {
  readonly hinge: Point;
  readonly pivot: Point;
  /** Where the second cut ends: at a place, or in the mouth of a dart that takes up the swing. */
  readonly mouth: Point | Dart;
  /** Where the third cut ends. */
  readonly third: Point;
  /** Radians clockwise on the page. */
  readonly turn: number;
  /** How far the part of the rest beside the third cut is shifted, and where the cut ends that frees it. */
  readonly beside?: { readonly by: Point; readonly to: Point };
}

export interface Swung {
  readonly piece: Piece;
  readonly pivot: Point;
  /** The two sides of the mouth: first that of the part that swung. */
  readonly mouth: readonly [Point, Point];
}

/** The piece with its parts moved; cloth that would lie double is taken out. */
export const swung = (capped: Piece, asked: Swing): Swung => {
  const piece = uncapped(capped, asked.third);
  const whole = boundary(piece)!;
  const third = piece === capped ? asked.third : rayEnd(whole, asked.pivot, minus(asked.third, asked.pivot));
  const swing = { ...asked, third };
  const { hinge, pivot, turn, beside } = swing;
  const swings: Move = { to: (point) => rotated(point, hinge, turn), turn };
  const newPivot = swings.to(pivot);
  const carried = minus(newPivot, pivot);
  const carries = shifted(carried);
  const aside = beside ? shifted(beside.by) : stays;
  const at = (point: Point): number => alongBoundary(whole, point);
  const round = pathLength(whole);
  const ahead = (point: Point): number => (at(point) - at(hinge) + round) % round;
  const middle = isDart(swing.mouth) ? between(swing.mouth.first, swing.mouth.second, 0.5) : swing.mouth;
  const forward = ahead(isDart(swing.mouth) ? swing.mouth.first : middle) < ahead(third);
  const [onSwung, onCarried] = mouthEnds(whole, swing, forward, ahead);
  const carriedEnd = trimmedThird(whole, swing, carried, middle);
  const restEnd = beside ? trimmedBeside(whole, swing, beside) : third;
  const stretch = (from: Point, to: Point, move: Move | undefined): Stretch[] => {
    if (sameSpot(from, to, nothing)) return [];
    return [forward ? { from: at(from), to: at(to), move } : { from: at(to), to: at(from), move }];
  };
  const stretches = [
    ...stretch(hinge, onSwung, swings),
    ...stretch(onSwung, onCarried, undefined).map((lost) =>
      isDart(swing.mouth) ? { ...lost, mouth: true as const } : lost,
    ),
    ...stretch(onCarried, carriedEnd, carries),
    ...stretch(carriedEnd, third, undefined),
    ...(beside ? [...stretch(third, restEnd, aside), ...stretch(restEnd, beside.to, undefined)] : []),
    ...stretch(beside ? beside.to : third, hinge, stays),
  ];
  const loop = (from: Point, to: Point): Path => {
    const path = forward ? boundaryFrom(whole, at(from), at(to)) : boundaryFrom(whole, at(to), at(from));
    const [start, end] = forward ? [from, to] : [to, from];
    return joined([path, straight(end, pivot), straight(pivot, start)]);
  };
  const loops: readonly (readonly [Path, Move])[] = [
    [loop(hinge, middle), swings],
    [loop(middle, third), carries],
    ...(beside ? [[loop(third, beside.to), aside] as const] : []),
  ];
  const moveAt = (point: Point): Move => {
    if (sameSpot(point, pivot)) return carries;
    return loops.find(([path]) => contains(path, point))?.[1] ?? stays;
  };
  return {
    piece: recapped(partsMoved(piece, stretches, moveAt), piece, swing.mouth),
    pivot: newPivot,
    mouth: [swings.to(onSwung), carries.to(onCarried)],
  };
};

/** The piece with the mouth straight of a dart that is cut through there: its cap is drawn anew for its new width. */
const uncapped = (piece: Piece, cut: Point): Piece => {
  const found = [...piece.darts.values()].find(({ edge, first, second }) => {
    const { path } = piece.edges.get(edge)!;
    const at = nearest(path, cut);
    return at.distance <= sameSpotTolerance && at.at > nearest(path, first).at && at.at < nearest(path, second).at;
  });
  if (!found) return piece;
  const edge = piece.edges.get(found.edge)!;
  const [from, to] = [nearest(edge.path, found.first).at, nearest(edge.path, found.second).at];
  const length = pathLength(edge.path);
  const path = joined([
    from > nothing ? part(edge.path, 0, from) : [],
    straight(found.first, found.second),
    length - to > nothing ? part(edge.path, to, length) : [],
  ]);
  return { ...piece, edges: new Map(piece.edges).set(edge.name, { ...edge, path }) };
};

/** Darts that were cut through have another width now, and another cap; that in the mouth is for the step to draw. */
const recapped = (now: Piece, before: Piece, mouth: Point | Dart): Piece =>
  [...now.darts.values()].reduce((sofar, dart) => {
    const was = before.darts.get(dart.name)!;
    const isAsWide = Math.abs(distance(dart.first, dart.second) - distance(was.first, was.second)) <= rounding;
    if (was === mouth || isAsWide) return sofar;
    const { path } = sofar.edges.get(dart.edge)!;
    if (
      dot(minus(dart.second, dart.first), minus(was.second, was.first)) > 0 &&
      nearest(path, dart.second).distance <= sameSpotTolerance
    )
      return withDart(sofar, dart);
    throw new Problem("dart-used-up", `The dart ${dart.name} is not wide enough to give what this takes.`, {
      hint: "Take a smaller length.",
    });
  }, now);

const isDart = (mouth: Point | Dart): mouth is Dart => "tip" in mouth;

/** The ends of the two parts at the mouth; where they would lie double, the swinging part ends earlier. */
const mouthEnds = (
  whole: Path,
  { mouth, pivot, hinge, turn }: Swing,
  forward: boolean,
  ahead: (point: Point) => number,
): readonly [Point, Point] => {
  if (isDart(mouth)) {
    const { first, second } = mouth;
    return ahead(first) < ahead(second) === forward ? [first, second] : [second, first];
  }
  const way = minus(mouth, pivot);
  // The swinging part lies on the hinge's side of the cut; turning it away from that side lays it over the other.
  const lapped = Math.sign(cross(way, minus(hinge, pivot))) !== Math.sign(turn) && turn !== 0;
  if (!lapped) return [mouth, mouth];
  return [rayEnd(whole, pivot, rotated(way, origin, -turn)), mouth];
};

/** Where the carried part ends at the third cut once it has moved; short of it, where the parts would lie double. */
const trimmedThird = (whole: Path, { pivot, third, beside }: Swing, carried: Point, middle: Point): Point => {
  const way = minus(third, pivot);
  const by = beside ? minus(carried, beside.by) : carried;
  const inward = Math.sign(cross(way, minus(middle, pivot)));
  const opens = cross(way, by) * inward >= -nothing;
  return opens ? third : rayEnd(whole, minus(pivot, by), way);
};

// What is shifted away from the part that stays opens; what is shifted toward it loses a strip.
const trimmedBeside = (whole: Path, { pivot, third }: Swing, { by, to }: NonNullable<Swing["beside"]>): Point => {
  const way = minus(to, pivot);
  const opens = cross(way, by) * Math.sign(cross(way, minus(third, pivot))) >= -nothing;
  return opens ? to : rayEnd(whole, minus(pivot, by), way);
};

/** Where a straight cut from inside the piece first meets the outline. */
export const rayEnd = (whole: Path, from: Point, way: Point): Point => {
  const [first] = crossingsWithRay(whole, from, unit(way))
    .filter(({ ahead }) => ahead > sameSpotTolerance)
    .sort((a, b) => a.ahead - b.ahead);
  if (first) return first.point;
  throw new Problem("pivot-outside", "A cut from there does not meet the outline.", {
    hint: "Choose a place inside the piece.",
  });
};

/** The outline edge that a point lies on, first one that does not end there. */
export const edgeUnder = (piece: Piece, point: Point): string | undefined => {
  const on = walked(piece).filter(({ path }) => nearest(path, point).distance <= sameSpotTolerance);
  return on.length === 1 ? on[0]!.edge.name : undefined;
};

/** A dart in the mouth, its legs in the order in which its edge was drafted. */
export const dartInMouth = (
  piece: Piece,
  edge: string,
  [one, other]: readonly [Point, Point],
): Pick<Dart, "first" | "second"> => {
  const { path } = piece.edges.get(edge)!;
  const inOrder = nearest(path, one).at <= nearest(path, other).at;
  return inOrder ? { first: one, second: other } : { first: other, second: one };
};

/** The tip of a dart that has swung with its pivot: as far short of the pivot as before, on the line to its mouth. */
export const tipAfter = (dart: Dart, before: Point, now: Point, mouth: readonly [Point, Point]): Point => {
  const short = distance(dart.tip, before);
  if (short <= sameSpotTolerance) return now;
  return plus(now, times(unit(minus(between(...mouth, 0.5), now)), short));
};

/** A Problem where a dart holds less than a swing, in radians, would take from it. */
export const refuseUsedUp = ({ first, second, name }: Dart, turn: number, pivot: Point): void => {
  const angle = Math.abs(turnBetween(minus(first, pivot), minus(second, pivot)));
  if (Math.abs(turn) < angle) return;
  throw new Problem(
    "dart-used-up",
    `The dart ${name} holds ${angleInWords(angle)}, and this takes ${angleInWords(Math.abs(turn))}.`,
    { hint: "Take a smaller length." },
  );
};

const nothing = 1e-9;
const rounding = 1e-6;
const origin: Point = { x: 0, y: 0 };
