// The largest value of a param at which everything fits its cloth, what stands against a step more, and what was looked at to
// find it.
import type { Effort } from "./efforts.ts";
import type { Largest } from "./largest-rung.ts";
import type { Lay } from "./lay-of.ts";
import type { AtHand, Obstacle } from "./obstacle.ts";
import type { Rungs } from "./rungs.ts";
import type { Varied } from "./varied.ts";

/** A value that was looked at, mm, radians or a plain number, and the first thing against it. */
export interface TriedValue {
  readonly value: number;
  readonly obstacle: Obstacle | undefined;
}

export interface MostThatFits {
  readonly varied: Varied;
  readonly step: number;
  /** How many values the range has in such steps. */
  readonly count: number;
  readonly effort: Effort["name"];
  readonly atHand: AtHand;
  /** The largest that fits, and how everything then lies; undefined where none of the values does. */
  readonly largest: { readonly value: number; readonly lay: Lay } | undefined;
  /** A step more; undefined where the largest is the end of the range. */
  readonly next: TriedValue | undefined;
  /** Everything that was looked at, smallest first. */
  readonly tried: readonly TriedValue[];
  /** Somebody stopped it: there may be a larger one. */
  readonly isStopped: boolean;
}

/** What was looked at, as values; `obstacles` has those that do not fit, by rung. */
export const triedValues = (
  { tried }: Pick<Largest, "tried">,
  rungs: Rungs,
  obstacles: ReadonlyMap<number, Obstacle>,
): TriedValue[] => [...tried.keys()].map((rung) => ({ value: rungs.at(rung), obstacle: obstacles.get(rung) }));
