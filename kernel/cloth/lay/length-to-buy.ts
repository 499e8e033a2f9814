// From the length that the pieces take to the length that a shop cuts off.
import type { Units } from "../../working.ts";

// Common practice, no source: cloth is cut off by eighths of a yard (the conversion chart of the handbook goes by them) or by
// 10 cm.
const yard = 914.4;
const sold = { in: yard / 8, cm: 100, mm: 100 } as const;

/** Cloth at both ends of a lay that is cut off to begin straight, mm in all: 20 at each (common practice, no source). */
export const endAllowance = 40;

// A length that is a hair over a step, for rounding, is not sold a step longer.
const rounding = 1e-6;

/** The length of cloth that a lay needs, mm: with its ends, and before the cloth has shrunk by a ratio of its length. */
export const lengthNeeded = (length: number, shrink: number): number => (length + endAllowance) / (1 - shrink);

/** The longest lay, mm, that so much cloth is enough for; below 0 where it is not even enough for the ends. */
export const longestLay = (atHand: number, shrink: number): number => atHand * (1 - shrink) - endAllowance;

/** The length to buy, mm: what the lay needs, as shops sell it. */
export const lengthToBuy = (length: number, shrink: number, units: Units): number => {
  const step = sold[units];
  return Math.ceil(lengthNeeded(length, shrink) / step - rounding) * step;
};
