// The values that a range is looked at in: whole steps, and both its ends.

export interface Rungs {
  readonly count: number;
  /** The value of a rung by its number from 0, smallest first. */
  readonly at: (rung: number) => number;
}

// A step that ends a hair before the end of the range is its end.
const rounding = 1e-9;

/** From the least to the most value by a step; steps are counted from an anchor, which need not lie in the range. */
export const rungsOf = (least: number, most: number, step: number, anchor: number): Rungs => {
  const first = Math.floor((least - anchor) / step + rounding) + 1;
  const last = Math.ceil((most - anchor) / step - rounding) - 1;
  const between = Math.max(0, last - first + 1);
  const count = most > least ? between + 2 : 1;
  return {
    count,
    at: (rung) => (rung === 0 ? least : rung === count - 1 ? most : anchor + (first + rung - 1) * step),
  };
};
