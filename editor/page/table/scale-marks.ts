// Where the marks of a ruler stand: as close as the eye can part them, long ones where a hand would count.
import type { Units } from "../../../kernel/working.ts";

export interface ScaleMark {
  /** mm from the ruler's beginning. */
  readonly at: number;
  /** What is written at it, if anything. */
  readonly words?: string;
}

// Steps that a ruler of these units may count in, mm, and how many of each go to a written one.
const steps: Readonly<
  Record<Units, { readonly one: number; readonly counts: readonly (readonly [number, number])[] }>
> = {
  mm: {
    one: 1,
    counts: [
      [1, 10],
      [5, 10],
      [10, 10],
      [50, 10],
      [100, 10],
      [500, 10],
    ],
  },
  cm: {
    one: 10,
    counts: [
      [1, 10],
      [5, 10],
      [10, 10],
      [50, 10],
      [100, 10],
      [500, 10],
    ],
  },
  in: {
    one: 25.4,
    counts: [
      [3.175, 8],
      [6.35, 4],
      [25.4, 6],
      [152.4, 6],
      [304.8, 3],
    ],
  },
};

// Closest that two marks may stand, px.
const closest = 5;

/** Marks between two places of the table, mm, at so many pixels to the mm. */
export const scaleMarks = (from: number, to: number, scale: number, units: Units): ScaleMark[] => {
  const { one, counts } = steps[units];
  const [step, written] = counts.find(([each]) => each * scale >= closest) ?? counts.at(-1)!;
  const first = Math.ceil(from / step);
  const count = Math.min(2000, Math.floor(to / step) - first + 1);
  return Array.from({ length: Math.max(0, count) }, (_, index) => {
    const number = first + index;
    const at = number * step;
    return number % written === 0 ? { at, words: String(Math.round((at / one) * 100) / 100) } : { at };
  });
};
