// The armhole of a piece, found by its shoulder or by its own name, and redrawn as the blocks draw it: square to the
// shoulder at the tip, upright at the across mark, level at the underarm.
import { pathLength, pointAt, spanLength } from "../geometry/arc-length.ts";
import { nearest } from "../geometry/nearest.ts";
import { carriedOn } from "../geometry/offset.ts";
import { cubic, endDirection, endOf, type Path, reversed, startOf } from "../geometry/path.ts";
import {
  distance,
  dot,
  minus,
  type Point,
  plus,
  quarterTurn,
  sameSpot,
  sameSpotTolerance,
  times,
} from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { bearing } from "../geometry/trig.ts";
import { walked } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { followed } from "./followed.ts";
import { isMarkedCenter } from "./level-with.ts";
import { closedBoundary, turnInOutline } from "./outline-spot.ts";
import { reshaped } from "./reshaped.ts";
import { turnAt } from "./turned.ts";

export interface Armhole {
  /** The names of the armhole and of the edges at its two ends. */
  readonly name: string;
  readonly shoulder: string;
  readonly side: string;
  /** Where it meets the shoulder, where it lies deepest in the cloth, and where it meets the side. */
  readonly tip: Point;
  readonly across: Point;
  readonly underarm: Point;
  /** Directions of length 1: down the cloth, across it away from the center, and along the shoulder toward the tip. */
  readonly down: Point;
  readonly out: Point;
  readonly shoulderWay: Point;
  /** From the tip to the underarm. */
  readonly path: Path;
  /** Shoulder and side, both ending at the armhole. */
  readonly shoulderPath: Path;
  readonly sidePath: Path;
}

/** The armhole at the tip of a shoulder, the lower of the shoulder's ends; a Problem where the outline has none. */
export const armholeBeside = (piece: Piece, shoulder: string, units: Units): Armhole => {
  closedBoundary(piece, units);
  turnInOutline(piece, shoulder);
  refuseFewEdges(piece, shoulder);
  return armholeNamed(piece, besideShoulder(piece, shoulder), units);
};

/** The armhole of this name; its shoulder is the neighbour at its upper end. */
export const armholeNamed = (piece: Piece, name: string, units: Units): Armhole => {
  closedBoundary(piece, units);
  turnInOutline(piece, name);
  refuseFewEdges(piece, name);
  const armhole = armholeOf(piece, name);
  if (armhole) return armhole;
  throw new Problem("armhole-level", `Both ends of ${name} lie level, so it is no armhole.`, {
    hint: "Name the edge between shoulder and side.",
  });
};

/** The edge of the outline that meets a shoulder at its tip. */
export const besideShoulder = (piece: Piece, shoulder: string): string => {
  const walk = walked(piece);
  const index = walk.findIndex(({ edge }) => edge.name === shoulder);
  const { path } = walk[index]!;
  const [before, after] = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
  const down = downAt(piece, shoulder);
  const fall = dot(minus(endOf(path), startOf(path)), down);
  // A level shoulder does not tell; the neck then is the neighbour that a fold or an opening follows, and where none or
  // both are followed by one, the armhole is that which reaches further down.
  const reach = dot(endOf(after.path), down) - dot(startOf(before.path), down);
  const isCenter = (steps: number): boolean =>
    isMarkedCenter(walk[(index + steps + 2 * walk.length) % walk.length]!.edge);
  const isTold = isCenter(-2) !== isCenter(2);
  const isAfter = Math.abs(fall) > level ? fall > 0 : isTold ? isCenter(-2) : reach > 0;
  return (isAfter ? after : before).edge.name;
};

/** The armhole of this name in a closed outline; undefined where its ends lie level. */
export const armholeOf = (piece: Piece, name: string): Armhole | undefined => {
  const known = found.get(piece) ?? new Map<string, Armhole | undefined>();
  found.set(piece, known);
  if (!known.has(name)) known.set(name, armholeIn(piece, name));
  return known.get(name);
};

// A piece never changes, and several checks ask for its armhole.
const found = new WeakMap<Piece, Map<string, Armhole | undefined>>();

const armholeIn = (piece: Piece, name: string): Armhole | undefined => {
  const walk = walked(piece);
  const index = walk.findIndex(({ edge }) => edge.name === name);
  const { path: own } = walk[index]!;
  const [before, after] = [walk[(index + walk.length - 1) % walk.length]!, walk[(index + 1) % walk.length]!];
  const down = downAt(piece, name);
  const fall = dot(minus(endOf(own), startOf(own)), down);
  if (Math.abs(fall) <= level) return undefined;
  const [above, below] = fall > 0 ? [before, after] : [after, before];
  const path = fall > 0 ? own : reversed(own);
  const shoulderPath = fall > 0 ? above.path : reversed(above.path);
  const sidePath = fall > 0 ? reversed(below.path) : below.path;
  const shoulderWay = endDirection(shoulderPath);
  const sideways = quarterTurn(down);
  const out = dot(sideways, shoulderWay) >= 0 ? sideways : times(sideways, -1);
  return {
    name,
    shoulder: above.edge.name,
    side: below.edge.name,
    tip: startOf(path),
    across: pointAt(path, deepest(path, out)),
    underarm: endOf(path),
    down,
    out,
    shoulderWay,
    path,
    shoulderPath,
    sidePath,
  };
};

