// The cloth of one level round the body, from each column to the next.
import { distance } from "../../geometry/point.ts";
import { type HungPlace, withoutGaps } from "./slack.ts";

/** Cloth from one column to the next, mm: as cut, and as wide as it hangs. */
export interface Stretch {
  readonly flat: number;
  readonly hung: number;
}

/** The stretches of a level, each from a column to the next; between two panels, which are sewn where they end, there is none. */
export const stretchesOf = (row: readonly HungPlace[], ends: readonly number[]): Stretch[] =>
  ends.flatMap((end, index) => {
    const own = row.slice(ends[index - 1] ?? 0, end);
    const apart = stretchesBetween(own);
    // Few rows have gaps, and all others are what they are.
    return apart.some(({ flat, hung }) => hung > flat + aHair) ? stretchesBetween(withoutGaps(own)) : apart;
  });

const stretchesBetween = (places: readonly HungPlace[]): Stretch[] =>
  places.map((place, at) => {
    const next = places[at + 1];
    return next
      ? { flat: distance(place.flat, next.flat), hung: distance(place.hung, next.hung) }
      : { flat: 0, hung: 0 };
  });

const aHair = 1e-6;
