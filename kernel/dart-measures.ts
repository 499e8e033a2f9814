// What one measures on a dart: its width, its legs, its angle and its center line.
import { between, distance, minus, type Point, plus, unit } from "./geometry/point.ts";
import { turnBetween } from "./geometry/trig.ts";
import type { Dart } from "./working.ts";

export interface DartMeasures {
  /** Straight from one end of the mouth to the other, mm. */
  readonly width: number;
  /** The two legs, mm, in the direction in which the edge was drafted. */
  readonly legs: readonly [number, number];
  /** Between the legs, radians, always positive. */
  readonly angle: number;
  /** Halfway between the leg ends. */
  readonly middle: Point;
  /** From the tip out through the mouth, halfway between the legs; length 1. */
  readonly outward: Point;
}

/** Measures a dart. */
export const dartMeasures = ({ first, second, tip }: Dart): DartMeasures => {
  const [one, other] = [minus(first, tip), minus(second, tip)];
  return {
    width: distance(first, second),
    legs: [distance(first, tip), distance(second, tip)],
    angle: Math.abs(turnBetween(one, other)),
    middle: between(first, second, 0.5),
    outward: unit(plus(unit(one), unit(other))),
  };
};
