// The closest known word, for "did you mean".

/** Up to `most` of the words that are few slips of the finger away from `word`, nearest first. */
export const nearest = (word: string, known: Iterable<string>, most = 3): string[] => {
  // Of one or two letters a slip leaves nothing to go by.
  const allowed = word.length < 3 ? 0 : Math.max(1, Math.round(word.length / 2.6 - 0.4));
  return [...new Set(known)]
    .filter((candidate) => Math.abs(candidate.length - word.length) <= allowed)
    .map((candidate) => ({ candidate, slips: slipsBetween(word.toLowerCase(), candidate.toLowerCase()) }))
    .filter(({ slips, candidate }) => slips <= allowed && candidate !== word)
    .sort((a, b) => a.slips - b.slips || (a.candidate < b.candidate ? -1 : 1))
    .slice(0, most)
    .map(({ candidate }) => candidate);
};

/** Did-you-mean as a hint, or nothing: "Did you mean hem or hip?" */
export const didYouMean = (word: string, known: Iterable<string>): string | undefined => {
  const near = nearest(word, known);
  return near.length === 0 ? undefined : `Did you mean ${listWithOr(near)}?`;
};

/** "a", "a or b", "a, b or c". */
export const listWithOr = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} or ${words.at(-1)}`;

/** Damerau-Levenshtein distance: letters dropped, added, changed, or two neighbours swapped. */
const slipsBetween = (a: string, b: string): number => {
  if (a.length > 64 || b.length > 64) return Number.POSITIVE_INFINITY;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const same = a[row - 1] === b[column - 1];
      let slips = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        slips = Math.min(slips, beforeLast[column - 2]! + 1);
      }
      current.push(slips);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length]!;
};
