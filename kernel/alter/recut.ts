// A slashed piece about to be put together again: what moves, what stays, what is lost, and how the outline is laid out anew.
import { line, mapped, type Path } from "../geometry/path.ts";
import { distance, type Point } from "../geometry/point.ts";
import type { Piece } from "../working.ts";
import { type Motion, taken, turnIn } from "./motion.ts";
import type { Spot } from "./outline-spot.ts";
import type { Slash } from "./slash.ts";
import type { Side, Stretch } from "./two-parts.ts";

/** What happens to a point of the piece: it goes with the moving part, stays, or lies in the cloth that is taken out. */
export type Fate = "moves" | "stays" | "gone";

/** Where the two parts end at one end of the slash, and what goes between them once they are laid. */
export interface SlashEnd {
  /** The end of the slash itself, and the edge that what goes between belongs to. */
  readonly point: Point;
  readonly at: Spot;
  readonly ahead: Point;
  readonly behind: Point;
  readonly between: (from: Point, to: Point) => Path;
}

/** All in places of before, with the motion that the moving part makes. */
export interface Recut {
  readonly piece: Piece;
  readonly slash: Slash;
  readonly moving: Side;
  readonly motion: Motion;
  /** The outline from the hinge round, less what is taken out. */
  readonly stretches: readonly Stretch[];
  readonly fateOf: (point: Point) => Fate;
  readonly atHinge: SlashEnd;
  readonly atTarget: SlashEnd;
  /** What goes between the two ends of an inner line that is cut. */
  readonly between: (from: Point, to: Point) => Path;
  /** The lines along which inner lines are cut. */
  readonly cuts: readonly Path[];
}

/** A stretch of an edge in its new place, as the outline walks it. */
export interface Laid {
  readonly path: Path;
  /** The stretch it was; undefined for what goes between the two parts. */
  readonly was: Stretch | undefined;
  /** The end of the slash that it lies at, if it goes between the two parts. */
  readonly fills: Point | undefined;
}

/** A point where the moving part takes it. */
export const moved = ({ motion }: Recut, point: Point): Point => taken(point, motion);

/** A point of a stretch in its new place. */
export const movedWith = (recut: Recut, { side }: Stretch, point: Point): Point =>
  side === recut.moving ? moved(recut, point) : point;

/** How far a stretch turns, radians. */
export const turnOf = ({ moving, motion }: Recut, { side }: Stretch): number => (side === moving ? turnIn(motion) : 0);

/** The edge at a turn of the outline, laid out anew. */
export const laidOut = (recut: Recut, index: number): Laid[] => {
  const laid = recut.stretches
    .filter((stretch) => stretch.index === index)
    .sort((a, b) => a.from - b.from)
    .map(
      (was): Laid => ({
        path: was.side === recut.moving ? mapped(was.path, (point) => moved(recut, point)) : was.path,
        was,
        fills: undefined,
      }),
    );
  const fillings = [
    filling(recut, recut.atTarget, "ahead", "behind"),
    filling(recut, recut.atHinge, "behind", "ahead"),
  ];
  return fillings
    .filter(({ at, path }) => at.index === index && path.length > 0)
    .sort((a, b) => b.at.at - a.at.at)
    .reduce((sofar, { at, path, fills }) => {
      const before = sofar.filter(({ was }) => was !== undefined && was.to <= at.at).length;
      return [...sofar.slice(0, before), { path, was: undefined, fills }, ...sofar.slice(before)];
    }, laid);
};

/** What goes between the parts at an end of the slash, in the order in which the outline walks past. */
const filling = (recut: Recut, end: SlashEnd, first: Side, second: Side): { path: Path; at: Spot; fills: Point } => {
  const place = (side: Side): Point => (side === recut.moving ? moved(recut, end[side]) : end[side]);
  const [from, to] = [place(first), place(second)];
  // A gap this small is rounding, and joining moves the ends onto each other.
  const path = distance(from, to) <= rounding ? [] : end.between(from, to);
  return { path, at: end.at, fills: end.point };
};

const rounding = 1e-6;

/** The straight bridge across an opening; it remembers the pivot that it swings about, where there is one. */
export const bridge = (pivot: Point | undefined, from: Point, to: Point): Path => [
  { ...line(from, to), ...(pivot && { pivot }) },
];
