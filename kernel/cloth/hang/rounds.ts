// Which pieces go round the body together, and in which order: from side to side across each piece, and over each seam to the
// next. What lies on the fold or is cut in pairs goes round the other side in the mirror.
import { type Walked, walked } from "../../outline.ts";
import type { Garment, Piece } from "../../working.ts";
import type { Holding } from "./supports.ts";

/** A piece in the round; `isReversed` where its hem is passed against the order of its outline. */
export interface Turn {
  readonly piece: string;
  readonly isReversed: boolean;
}

/** Pieces one after another round the body, from the middle of one side; the last meets the first. */
export interface RoundOfPieces {
  readonly turns: readonly Turn[];
  /** What it goes round: the trunk, or an arm. */
  readonly around: "body" | "arm";
}

/** A piece that hangs, and how. */
export interface HangingPiece {
  readonly piece: Piece;
  readonly holding: Holding;
}

/** The rounds that hanging pieces make, as the recipe's seams join them. */
export const roundsOf = (pieces: readonly HangingPiece[], garment: Garment): RoundOfPieces[] => {
  const isCut = ({ piece }: HangingPiece): boolean =>
    garment.cuts.length === 0 || garment.cuts.some((cut) => cut.piece === piece.name);
  const left = new Map(pieces.filter(isCut).map((each) => [each.piece.name, sidesOf(each)]));
  const beginning = (): Sides | undefined => {
    // At the middle of a side first: from anywhere else one would come upon it halfway.
    const all = [...left.values()];
    return all.find((sides) => ends(sides, left, garment).some((end) => end !== "joined")) ?? all[0];
  };
  const chains: Chain[] = [];
  for (let first = beginning(); first; first = beginning()) {
    const chain = chainFrom(first, left, garment);
    for (const { piece } of chain.turns) left.delete(piece);
    chains.push(chain);
  }
  // A facing ends in the air on both sides, and hangs with the piece it faces.
  const isInTheAir = ({ turns, start, end }: Chain): boolean =>
    turns.length === 1 && start === "open" && end === "open";
  const sewn = chains.filter((chain) => !isInTheAir(chain));
  return (sewn.length > 0 ? sewn : chains).map((chain) => ({
    turns: chain.isArm ? chain.turns : wholeRound(chain, garment),
    around: chain.isArm ? "arm" : "body",
  }));
};

/** The two edges of a piece that lie beside its hem, in the order of its outline. */
interface Sides {
  readonly piece: string;
  readonly isArm: boolean;
  readonly before: string;
  readonly after: string;
}

const sidesOf = ({ piece, holding }: HangingPiece): Sides => {
  const walk = walked(piece);
  const at = walk.findIndex(({ edge }) => edge === holding.hem.edge);
  const beside = (step: number): string => (walk[(at + step + walk.length) % walk.length] as Walked).edge.name;
  return { piece: piece.name, isArm: holding.kind === "cap", before: beside(-1), after: beside(1) };
};

/** What becomes of the round at a side of a piece: it goes on to another piece, comes back in the mirror, or is open. */
type End = "joined" | "mirrored" | "open";

/** A side that a seam joins to this one; undefined where none does. */
const acrossFrom = (
  piece: string,
  edge: string,
  left: ReadonlyMap<string, Sides>,
  { seams }: Garment,
): { readonly sides: Sides; readonly edge: string } | undefined => {
  const has = (runs: Garment["seams"][number]["first"]): boolean =>
    runs.some((run) => run.piece === piece && run.edge === edge);
  for (const { first, second } of seams) {
    for (const other of [...(has(first) ? second : []), ...(has(second) ? first : [])]) {
      const sides = left.get(other.piece);
      if (sides && (other.edge === sides.before || other.edge === sides.after)) return { sides, edge: other.edge };
    }
  }
  return undefined;
};

const endAt = (sides: Sides, edge: string, left: ReadonlyMap<string, Sides>, garment: Garment): End => {
  if (garment.pieces.get(sides.piece)!.edges.get(edge)!.role === "fold") return "mirrored";
  const across = acrossFrom(sides.piece, edge, left, garment);
  if (!across) return "open";
  return across.sides.piece === sides.piece && across.edge === edge ? "mirrored" : "joined";
};

const ends = (sides: Sides, left: ReadonlyMap<string, Sides>, garment: Garment): [End, End] => [
  endAt(sides, sides.before, left, garment),
  endAt(sides, sides.after, left, garment),
];

/** Pieces from one end to the other, or all the way round. */
interface Chain {
  readonly isArm: boolean;
  readonly turns: readonly Turn[];
  readonly start: End;
  readonly end: End;
}

const chainFrom = (first: Sides, left: ReadonlyMap<string, Sides>, garment: Garment): Chain => {
  const [before, after] = ends(first, left, garment);
  // Into it by the side that ends there, out by the other.
  let isReversed = before === "joined" && after !== "joined";
  const start = isReversed ? after : before;
  const turns: Turn[] = [];
  let sides = first;
  while (true) {
    turns.push({ piece: sides.piece, isReversed });
    const out = isReversed ? sides.before : sides.after;
    const end = endAt(sides, out, left, garment);
    const next = end === "joined" ? acrossFrom(sides.piece, out, left, garment) : undefined;
    if (!next || turns.some(({ piece }) => piece === next.sides.piece))
      return { isArm: first.isArm, turns, start, end };
    sides = next.sides;
    isReversed = next.edge === sides.after;
  }
};

const wholeRound = ({ turns, start, end }: Chain, { cuts }: Garment): Turn[] => {
  const count = (name: string): number =>
    cuts.filter(({ piece }) => piece === name).reduce((sum, each) => sum + each.count, 0);
  const isAround = start === "joined";
  // Gores alike go round as often as they are cut.
  const [only] = turns;
  if (isAround && turns.length === 1) return Array.from({ length: Math.max(1, count(only!.piece)) }, () => only!);
  const isHalf = [start, end].includes("mirrored") || turns.some(({ piece }) => count(piece) > 1);
  if (isAround || !isHalf) return [...turns];
  return [...turns, ...turns.map(({ piece, isReversed }) => ({ piece, isReversed: !isReversed })).reverse()];
};
