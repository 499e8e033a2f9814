// Sewing lines closed along the cutting line: at an edge without an allowance both are one line, which a drawing has only once.
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, joined, type Path, reversed, startOf } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { part } from "../../kernel/geometry/split.ts";
import { type Chain, closedUp, endsMeetWithin, meeting } from "./chained.ts";
import { farFromEdge } from "./marks-on-pieces.ts";

/** The open chains that lie on a closed one as one closed line, filled up along it; undefined where none does. */
export const closedAlong = (open: readonly Chain[], around: Chain): ClosedAlong | undefined => {
  const laid = open.flatMap((chain) => laidAlong(chain, around.path) ?? []).sort((a, b) => a.from - b.from);
  const [first] = laid;
  if (!first) return undefined;
  const parts = laid.flatMap(({ path, to }, index) => {
    const next = laid[(index + 1) % laid.length]!;
    return [path, ...between(around.path, to, next.from)];
  });
  const path = closedUp(parts.reduce(meeting));
  return {
    chain: { ...first.chain, path, isClosed: true },
    of: laid.map(({ chain }) => chain),
    joints: parts.map(startOf),
  };
};

export interface ClosedAlong {
  readonly chain: Chain;
  /** The open chains that it was made of. */
  readonly of: readonly Chain[];
  /** Where it goes over from one line to the other: an edge with an allowance to one without. */
  readonly joints: readonly Point[];
}

/** A chain beside a closed line, along which it runs from one length to another. */
interface LaidChain {
  readonly chain: Chain;
  readonly path: Path;
  readonly from: number;
  readonly to: number;
}

/** The chain turned to run as the closed line does; undefined where its ends do not lie on that line. */
const laidAlong = (chain: Chain, around: Path): LaidChain | undefined => {
  const [start, end] = [startOf(chain.path), endOf(chain.path)].map((p) => nearest(around, p));
  if (start!.distance > endsMeetWithin || end!.distance > endsMeetWithin) return undefined;
  // A seam that is drawn right across a piece is no allowance away from its edge.
  const length = pathLength(chain.path);
  const isFar = [0.1, 0.3, 0.5, 0.7, 0.9].some(
    (share) => nearest(around, pointAt(chain.path, share * length)).distance > farFromEdge,
  );
  if (isFar) return undefined;
  const middle = nearest(around, pointAt(chain.path, length / 2)).at;
  const isForward = isBetween(start!.at, middle, end!.at, pathLength(around));
  return isForward
    ? { chain, path: chain.path, from: start!.at, to: end!.at }
    : { chain, path: reversed(chain.path), from: end!.at, to: start!.at };
};

/** Whether one comes by the middle on the way from one length to another round a closed line. */
const isBetween = (from: number, middle: number, to: number, whole: number): boolean =>
  (((middle - from) % whole) + whole) % whole <= (((to - from) % whole) + whole) % whole;

/** What of the closed line lies between two lengths, going on over its end; nothing where they are one spot. */
const between = (around: Path, from: number, to: number): Path[] => {
  const whole = pathLength(around);
  const gap = (((to - from) % whole) + whole) % whole;
  if (gap < endsMeetWithin || gap > whole - endsMeetWithin) return [];
  return [from < to ? part(around, from, to) : joined([part(around, from, whole), part(around, 0, to)])];
};
