// A shape in each direction that it may lie in, moved so that its box begins at (0, 0): what the search lays.
import type { Point } from "../geometry/point.ts";
import { convexParts } from "./convex-parts.ts";
import { flippedOutline, type Shape, type Strip, signedAreaOf, turnedOutline } from "./strip.ts";

export interface TurnedShape {
  /** The number of the shape in its strip. */
  readonly shape: number;
  /** Radians about the origin of the shape's own outline. */
  readonly turn: number;
  /** Whether it is its mirror image along the strip. */
  readonly flipped: boolean;
  /** From the corner of the box to that origin. */
  readonly origin: Point;
  /** Its measures along and across the strip. */
  readonly long: number;
  readonly wide: number;
  readonly area: number;
  readonly parts: readonly Point[][];
  /** The number of the same shape turned by half a turn more, where it may lie so and does not look the same. */
  readonly opposite: number | undefined;
  /** The least and the most that the corner of its box may lie across the strip. */
  readonly least: number;
  readonly most: number;
}

/** All shapes of a strip in all their directions, without those that look the same; those of one shape stand together. */
export const turnedShapes = ({ width, shapes }: Strip): TurnedShape[] => {
  const all = shapes.flatMap((shape, number) => {
    const ways = shape.flips ? [false, true] : [false];
    const turned = ways.flatMap((flipped) =>
      shape.turns.map((turn) => turnedShape(shape, number, turn, flipped, width)),
    );
    return turned.filter((one, i) => !turned.slice(0, i).some((other) => looksLike(one, other)));
  });
  return all.map((one) => {
    const at = all.findIndex(
      (other) => other.shape === one.shape && other.flipped === one.flipped && isHalfTurn(other.turn - one.turn),
    );
    return { ...one, opposite: at < 0 ? undefined : at };
  });
};

// Angles nearer than this are the same, radians.
const sameAngle = 1e-12;

const isHalfTurn = (angle: number): boolean => Math.abs(Math.abs(angle) - Math.PI) < sameAngle;

const turnedShape = (
  shape: Shape,
  number: number,
  turn: number,
  flipped: boolean,
  width: number,
): Omit<TurnedShape, "opposite"> => {
  const forward = runningForward(shape.outline);
  const outline = turnedOutline(flipped ? flippedOutline(forward) : forward, turn);
  const [xs, ys] = [outline.map(({ x }) => x), outline.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [long, wide] = [Math.max(...xs) - left, Math.max(...ys) - top];
  return {
    shape: number,
    turn,
    flipped,
    origin: { x: -left, y: -top },
    long,
    wide,
    area: signedAreaOf(outline),
    parts: convexParts(outline.map(({ x, y }) => ({ x: x - left, y: y - top }))),
    least: shape.across === undefined ? 0 : shape.across + top,
    most: shape.across === undefined ? width - wide : shape.across + top,
  };
};

const runningForward = (outline: readonly Point[]): readonly Point[] =>
  signedAreaOf(outline) < 0 ? [...outline].reverse() : outline;

// Corners nearer than this share of a shape's length are the same.
const sameCorner = 1e-9;

/** Whether a shape looks the same in two directions, as a rectangle does that is turned by half a turn. */
const looksLike = (one: Omit<TurnedShape, "opposite">, other: Omit<TurnedShape, "opposite">): boolean => {
  const [corners, others] = [one.parts.flat(), other.parts.flat()];
  const within = sameCorner * (one.long + one.wide);
  return (
    one.least === other.least &&
    corners.every((p) => others.some((q) => Math.abs(p.x - q.x) + Math.abs(p.y - q.y) <= within)) &&
    others.every((p) => corners.some((q) => Math.abs(p.x - q.x) + Math.abs(p.y - q.y) <= within))
  );
};
