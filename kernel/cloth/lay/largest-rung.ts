// The largest of many values at which something holds, found by looking at few of them: first all over the range, then halving
// what lies above the largest that held. What holds need not hold for all that is smaller.

export interface Largest {
  /** The largest rung that was found to hold, and the one above it, which does not; undefined where none holds, or the last does. */
  readonly rung: number | undefined;
  readonly next: number | undefined;
  /** Every rung that was looked at and whether it held, smallest first. */
  readonly tried: ReadonlyMap<number, boolean>;
}

// So many rungs are looked at all over the range, its ends among them; where there are no more, there is no more to find.
const allOver = 17;

// And so many above the one that does not hold, for what holds again a little farther on.
const beyond = 4;

/** Looks for the largest of `count` rungs that holds. Yields rungs to be looked at and is told of each whether it holds. */
export function* largestRung(count: number): Generator<readonly number[], Largest, readonly boolean[]> {
  const tried = new Map<number, boolean>();
  function* look(rungs: readonly number[]): Generator<readonly number[], void, readonly boolean[]> {
    const open = [...new Set(rungs)].filter((rung) => rung < count && !tried.has(rung));
    if (open.length === 0) return;
    const held = yield open;
    open.forEach((rung, i) => {
      tried.set(rung, held[i]!);
    });
  }
  yield* look(spaced(count));
  for (;;) {
    const rung = largestHeld(tried);
    if (rung === undefined || rung === count - 1) return { rung, next: undefined, tried: inOrder(tried) };
    // All that was looked at above it does not hold.
    let above = Math.min(...[...tried.keys()].filter((each) => each > rung));
    let held = rung;
    while (above - held > 1) {
      const middle = Math.floor((held + above) / 2);
      yield* look([middle]);
      if (tried.get(middle)) held = middle;
      else above = middle;
    }
    yield* look(Array.from({ length: beyond }, (_, i) => above + 1 + i));
    if (largestHeld(tried) === held) return { rung: held, next: above, tried: inOrder(tried) };
  }
}

const spaced = (count: number): number[] =>
  count <= allOver
    ? Array.from({ length: count }, (_, rung) => rung)
    : Array.from({ length: allOver }, (_, i) => Math.round((i * (count - 1)) / (allOver - 1)));

const largestHeld = (tried: ReadonlyMap<number, boolean>): number | undefined => {
  const held = [...tried].filter(([, holds]) => holds).map(([rung]) => rung);
  return held.length === 0 ? undefined : Math.max(...held);
};

const inOrder = (tried: ReadonlyMap<number, boolean>): ReadonlyMap<number, boolean> =>
  new Map([...tried].sort(([a], [b]) => a - b));
