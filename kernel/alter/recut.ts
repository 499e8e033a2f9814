// A slashed piece about to be put together again: what turns, what stays, what is lost, and how the outline is laid out anew.
import { line, mapped, type Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import type { Piece } from "../working.ts";
import type { Slash } from "./slash.ts";
import type { Side, Stretch } from "./two-parts.ts";

/** What happens to a point of the piece: it turns with the moving part, stays, or lies in the cloth that is taken out. */
export type Fate = "turns" | "stays" | "gone";

/** All in places of before, with the turn that the moving part makes. */
export interface Recut {
  readonly piece: Piece;
  readonly slash: Slash;
  readonly moving: Side;
  /** Radians, clockwise on the page. */
  readonly turn: number;
  /** The outline from the hinge round, less what is taken out. */
  readonly stretches: readonly Stretch[];
  readonly fateOf: (point: Point) => Fate;
  /** Where the part ahead of the hinge ends, and where the part behind it starts. */
  readonly aheadEnd: Point;
  readonly behindStart: Point;
  /** What goes between their new places, if anything. */
  readonly between: (from: Point, to: Point) => Path;
  /** The lines along which inner lines are cut. */
  readonly cuts: readonly Path[];
}

/** A stretch of an edge in its new place, as the outline walks it. */
export interface Laid {
  readonly path: Path;
  /** The stretch it was; undefined for what goes between the two parts. */
  readonly was: Stretch | undefined;
}

/** A point where the moving part takes it. */
export const turned = ({ slash, turn }: Recut, point: Point): Point => rotated(point, slash.hinge, turn);

/** How far a stretch turns, radians. */
export const turnOf = ({ moving, turn }: Recut, { side }: Stretch): number => (side === moving ? turn : 0);

/** The edge at a turn of the outline, laid out anew. */
export const laidOut = (recut: Recut, index: number): Laid[] => {
  const opened = recut.slash.targetsAt[0];
  const laid = recut.stretches
    .filter((stretch) => stretch.index === index)
    .sort((a, b) => a.from - b.from)
    .map((was) => ({
      path: turnOf(recut, was) === 0 ? was.path : mapped(was.path, (point) => turned(recut, point)),
      was,
    }));
  if (opened.index !== index) return laid;
  const filling = fillingOf(recut);
  if (filling.length === 0) return laid;
  const before = laid.filter(({ was }) => was.to <= opened.at).length;
  return [...laid.slice(0, before), { path: filling, was: undefined }, ...laid.slice(before)];
};

const fillingOf = (recut: Recut): Path => {
  const { moving, aheadEnd, behindStart } = recut;
  const from = moving === "ahead" ? turned(recut, aheadEnd) : aheadEnd;
  const to = moving === "behind" ? turned(recut, behindStart) : behindStart;
  return recut.between(from, to);
};

/** The straight bridge across an opening; it remembers the hinge that it swings about. */
export const bridge = (hinge: Point, from: Point, to: Point): Path => [{ ...line(from, to), pivot: hinge }];
