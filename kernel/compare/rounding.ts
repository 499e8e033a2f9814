// What can be told from nothing: a change below these is none, and no report mentions it.

/** Lengths, mm: less than the width of a pencil line, and half of what two edges may differ by and still be called as long. */
export const tellableLength = 0.25;

/** Angles, degrees: over half a metre that is half a millimetre. */
export const tellableAngle = 0.05;

/** Areas, square mm: a pencil line's width along two metres of edge. */
export const tellableArea = 100;

/** Whether a number on each side, or on one side only, is a change of more than this. */
export const differs = (before: number | null, after: number | null, by: number): boolean =>
  before === null || after === null ? before !== after : Math.abs(after - before) >= by;
