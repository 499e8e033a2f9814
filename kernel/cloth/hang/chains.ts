// Hanging pieces one beside the other, from side to side across each and over each seam to the next, until a side leads to none
// of the others: half a garment, a whole one that opens, or all the way round.
import { type Walked, walked } from "../../outline.ts";
import type { Garment, Piece } from "../../working.ts";
import type { Holding } from "./supports.ts";

/** A piece in the round; `isReversed` where its hem is passed against the order of its outline. */
export interface Turn {
  readonly piece: string;
  readonly isReversed: boolean;
}

/** A piece that hangs, and how. */
export interface HangingPiece {
  readonly piece: Piece;
  readonly holding: Holding;
}

/** What becomes of the round at a side of a piece: it goes on to another piece, comes back in the mirror, or is open. */
export interface ChainEnd {
  readonly edge: string;
  readonly way: "joined" | "mirrored" | "open";
}

/** Pieces from one end to the other; where both ends are joined, all the way round. */
export interface Chain {
  readonly turns: readonly Turn[];
  readonly start: ChainEnd;
  readonly end: ChainEnd;
}

/** The two edges of a piece that lie beside its hem, in the order of its outline, and those above them. */
export interface Sides {
  readonly piece: string;
  readonly before: string;
  readonly after: string;
  readonly upper: readonly string[];
}

export const sidesOf = ({ piece, holding }: HangingPiece): Sides => {
  const walk = walked(piece);
  const at = walk.findIndex(({ edge }) => edge === holding.hem.edge);
  const name = (step: number): string => (walk[(at + step) % walk.length] as Walked).edge.name;
  return {
    piece: piece.name,
    before: name(walk.length - 1),
    after: name(1),
    upper: Array.from({ length: walk.length - 3 }, (_, index) => name(index + 2)),
  };
};

/** All pieces in chains; every piece is in one, and in no other. */
export const chainsOf = (pieces: readonly HangingPiece[], garment: Garment): Chain[] => {
  const left = new Map(pieces.map((each) => [each.piece.name, sidesOf(each)]));
  const beginning = (): Sides | undefined => {
    // At the middle of a side first: from anywhere else one would come upon it halfway.
    const all = [...left.values()];
    return all.find((sides) => ends(sides, left, garment).some(({ way }) => way !== "joined")) ?? all[0];
  };
  const chains: Chain[] = [];
  for (let first = beginning(); first; first = beginning()) {
    const chain = chainFrom(first, left, garment);
    for (const { piece } of chain.turns) left.delete(piece);
    chains.push(chain);
  }
  return chains;
};

/** An edge of a piece. */
export interface EdgeOf {
  readonly piece: string;
  readonly edge: string;
}

/** What seams join to an edge, on every other side of theirs. */
export const sewnTo = ({ piece, edge }: EdgeOf, { seams }: Garment): readonly EdgeOf[] => {
  const has = (runs: readonly EdgeOf[]): boolean => runs.some((run) => run.piece === piece && run.edge === edge);
  return seams.flatMap(({ first, second }) => [...(has(first) ? second : []), ...(has(second) ? first : [])]);
};

/** A side that a seam joins to this one; undefined where none does. */
const acrossFrom = (
  side: EdgeOf,
  left: ReadonlyMap<string, Sides>,
  garment: Garment,
): { readonly sides: Sides; readonly edge: string } | undefined => {
  for (const { piece, edge } of sewnTo(side, garment)) {
    const sides = left.get(piece);
    if (sides && (edge === sides.before || edge === sides.after)) return { sides, edge };
  }
  return undefined;
};

const endAt = ({ piece }: Sides, edge: string, left: ReadonlyMap<string, Sides>, garment: Garment): ChainEnd => {
  if (garment.pieces.get(piece)!.edges.get(edge)!.role === "fold") return { edge, way: "mirrored" };
  const across = acrossFrom({ piece, edge }, left, garment);
  if (!across) return { edge, way: "open" };
  return { edge, way: across.sides.piece === piece && across.edge === edge ? "mirrored" : "joined" };
};

const ends = (sides: Sides, left: ReadonlyMap<string, Sides>, garment: Garment): [ChainEnd, ChainEnd] => [
  endAt(sides, sides.before, left, garment),
  endAt(sides, sides.after, left, garment),
];

const chainFrom = (first: Sides, left: ReadonlyMap<string, Sides>, garment: Garment): Chain => {
  const [before, after] = ends(first, left, garment);
  // Into it by the side that comes back in the mirror, or else by one that ends there; out by the other.
  const isBegin = (end: ChainEnd, other: ChainEnd): boolean =>
    end.way === "mirrored" ? other.way !== "mirrored" : end.way === "open" && other.way === "joined";
  let isReversed = isBegin(after, before);
  const start = isReversed ? after : before;
  const turns: Turn[] = [];
  let sides = first;
  while (true) {
    turns.push({ piece: sides.piece, isReversed });
    const out = isReversed ? sides.before : sides.after;
    const end = endAt(sides, out, left, garment);
    const next = end.way === "joined" ? acrossFrom({ piece: sides.piece, edge: out }, left, garment) : undefined;
    if (!next || turns.some(({ piece }) => piece === next.sides.piece)) return { turns, start, end };
    sides = next.sides;
    isReversed = next.edge === sides.after;
  }
};
