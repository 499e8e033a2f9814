// The cloth between two closed lines: what lies inside one and not inside the other. Clipper, Angus Johnson's library for
// cutting polygons with one another, is asked.
import { Clipper, FillRule } from "clipper2-ts";
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** A closed bent line; the last point counts as joined to the first. */
export type Patch = readonly Point[];

export interface ClothBetween {
  /** Patches of cloth, holes among them running the other way round. */
  readonly added: readonly Patch[];
  readonly removed: readonly Patch[];
  /** Square mm. */
  readonly addedArea: number;
  readonly removedArea: number;
}

/** What the second closed line holds and the first does not, and the other way round. */
export const clothBetween = (before: Path, after: Path): ClothBetween => {
  const [was, is] = [wholeNumbers(before), wholeNumbers(after)];
  const added = Clipper.difference([is], [was], FillRule.NonZero);
  const removed = Clipper.difference([was], [is], FillRule.NonZero);
  return {
    added: added.map(inMillimetres),
    removed: removed.map(inMillimetres),
    addedArea: Math.abs(Clipper.areaPaths(added)) / (steps * steps),
    removedArea: Math.abs(Clipper.areaPaths(removed)) / (steps * steps),
  };
};

// Clipper reckons with whole numbers; this many steps to a mm.
const steps = 1000;

// How near, in mm, the bent lines follow the curves.
const within = 0.01;

const wholeNumbers = (loop: Path): Point[] =>
  flattened(loop, within).map(({ x, y }) => ({ x: Math.round(x * steps), y: Math.round(y * steps) }));

const inMillimetres = (patch: readonly Point[]): Patch => patch.map(({ x, y }) => ({ x: x / steps, y: y / steps }));
