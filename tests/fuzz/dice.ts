// Choices that a target makes for itself: where in a text it asks, which of several ways it takes. They come of the text alone, so
// that a recipe which shows a fault shows it again.

/** Numbers below so many sides, one after another, the same for the same text. */
export const dice = (text: string): ((sides: number) => number) => {
  // FNV-1a for 32 bits (Fowler, Noll, Vo; from memory), then a linear congruential generator (Numerical Recipes; from memory).
  let state = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) state = Math.imul(state ^ text.charCodeAt(at), 0x01000193);
  return (sides) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * sides);
  };
};
