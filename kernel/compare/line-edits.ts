// Which lines of a text were edited: the shortest way from one text to another, after E. W. Myers, "An O(ND) difference
// algorithm and its variations", Algorithmica 1 (1986), in its greedy form.

/** Lines that stand for others: `was` of before from line `wasFrom` on, `is` of after from line `from` on, both counted from 1. */
export interface LineEdit {
  readonly wasFrom: number;
  readonly was: readonly string[];
  readonly from: number;
  readonly is: readonly string[];
}

/**
 * The edits from one text to another, in order. As many lines in place of as many are one edit each; the whole text is one where
 * the texts have less in common than can be worked through.
 */
export const lineEdits = (before: string, after: string): LineEdit[] => {
  const [was, is] = [before.split(/\r?\n/), after.split(/\r?\n/)];
  return stretches(was, is).flatMap(([wasFrom, wasTo, from, to]): LineEdit[] => {
    const edit = { wasFrom: wasFrom + 1, was: was.slice(wasFrom, wasTo), from: from + 1, is: is.slice(from, to) };
    if (edit.was.length !== edit.is.length) return [edit];
    return edit.was.map((line, i) => ({
      wasFrom: wasFrom + i + 1,
      was: [line],
      from: from + i + 1,
      is: [edit.is[i]!],
    }));
  });
};

/** A text with one of its edits taken back. */
export const withoutEdit = (after: string, { from, is, was }: LineEdit): string => {
  const lines = after.split(/\r?\n/);
  lines.splice(from - 1, is.length, ...was);
  return lines.join("\n");
};

/** Lines of before and of after, counted from 0, of which the latter replace the former; those between are the same. */
type Stretch = readonly [wasFrom: number, wasTo: number, from: number, to: number];

// Texts with more lines than this to put in and take out are not worth a line by line look, and it would take long.
const mostEdits = 2000;

const stretches = (was: readonly string[], is: readonly string[]): Stretch[] => {
  const trail = reached(was, is);
  if (!trail) return [[0, was.length, 0, is.length]];
  const steps: Stretch[] = [];
  let [x, y] = [was.length, is.length];
  for (let d = trail.length - 1; d > 0; d -= 1) {
    const ends = trail[d - 1]!;
    const k = x - y;
    const isDown = k === -d || (k !== d && endAt(ends, k - 1) < endAt(ends, k + 1));
    const fromX = endAt(ends, isDown ? k + 1 : k - 1);
    const fromY = fromX - (isDown ? k + 1 : k - 1);
    steps.unshift(isDown ? [fromX, fromX, fromY, fromY + 1] : [fromX, fromX + 1, fromY, fromY]);
    [x, y] = [fromX, fromY];
  }
  return touching(steps);
};

/** How far along before each diagonal was reached with d edits, for each d in turn; undefined where it takes too many. */
const reached = (was: readonly string[], is: readonly string[]): ReadonlyMap<number, number>[] | undefined => {
  const trail: Map<number, number>[] = [];
  for (let d = 0; d <= Math.min(was.length + is.length, mostEdits); d += 1) {
    const before = trail[d - 1] ?? new Map([[1, 0]]);
    const ends = new Map<number, number>();
    for (let k = -d; k <= d; k += 2) {
      const isDown = k === -d || (k !== d && endAt(before, k - 1) < endAt(before, k + 1));
      let x = isDown ? endAt(before, k + 1) : endAt(before, k - 1) + 1;
      while (x < was.length && x - k < is.length && was[x] === is[x - k]) x += 1;
      ends.set(k, x);
      if (x >= was.length && x - k >= is.length) return [...trail, ends];
    }
    trail.push(ends);
  }
  return undefined;
};

const endAt = (ends: ReadonlyMap<number, number>, k: number): number => ends.get(k) ?? -1;

/** Edits with no line between them as one. */
const touching = (steps: readonly Stretch[]): Stretch[] => {
  const joined: Stretch[] = [];
  for (const [wasFrom, wasTo, from, to] of steps) {
    const last = joined.at(-1);
    if (last && last[1] === wasFrom && last[3] === from) joined[joined.length - 1] = [last[0], wasTo, last[2], to];
    else joined.push([wasFrom, wasTo, from, to]);
  }
  return joined;
};
