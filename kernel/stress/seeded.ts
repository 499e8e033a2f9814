// Chance that is the same every time: numbers that look random, made from a seed by whole-number arithmetic alone.

/** Draws numbers in [0, 1). */
export type Draw = () => number;

/** The sequence of a seed: Tommy Ettinger's mulberry32, public domain, from memory. */
export const seeded = (seed: number): Draw => {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 0x1_0000_0000;
  };
};

/** A number between two others. */
export const drawBetween = (draw: Draw, least: number, most: number): number => least + draw() * (most - least);
