// The left and the right half of what is cut once for both, and was alike on both sides before it was altered: how much slack
// hangs on each side. What lies on a fold or is cut in pairs is alike anyway.
import { pathLength } from "../../geometry/arc-length.ts";
import { distance, type Point } from "../../geometry/point.ts";
import { sense } from "../../outline.ts";
import type { Garment, Piece } from "../../working.ts";
import { hangerOf, hangOf } from "./hanger.ts";
import { type HungHem, hungHem } from "./hung-hem.ts";
import { straightOf } from "./straight-of.ts";
import type { Holding } from "./supports.ts";

/** Two pieces that are the two sides of one thing. */
export interface Pair {
  readonly pieces: readonly [HungHem, HungHem];
  /** The slack of each, mm. */
  readonly slack: readonly [number, number];
}

/** A piece that goes over both sides. */
export interface Whole {
  readonly piece: HungHem;
  /** The slack of its left and its right half as they lie on the table, mm. */
  readonly slack: readonly [number, number];
}

/** All that is cut once for both sides and was alike on them. */
export const halvesIn = (garment: Garment): readonly (Pair | Whole)[] => {
  const singles = [...garment.pieces.values()].filter(
    (piece) => !piece.doubtful && timesCut(piece, garment) === 1 && !liesOnFold(piece),
  );
  const hung = (piece: Piece): HungHem | undefined => hungHem(piece, hangOf(piece, garment));
  const paired = new Set<Piece>();
  const pairs = singles.flatMap((one, index) => {
    const other = singles.slice(index + 1).find((each) => areTwoSides(one, each));
    const [first, second] = other ? [hung(one), hung(other)] : [];
    if (!other || !first || !second) return [];
    paired.add(one).add(other);
    return [{ pieces: [first, second] as const, slack: [first.hem.slack, second.hem.slack] as const }];
  });
  const wholes = singles
    .filter((piece) => !paired.has(piece))
    .flatMap((single) => {
      const holding = hangerOf(single, hangOf(single, garment))?.holding;
      if (!holding || holding.kind === "cap" || !isAlike(holding)) return [];
      const piece = hung(single)!;
      return [{ piece, slack: slackOfHalves(piece) }];
    });
  return [...pairs, ...wholes];
};

/** The slack left and right of the middle of what holds a piece, mm. */
export const slackOfHalves = ({ hem, holding }: HungHem): readonly [number, number] => {
  const middle = middleOf(holding);
  const share = (x: number): number => (Math.abs(x - middle) < same ? 0.5 : x < middle ? 1 : 0);
  const left = hem.places.reduce((sum, { hung, slack }) => sum + slack * share(hung.x), 0);
  return [left, hem.slack - left];
};

const timesCut = (piece: Piece, { cuts }: Garment): number =>
  cuts.filter((cut) => cut.piece === piece.name).reduce((sum, { count }) => sum + count, 0);

const liesOnFold = ({ outline, edges }: Piece): boolean => outline.some(({ edge }) => edges.get(edge)!.role === "fold");

/** Mirror images by the names of their edges, whose straight versions measured the same. */
const areTwoSides = (one: Piece, other: Piece): boolean => {
  const clockwise = namesClockwise(one);
  if (fromFirst(clockwise) !== fromFirst(namesClockwise(other).reverse())) return false;
  const [first, second] = [straightOf(one), straightOf(other)];
  return clockwise.every((name) => {
    const [a, b] = [first.edges.get(name), second.edges.get(name)];
    return a !== undefined && b !== undefined && Math.abs(pathLength(a.path) - pathLength(b.path)) < same;
  });
};

const namesClockwise = (piece: Piece): string[] => {
  const names = piece.outline.map(({ edge }) => edge);
  return sense(piece) > 0 ? names : names.reverse();
};

/** A ring of names, written from the first in the alphabet on. */
const fromFirst = (names: readonly string[]): string => {
  const start = names.indexOf([...names].sort()[0]!);
  return [...names.slice(start), ...names.slice(0, start)].join(" ");
};

/** Whether what holds a piece lies alike on both sides of its middle: there the body has the piece as it was before. */
const isAlike = (holding: Holding): boolean => {
  const middle = middleOf(holding);
  const spots = holding.supports.flatMap(({ from, to }) => [from.body, to.body]);
  return spots.every(({ x, y }) =>
    holding.supports.some(({ from, to }) => liesBetween({ x: 2 * middle - x, y }, from.body, to.body)),
  );
};

const liesBetween = (p: Point, a: Point, b: Point): boolean => distance(p, a) + distance(p, b) - distance(a, b) < near;

const middleOf = ({ supports }: Holding): number => {
  const across = supports.flatMap(({ from, to }) => [from.body.x, to.body.x]);
  return (Math.min(...across) + Math.max(...across)) / 2;
};

// Within this, in mm, two lengths or places are the same.
const same = 1;

// A spot lies on a line when the way over it is longer by no more than this, mm.
const near = 0.02;