/** Where the parts of an armhole are to be; the across mark keeps its share of the height unless it is given. */
export interface ArmholeWanted {
  readonly tip: Point;
  readonly across: Point;
  readonly underarm: Point;
  /** Along the shoulder toward the tip, length 1. */
  readonly shoulderWay: Point;
}

/** The across mark between a tip and an underarm, at the share of the height it has now, and moved out by so many mm. */
export const acrossMoved = (armhole: Armhole, tip: Point, underarm: Point, out: number): Point => {
  const { down } = armhole;
  const height = (from: Point, to: Point): number => dot(minus(to, from), down);
  const share = height(armhole.tip, armhole.across) / height(armhole.tip, armhole.underarm);
  const wanted = height(tip, underarm) * share - height(tip, armhole.across);
  return plus(plus(armhole.across, times(down, wanted)), times(armhole.out, out));
};

/** The armhole from tip to underarm as the blocks draw it (trade handbook 3.2, rule 6); a Problem where it would turn over. */
export const armholeDrawn = ({ name, down, out }: Armhole, wanted: ArmholeWanted, units: Units): Path => {
  const { tip, across, underarm } = wanted;
  const depth = dot(minus(underarm, across), down);
  const run = dot(minus(underarm, across), out);
  if (depth <= level || dot(minus(across, tip), down) <= level) {
    throw new Problem("armhole-too-shallow", `Nothing of the height of ${name} would be left.`, {
      hint: "Lower the underarm further, or take smaller lengths.",
    });
  }
  if (run < 0) {
    throw new Problem(
      "armhole-turns-out",
      `The deepest place of ${name} would lie ${lengthIn(-run, units)} further out than the underarm.`,
      { hint: "Move the underarm out further, or move the shoulder less." },
    );
  }
  return [
    ...upperDrawn(wanted, down),
    cubic(across, plus(across, times(down, kappa * depth)), minus(underarm, times(out, kappa * run)), underarm),
  ];
};

/** The armhole from the tip to the across mark, square to the shoulder and then upright. */
export const upperDrawn = ({ tip, across, shoulderWay }: ArmholeWanted, down: Point): Path => {
  const third = distance(tip, across) / 3;
  const square = quarterTurn(shoulderWay);
  const inward = dot(square, down) >= 0 ? square : times(square, -1);
  return [cubic(tip, plus(tip, times(inward, third)), minus(across, times(down, third)), across)];
};

/** The stretch of the armhole from its deepest place to the underarm, as it is. */
export const lowerStretch = ({ path, across }: Armhole): Path => part(path, nearest(path, across).at, pathLength(path));

/** The shoulder carried on straight by so many mm at its tip, or cut off there. */
export const shoulderMoved = ({ shoulderPath, shoulder }: Armhole, by: number, units: Units): Path => {
  if (by >= 0) return by === 0 ? shoulderPath : carriedOn(shoulderPath, "end", by);
  const length = pathLength(shoulderPath);
  if (length + by > sameSpotTolerance) return part(shoulderPath, 0, length + by);
  throw new Problem(
    "shoulder-used-up",
    `${shoulder} is ${lengthIn(length, units)} long, and ${lengthIn(-by, units)} is to come off.`,
    { hint: "Take a smaller length." },
  );
};

/** The side from its other end up to an underarm lowered by so many mm (raised where negative) and moved out by so many. */
export const sideMoved = (armhole: Armhole, lowering: number, out: number, units: Units): Path => {
  const { sidePath, side, down, underarm } = armhole;
  const length = pathLength(sidePath);
  const trimmed = lowering <= 0 ? raised(sidePath, -lowering, down) : trimmedTo(sidePath, lowering, down, underarm);
  if (!trimmed) {
    throw new Problem(
      "underarm-below-side",
      `${side} is ${lengthIn(length, units)} long and does not reach ${lengthIn(lowering, units)} below the underarm.`,
      { hint: "Lower the underarm less." },
    );
  }
  return out === 0 ? trimmed : followed(trimmed, "end", plus(endOf(trimmed), times(armhole.out, out)));
};

