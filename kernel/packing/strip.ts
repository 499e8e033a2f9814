// The words of packing: shapes that are laid, without overlap, in a strip of fixed width that is to be as short as possible.
// Nothing here knows what the shapes are. x runs along the strip, y across it.
import type { Point } from "../geometry/point.ts";
import { cos, sin } from "../geometry/trig.ts";

/** A shape to lay so many times. A mirrored copy is a shape of its own. */
export interface Shape {
  /** Corners of a closed bent line that does not cross itself, in either direction. */
  readonly outline: readonly Point[];
  /** The angles, in radians, that it may be turned by about the origin of its outline. */
  readonly turns: readonly number[];
  readonly count: number;
  /** Where its origin must lie across the strip, where it may not be moved across. */
  readonly across?: number;
  /** Whether it may also lie the other way along the strip: as its mirror image, x for -x. */
  readonly flips?: boolean;
}

/** A strip from y = 0 to y = width, and what is laid in it. */
export interface Strip {
  readonly width: number;
  readonly shapes: readonly Shape[];
}

/** Where one copy lies: its outline flipped, turned about the origin by `turn`, in radians, and then moved by `by`. */
export interface Placement {
  /** The number of the shape in its strip. */
  readonly shape: number;
  readonly turn: number;
  readonly by: Point;
  /** Whether it lies as its mirror image, x for -x. */
  readonly flipped?: boolean;
}

/** Everything laid between x = 0 and x = length. */
export interface Layout {
  readonly length: number;
  readonly placements: readonly Placement[];
}

/** The outline of a shape as it lies. */
export const placedOutline = (outline: readonly Point[], { turn, by, flipped = false }: Placement): Point[] =>
  turnedOutline(flipped ? flippedOutline(outline) : outline, turn).map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));

/** An outline as its mirror image along the strip, running in the same direction. */
export const flippedOutline = (outline: readonly Point[]): Point[] =>
  outline.map(({ x, y }) => ({ x: -x, y })).reverse();

/** An outline turned about the origin. */
export const turnedOutline = (outline: readonly Point[], turn: number): Point[] => {
  const [c, s] = [wholeWhereNearly(cos(turn)), wholeWhereNearly(sin(turn))];
  return outline.map(({ x, y }) => ({ x: x * c - y * s, y: x * s + y * c }));
};

/** The area inside a closed bent line, positive when it runs from x to y. */
export const signedAreaOf = (outline: readonly Point[]): number =>
  outline.reduce((sum, { x, y }, i) => {
    const next = outline[(i + 1) % outline.length]!;
    return sum + (x * next.y - next.x * y) / 2;
  }, 0);

/** The share of a strip of this length that its shapes cover. */
export const utilisation = ({ width, shapes }: Strip, length: number): number =>
  shapes.reduce((sum, { outline, count }) => sum + count * Math.abs(signedAreaOf(outline)), 0) / (width * length);

// A quarter turn in radians is not a binary number; without this a square turned by it would no longer stand level.
const wholeWhereNearly = (value: number): number =>
  Math.abs(value - Math.round(value)) < 1e-12 ? Math.round(value) : value;
