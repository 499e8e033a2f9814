// A fit alteration: the piece is cut from a pivot inside it to three places of its outline. The part between the hinge and
// the mouth swings about the hinge; the part between the mouth and the third place is carried along without turning, so that
// it stays on grain; the rest stays. Bust, round back and hollow back are all made of this. Where a bust dart opens above its
// hinge, the part that hangs from the hinge is carried whole, and the one above it turns after it.
import { pathLength } from "../geometry/arc-length.ts";
import { contains } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { nearest } from "../geometry/nearest.ts";
import { endOf, joined, type Path, startOf, straight } from "../geometry/path.ts";
import {
  between,
  cross,
  distance,
  dot,
  minus,
  type Point,
  plus,
  quarterTurn,
  sameSpot,
  sameSpotTolerance,
  times,
  unit,
} from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { part } from "../geometry/split.ts";
import { bearing, turnBetween } from "../geometry/trig.ts";
import { boundary, walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { angleInWords } from "../units.ts";
import type { Dart, Piece } from "../working.ts";
import { alongBoundary, boundaryFrom, type Move, partsMoved, type Stretch, shifted, stays } from "./parts-moved.ts";
import { turnAt } from "./turned.ts";
import { withDart } from "./with-dart.ts";

export interface Swing {
  readonly hinge: Point;
  readonly pivot: Point;
  /** Where the pivot goes. */
  readonly pivotTo: Point;
  /** Where the second cut ends: at a place, or in the mouth of a dart that takes up the swing. */
  readonly mouth: Point | Dart;
  /** Where the third cut ends. */
  readonly third: Point;
  /** What the pivot turns by about the hinge, radians clockwise on the page. */
  readonly turn: number;
  /** How far the part of the rest beside the third cut is shifted, and where the cut ends that frees it. */
  readonly beside?: { readonly by: Point; readonly to: Point };
}

export interface Swung {
  readonly piece: Piece;
  readonly pivot: Point;
  /** The two sides of the mouth: first that of the part that turned. */
  readonly mouth: readonly [Point, Point];
}

/** A cut, where it meets the outline: what lies there between the part before it and the part after it is taken out. */
interface Cut {
  readonly at: Point;
  readonly before: Point;
  readonly after: Point;
  /** The part that takes up a step between the two. */
  readonly stepOn: Move;
}

/** The cuts in order, each with where the part beyond it goes. */
type Parts = readonly (readonly [Cut, Move])[];

/** The piece with its parts moved; cloth that would lie double is taken out. */
export const swung = (capped: Piece, asked: Swing): Swung => {
  const piece = uncapped(capped, asked.third);
  const whole = boundary(piece)!;
  const third = piece === capped ? asked.third : rayEnd(whole, asked.pivot, minus(asked.third, asked.pivot));
  const swing = { ...asked, third };
  const { hinge, pivot, pivotTo, beside } = swing;
  const along = wayRound(whole, swing);
  const isAbove = beside !== undefined && along.way(middleOf(swing)) > along.way(third);
  const carries = shifted(minus(pivotTo, pivot));
  const turns = isAbove ? turnsAfter(swing) : swingsAbout(swing);
  const aside = beside ? shifted(beside.by) : stays;
  const mouth = atMouth(whole, swing, turns, isAbove);
  const atHinge: Cut = { at: hinge, before: hinge, after: hinge, stepOn: stays };
  const thirdCut = atThird(whole, swing, carries, isAbove ? hinge : mouth.at);
  const level: Parts = beside ? [[atBeside(whole, swing, beside, aside), stays]] : [];
  // Each part begins at a cut and ends at the next one.
  const parts: Parts = isAbove
    ? [[atHinge, carries], [thirdCut, aside], ...level, [mouth, turns]]
    : [[atHinge, turns], [mouth, carries], [thirdCut, aside], ...level];
  const endOfPart = (index: number): Cut => parts[(index + 1) % parts.length]![0];
  const stretch = (from: Point, to: Point, rest: Omit<Stretch, "from" | "to">): Stretch[] =>
    sameSpot(from, to, nothing) ? [] : [{ ...along.between(from, to), ...rest }];
  const stretches = parts.flatMap(([cut, move], index) => [
    ...stretch(cut.before, cut.after, {
      move: undefined,
      ...(cut === mouth && isDart(swing.mouth) ? { mouth: true } : { stepOn: cut.stepOn }),
    }),
    ...stretch(cut.after, endOfPart(index).before, { move }),
  ]);
  const loops = parts.flatMap(([{ at }, move], index): [Path, Move][] =>
    move === stays ? [] : [[loopFrom(whole, along.between(at, endOfPart(index).at), pivot), move]],
  );
  const moveAt = (point: Point): Move => {
    if (sameSpot(point, pivot)) return carries;
    return loops.find(([path]) => contains(path, point))?.[1] ?? stays;
  };
  return {
    piece: recapped(partsMoved(piece, stretches, moveAt), piece, swing.mouth),
    pivot: pivotTo,
    mouth: isAbove ? [turns.to(mouth.after), mouth.before] : [turns.to(mouth.before), carries.to(mouth.after)],
  };
};

/** Where a mouth opens: between the hinge and the third cut, beyond the cut beside it, or between those two cuts. */
export const mouthPart = (
  whole: Path,
  swing: Pick<Swing, "hinge" | "mouth" | "third"> & { readonly beside: { readonly to: Point } },
): "below" | "above" | "between" => {
  const { way } = wayRound(whole, swing);
  const { mouth, third, beside } = swing;
  const ends = isDart(mouth) ? [way(mouth.first), way(mouth.second)] : [way(mouth)];
  if (Math.min(...ends) >= way(beside.to) - sameSpotTolerance) return "above";
  return Math.max(...ends) <= way(third) - sliver ? "below" : "between";
};

/** Where the hinge of a part above it lies while the dart in its mouth is folded shut about the pivot. */
export const hingeOverShutDart = (
  whole: Path,
  swing: Pick<Swing, "hinge" | "pivot" | "third"> & { readonly mouth: Dart; readonly beside: { readonly to: Point } },
): Point => {
  const { hinge, pivot, mouth } = swing;
  const [staying, turning] = legsInOrder(mouth, wayRound(whole, swing).way);
  return rotated(hinge, pivot, turnBetween(minus(turning, pivot), minus(staying, pivot)));
};

const legsInOrder = ({ first, second }: Dart, way: (point: Point) => number): readonly [Point, Point] =>
  way(first) < way(second) ? [first, second] : [second, first];

/** Which way round the outline the cuts follow one another from the hinge, and how far along that way a place lies. */
const wayRound = (
  whole: Path,
  swing: Pick<Swing, "hinge" | "mouth" | "third"> & { readonly beside?: { readonly to: Point } },
): {
  readonly way: (point: Point) => number;
  /** From one place to another along that way, told as the outline runs. */
  readonly between: (from: Point, to: Point) => { readonly from: number; readonly to: number };
} => {
  const at = (point: Point): number => alongBoundary(whole, point);
  const round = pathLength(whole);
  const ahead = (point: Point): number => (at(point) - at(swing.hinge) + round) % round;
  const forward = swing.beside
    ? ahead(swing.third) < ahead(swing.beside.to)
    : ahead(middleOf(swing)) < ahead(swing.third);
  return {
    way: (point) => (forward ? ahead(point) : (round - ahead(point)) % round),
    between: (from, to) => (forward ? { from: at(from), to: at(to) } : { from: at(to), to: at(from) }),
  };
};

const loopFrom = (whole: Path, { from, to }: { readonly from: number; readonly to: number }, pivot: Point): Path => {
  const path = joined([boundaryFrom(whole, from, to)]);
  return joined([path, straight(endOf(path), pivot), straight(pivot, startOf(path))]);
};

const middleOf = ({ mouth }: Pick<Swing, "mouth">): Point =>
  isDart(mouth) ? between(mouth.first, mouth.second, 0.5) : mouth;

const swingsAbout = ({ hinge, turn }: Swing): Move => ({ to: (point) => rotated(point, hinge, turn), turn });

/** Of the part above the hinge: it goes with the hinge, and turns back by what the part below would have swung. */
const turnsAfter = ({ hinge, turn, pivot, pivotTo }: Swing): Move => {
  const carried = minus(pivotTo, pivot);
  return { to: (point) => plus(rotated(point, hinge, -turn), carried), turn: -turn };
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

/** The cut to the mouth; where the two parts would lie double, the one that turns ends earlier. */
const atMouth = (whole: Path, swing: Swing, turns: Move, isAbove: boolean): Cut => {
  const { mouth, pivot, hinge, turn } = swing;
  const at = middleOf(swing);
  if (isDart(mouth)) {
    const [before, after] = legsInOrder(mouth, wayRound(whole, swing).way);
    return { at, before, after, stepOn: turns };
  }
  const toward = minus(mouth, pivot);
  // The part that swings lies on the hinge's side of the cut; turning it away from that side lays it over the other.
  const laps = !isAbove && turn !== 0 && Math.sign(cross(toward, minus(hinge, pivot))) !== Math.sign(turn);
  const before = laps ? rayEnd(whole, pivot, rotated(toward, origin, -turn)) : mouth;
  return { at, before, after: mouth, stepOn: turns };
};

/** The third cut; where the parts would lie double, the one that is carried ends short of it. */
const atThird = (whole: Path, { pivot, pivotTo, third, beside }: Swing, carries: Move, on: Point): Cut => {
  const carried = minus(pivotTo, pivot);
  const way = minus(third, pivot);
  const by = beside ? minus(carried, beside.by) : carried;
  const inward = Math.sign(cross(way, minus(on, pivot)));
  const opens = cross(way, by) * inward >= -nothing;
  return { at: third, before: opens ? third : rayEnd(whole, minus(pivot, by), way), after: third, stepOn: carries };
};

/** The cut that frees what lies beside the third; what is shifted toward the part that stays loses a strip. */
const atBeside = (whole: Path, { pivot, third }: Swing, { by, to }: NonNullable<Swing["beside"]>, aside: Move): Cut => {
  const way = minus(to, pivot);
  const opens = cross(way, by) * Math.sign(cross(way, minus(third, pivot))) >= -nothing;
  return { at: to, before: opens ? to : rayEnd(whole, minus(pivot, by), way), after: to, stepOn: aside };
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

/** The way down the cloth of the part that stays: as it is at the center, where a level cut meets the outline. */
export const downAtCenter = (piece: Piece, whole: Path, from: Point, way: Point): Point => {
  const center = rayEnd(whole, from, way);
  const on = walked(piece).find(({ path }) => nearest(path, center).distance <= sameSpotTolerance);
  return bearing(Math.PI / 2 + (on ? turnAt(piece, on.edge.name, center) : 0));
};

/** The way across the cloth, square to the way down, that a direction leans to. */
export const acrossToward = (down: Point, direction: Point): Point => {
  const square = quarterTurn(down);
  return dot(square, direction) >= 0 ? square : times(square, -1);
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

// A mouth nearer than this to the third cut, in mm, leaves no part between them.
const sliver = 1;
const origin: Point = { x: 0, y: 0 };