const raised = (side: Path, by: number, down: Point): Path => {
  if (by === 0) return side;
  const climb = -dot(endDirection(side), down);
  return climb <= 0.1 ? followed(side, "end", minus(endOf(side), times(down, by))) : carriedOn(side, "end", by / climb);
};

const trimmedTo = (side: Path, lowering: number, down: Point, underarm: Point): Path | undefined => {
  const wanted = dot(underarm, down) + lowering;
  const length = pathLength(side);
  const height = (at: number): number => dot(pointAt(side, at), down) - wanted;
  if (height(0) <= level) return undefined;
  let [low, high] = [0, length];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (height(middle) > 0) low = middle;
    else high = middle;
  }
  return part(side, 0, high);
};

/** The piece with a new armhole, and with shoulder and side as given, all ending or starting where the armhole does. */
export const withArmhole = (
  piece: Piece,
  armhole: Armhole,
  path: Path,
  { shoulder, side, across }: { readonly shoulder?: Path; readonly side?: Path; readonly across?: Point },
): Piece => {
  const { name } = armhole;
  const paths = new Map([[name, asDrafted(piece, name, armhole.path, path)]]);
  if (shoulder) paths.set(armhole.shoulder, asDrafted(piece, armhole.shoulder, armhole.shoulderPath, shoulder));
  if (side) paths.set(armhole.side, asDrafted(piece, armhole.side, armhole.sidePath, side));
  const now = reshaped(piece, paths);
  const old = piece.edges.get(name)!.path;
  const drafted = paths.get(name)!;
  const [whole, length] = [pathLength(old), pathLength(drafted)];
  // Marks keep their share of the armhole, which is how they are set out on the sleeve as well.
  const shared = (point: Point): Point => pointAt(drafted, (nearest(old, point).at / whole) * length);
  const isInside = (point: Point): boolean =>
    !sameSpot(point, startOf(old)) && !sameSpot(point, endOf(old)) && nearest(old, point).distance <= sameSpotTolerance;
  return {
    ...now,
    notches: now.notches.map((notch, index) => {
      const before = piece.notches[index]!;
      return notch.edge === name && isInside(before.point) ? { ...notch, point: shared(before.point) } : notch;
    }),
    places: new Map(
      [...now.places].map(([key, place]) => {
        const { point } = piece.places.get(key)!;
        if (!isInside(point)) return [key, place];
        return [key, { ...place, point: across && sameSpot(point, armhole.across) ? across : shared(point) }];
      }),
    ),
  };
};

/** A new path for an edge, turned the way the edge was drafted; `was` and `now` run the same way. */
const asDrafted = (piece: Piece, name: string, was: Path, now: Path): Path =>
  sameSpot(startOf(was), startOf(piece.edges.get(name)!.path), 1e-9) ? now : reversed(now);

/** The way down at the middle of an edge, which has turned with its cloth; length 1. */
export const downAt = (piece: Piece, edge: string): Point => {
  const { path } = piece.edges.get(edge)!;
  return bearing(Math.PI / 2 + turnAt(piece, edge, pointAt(path, pathLength(path) / 2)));
};

/** How far along the path, in mm, it lies furthest in; halfway where it only runs outward. */
const deepest = (path: Path, out: Point): number => {
  const length = pathLength(path);
  const depth = (at: number): number => dot(pointAt(path, at), out);
  let joint = 0;
  const joints = path.slice(0, -1).map((span) => {
    joint += spanLength(span);
    return joint;
  });
  const looks = Array.from({ length: 129 }, (_, look) => (look / 128) * length);
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (const look of [...joints, ...looks]) {
    const deep = depth(look);
    if (deep < least) [best, least] = [look, deep];
  }
  if (best <= 0 || best >= length) return length / 2;
  let [low, high] = [Math.max(0, best - length / 128), Math.min(length, best + length / 128)];
  for (let step = 0; step < 80; step += 1) {
    const [first, second] = [low + (high - low) / 3, high - (high - low) / 3];
    if (depth(first) <= depth(second)) high = second;
    else low = first;
  }
  const found = (low + high) / 2;
  // The blocks set the mark at a joint of two cubics; within rounding that joint is the place.
  return joints.find((each) => depth(each) <= depth(found) + 1e-7) ?? found;
};

const refuseFewEdges = (piece: Piece, name: string): void => {
  if (piece.outline.length >= 3) return;
  throw new Problem("armhole-alone", `${name} has no shoulder and side beside it.`, {
    hint: "Draw the outline of neck, shoulder, armhole and side.",
  });
};

// Heights nearer than this, in mm, are level.
const level = 1;

/** Handle of a quarter of an ellipse by one cubic, as a share of its half axis (trade handbook 0.2). */
export const kappa = 0.5522847;
