// A hem that hangs unevenly: how far each place of it is below where it ought to be, and by how much it has to be raised.
import { distance, type Point } from "../../geometry/point.ts";
import type { HungHem } from "./hung-hem.ts";

/** A place of a hem that hangs too low. */
export interface Raise {
  readonly flat: Point;
  /** How far from the start of the hem as it was drafted, mm. */
  readonly at: number;
  /** By how much it is to be raised, mm, so that the hem hangs as its shortest place does. */
  readonly by: number;
}

export interface Dip {
  /** By how many mm the place that hangs lowest for where it is hangs lower than the one that hangs highest. */
  readonly most: number;
  /** Every place, in outline order. */
  readonly raises: readonly Raise[];
  /** The lowest of them. */
  readonly lowest: Raise;
}

/**
 * How unevenly a hem hangs: held against the same piece before it was altered, or where there is none against a level line. It
 * may be longer all along; then a place hangs as it did where it is as low as the older hem somewhere near it.
 */
export const dipOf = ({ hem, holding }: HungHem, before?: HungHem): Dip => {
  const line = before ? before.hem.places.map(({ hung }) => hung).sort((a, b) => a.x - b.x) : [{ x: 0, y: 0 }];
  const longer = median(hem.places.map(({ hung }) => hung.y - heightAt(line, hung.x)));
  const lows = hem.places.map(({ hung }) => beyond(hung.y - longer, heightsNear(line, hung.x)));
  const least = Math.min(...lows);
  let walked = 0;
  const raises = hem.places.map(({ flat }, index) => {
    walked += distance(flat, hem.places[Math.max(0, index - 1)]!.flat);
    return { flat, at: holding.hem.turned ? hem.flat - walked : walked, by: lows[index]! - least };
  });
  const lowest = raises.reduce((low, raise) => (raise.by > low.by ? raise : low));
  return { most: lowest.by, raises, lowest };
};

/** The heights of a hanging hem within reach of a place across the body; it is carried on level at both ends. */
const heightsNear = (line: readonly Point[], x: number): number[] => [
  ...[x - reach, x, x + reach].map((at) => heightAt(line, at)),
  ...line.filter((point) => Math.abs(point.x - x) < reach).map(({ y }) => y),
];

/** How far a height lies beyond all of these. */
const beyond = (y: number, heights: readonly number[]): number =>
  y - Math.max(Math.min(...heights), Math.min(Math.max(...heights), y));

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

const heightAt = (line: readonly Point[], x: number): number => {
  const index = line.findIndex((point) => point.x >= x);
  const [left, right] = [line[index - 1], line[index] ?? line.at(-1)!];
  if (!left || right.x - left.x < nothing) return right.y;
  return left.y + ((right.y - left.y) * (x - left.x)) / (right.x - left.x);
};

// mm. Under an armhole, where the cloth passes from the shoulder to the underarm, the formula has a hem hang up to a centimeter
// low, and where the underarm was moved that place moves along.
const reach = 50;

const nothing = 1e-9;
