// Loose lines put end to end, closed where they come back to their start.
import { endOf, line, type Path, reversed, type Span, startOf } from "../../kernel/geometry/path.ts";
import { between, distance, minus, type Point, plus } from "../../kernel/geometry/point.ts";
import { Refused } from "./refused.ts";
import type { DrawnLine } from "./sheet.ts";

/** A line made of one or more drawn ones; what is told of it is told by the first. */
export interface Chain extends DrawnLine {
  readonly isClosed: boolean;
}

/** How far apart, in mm, two ends may lie that are one corner; each then moves half of that. */
export const endsMeetWithin = 0.15;

/** All lines as chains, in the order of their first lines. Ends that meet several others go to the nearest, and close where they can. */
export const chained = (lines: readonly DrawnLine[]): Chain[] => {
  const own = lines.map((each): Chain => ({ ...each, isClosed: closesItself(each.path) }));
  const loose = own.filter(({ isClosed }) => !isClosed);
  const ends = new Ends(loose);
  const taken = new Set<Chain>();
  const grown = new Map<Chain, Chain>();
  for (const first of loose) {
    if (taken.has(first)) continue;
    taken.add(first);
    ends.take(first);
    let path = first.path;
    for (const isForward of [true, false]) {
      if (!isForward) path = reversed(path);
      for (let next = growth(path, ends); next; next = growth(path, ends)) {
        taken.add(next.chain);
        ends.take(next.chain);
        path = meeting(path, next.path);
      }
      if (!isForward) path = reversed(path);
    }
    const isClosed = path.length > 1 && distance(startOf(path), endOf(path)) <= endsMeetWithin;
    grown.set(first, { ...first, path: isClosed ? closedUp(path) : path, isClosed });
  }
  return own.flatMap((each) => {
    if (each.isClosed) return [{ ...each, path: closedUp(each.path) }];
    const chain = grown.get(each);
    return chain ? [chain] : [];
  });
};

/** The lines without those that were drawn twice, and how many those were. */
export const drawnOnce = (lines: readonly DrawnLine[]): { readonly once: DrawnLine[]; readonly twice: number } => {
  const seen = new Set<string>();
  const once = lines.filter(({ path, means, group }) => {
    const forth = written(path);
    const back = written(reversed(path));
    const [key] = [`${group} ${means} ${forth}`, `${group} ${means} ${back}`].sort();
    if (seen.has(key!)) return false;
    seen.add(key!);
    return true;
  });
  return { once, twice: lines.length - once.length };
};

/** A closed path that ends on its start to the last digit. */
export const closedUp = (path: Path): Path => {
  const [start, end] = [startOf(path), endOf(path)];
  if (distance(start, end) === 0) return path;
  if (distance(start, end) > endsMeetWithin) return [...path, line(end, start)];
  const middle = between(start, end, 0.5);
  return path.map((span, i) => {
    const begun = i === 0 ? startingAt(span, middle) : span;
    return i === path.length - 1 ? endingAt(begun, middle) : begun;
  });
};

const closesItself = (path: Path): boolean =>
  distance(startOf(path), endOf(path)) <= endsMeetWithin &&
  (path.length > 2 || path.some(({ kind }) => kind === "cubic"));

const written = (path: Path): string =>
  path
    .map((span) => {
      const points =
        span.kind === "line" ? [span.start, span.end] : [span.start, span.startHandle, span.endHandle, span.end];
      return points.map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`).join(" ");
    })
    .join(" ");

/** The next line at the end of a path, as it goes on; none where the path closes there. */
const growth = (path: Path, ends: Ends): { readonly chain: Chain; readonly path: Path } | undefined => {
  const end = endOf(path);
  if (path.length > 1 && distance(startOf(path), end) <= endsMeetWithin) return undefined;
  const next = ends.nearest(end);
  return next && { chain: next.chain, path: next.isStart ? next.chain.path : reversed(next.chain.path) };
};

/** Two paths as one, their common end halfway between. */
export const meeting = (path: Path, next: Path): Path => {
  const middle = between(endOf(path), startOf(next), 0.5);
  return [...path.slice(0, -1), endingAt(path.at(-1)!, middle), startingAt(next[0]!, middle), ...next.slice(1)];
};

const startingAt = (span: Span, start: Point): Span => {
  if (span.kind === "line") return { ...span, start };
  return { ...span, start, startHandle: plus(span.startHandle, minus(start, span.start)) };
};

const endingAt = (span: Span, end: Point): Span => {
  if (span.kind === "line") return { ...span, end };
  return { ...span, end, endHandle: plus(span.endHandle, minus(end, span.end)) };
};

interface End {
  readonly chain: Chain;
  readonly isStart: boolean;
  readonly at: Point;
}

/** The free ends of lines, found by where they lie. */
class Ends {
  private readonly cells = new Map<string, End[]>();

  constructor(chains: readonly Chain[]) {
    for (const chain of chains) {
      for (const end of endsOf(chain)) {
        const key = cellOf(end.at, 0, 0);
        const cell = this.cells.get(key);
        if (cell === undefined) this.cells.set(key, [end]);
        else cell.push(end);
        if (cell !== undefined && cell.length > mostAtOneSpot)
          throw new Refused(`More than ${mostAtOneSpot} lines meet at one spot.`, chain);
      }
    }
  }

  take(chain: Chain): void {
    for (const { at } of endsOf(chain)) {
      const key = cellOf(at, 0, 0);
      this.cells.set(
        key,
        this.cells.get(key)!.filter((end) => end.chain !== chain),
      );
    }
  }

  /** The nearest free end within reach; of several as near the one that was drawn first. */
  nearest(p: Point): End | undefined {
    let best: End | undefined;
    let least = endsMeetWithin;
    for (let i = -1; i <= 1; i += 1) {
      for (let j = -1; j <= 1; j += 1) {
        for (const end of this.cells.get(cellOf(p, i, j)) ?? []) {
          const away = distance(end.at, p);
          if (away > least || (best !== undefined && away === least)) continue;
          best = end;
          least = away;
        }
      }
    }
    return best;
  }
}

// No drawing for sewing has more lines at one corner.
const mostAtOneSpot = 500;

const endsOf = (chain: Chain): End[] => [
  { chain, isStart: true, at: startOf(chain.path) },
  { chain, isStart: false, at: endOf(chain.path) },
];

const cellOf = ({ x, y }: Point, i: number, j: number): string =>
  `${Math.floor(x / endsMeetWithin) + i} ${Math.floor(y / endsMeetWithin) + j}`;
