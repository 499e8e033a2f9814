// Bringing the edge of one piece against the edge of another, net to net: a stiff move, turned over where it must be.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { mirroredIn } from "../geometry/mirror.ts";
import { endOf, mapped, type Path, startOf } from "../geometry/path.ts";
import { distance, minus, type Point, plus } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { turnBetween } from "../geometry/trig.ts";
import { sense } from "../outline.ts";
import { Problem } from "../problem.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import type { Move } from "./moved-piece.ts";
import { turnInOutline } from "./outline-spot.ts";

/** An edge of a piece, walked as it is to be sewn. */
export interface Sewn {
  readonly piece: Piece;
  readonly edge: string;
  readonly path: Path;
  readonly turned: boolean;
}

/** How far, in mm, edges may differ that are laid together: half a millimetre is what a pencil line hides. */
const tolerance = 0.5;

/** The move that brings the second edge against the first, both from their starts; a Problem where they do not agree. */
export const broughtTogether = (
  first: Sewn,
  second: Sewn,
  units: Units,
): { readonly move: Move; readonly turnedOver: boolean } => {
  const [length, other] = [pathLength(first.path), pathLength(second.path)];
  if (Math.abs(length - other) > tolerance) {
    throw new Problem(
      "join-length",
      `${nameOf(first)} measures ${lengthIn(length, units)} and ${nameOf(second)} ${lengthIn(other, units)}: they differ by ${lengthIn(Math.abs(length - other), units)}.`,
      { hint: "Bring one to the length of the other first, with `true-seam EDGE to LENGTH moving end`." },
    );
  }
  const turnedOver = clothOnRight(first) === clothOnRight(second);
  const [start, end] = [startOf(second.path), endOf(second.path)];
  const flat: Move = turnedOver ? (point) => mirroredIn(point, start, end) : (point) => point;
  const angle = turnBetween(minus(end, start), minus(endOf(first.path), startOf(first.path)));
  const shift = minus(startOf(first.path), start);
  const still = Math.abs(angle) < noTurn;
  const move: Move = (point) => {
    const turned = still ? flat(point) : rotated(flat(point), start, angle);
    return plus(turned, shift);
  };
  refuseOtherShape(first, second, move, units);
  return { move, turnedOver };
};

// A turn smaller than this, in radians, is rounding.
const noTurn = 1e-12;

const nameOf = ({ piece, edge }: Sewn): string => `${piece.name}.${edge}`;

const clothOnRight = ({ piece, edge, turned }: Sewn): boolean => {
  const part = piece.outline[turnInOutline(piece, edge)]!;
  return sense(piece) > 0 === (part.turned === turned);
};

const looks = 32;

const refuseOtherShape = (first: Sewn, second: Sewn, move: Move, units: Units): void => {
  const moved = mapped(second.path, move);
  const [length, other] = [pathLength(first.path), pathLength(moved)];
  const off = Math.max(
    ...Array.from({ length: looks + 1 }, (_, look) =>
      distance(pointAt(first.path, (length * look) / looks), pointAt(moved, (other * look) / looks)),
    ),
  );
  if (off <= tolerance) return;
  throw new Problem(
    "join-shape",
    `${nameOf(first)} and ${nameOf(second)} are as long as each other, but not the same line: laid together they part by ${lengthIn(off, units)}.`,
    { hint: "Keep the seam, or draw both edges straight first." },
  );
};

/** Where a point comes to lie that is moved so that one place goes to another, and a second one toward a third. */
export const laidOn =
  (from: Point, to: Point, aim: Point | undefined, toward: Point | undefined): Move =>
  (point) => {
    const shifted = plus(point, minus(to, from));
    if (!aim || !toward) return shifted;
    return rotated(shifted, to, turnBetween(minus(aim, from), minus(toward, to)));
  };
