// Which pieces go round the body together, and in which order: from side to side across each piece, and over each seam to the
// next. What lies on the fold or is cut in pairs goes round the other side in the mirror.
import { pathLength } from "../../geometry/arc-length.ts";
import type { Garment } from "../../working.ts";
import { type Chain, chainsOf, type HangingPiece, sewnTo, sidesOf, type Turn } from "./chains.ts";

/** Pieces one after another round the body, from the middle of one side; the last meets the first. */
export interface RoundOfPieces {
  readonly turns: readonly Turn[];
  /** What it goes round: the trunk, or one arm or leg. */
  readonly around: "body" | "arm" | "leg";
}

/** The rounds of a garment, as its seams tell them, and what is in none. */
export interface RoundsFound {
  readonly rounds: readonly (RoundOfPieces & { readonly chain: Chain })[];
  readonly leftOut: readonly LeftOut[];
}

/** A piece that hangs in no round: it is not cut, both its sides end in the air, or others are sewn together past it. */
export interface LeftOut {
  readonly piece: string;
  readonly because: "uncut" | "loose" | "set-in";
}

/** The rounds that hanging pieces make, as the recipe's seams join them. */
export const roundsOf = (pieces: readonly HangingPiece[], garment: Garment): RoundOfPieces[] =>
  roundsIn(pieces, garment).rounds.map(({ turns, around }) => ({ turns, around }));

/** The same with the pieces that are left out, and how each round ends. */
export const roundsIn = (pieces: readonly HangingPiece[], garment: Garment): RoundsFound => {
  const isCut = ({ piece }: HangingPiece): boolean =>
    isUntold(garment) || garment.cuts.some((cut) => cut.piece === piece.name);
  const chains = chainsOf(pieces.filter(isCut), garment);
  // A facing ends in the air on both sides, and hangs with the piece it faces.
  const isInTheAir = ({ turns, start, end }: Chain): boolean =>
    turns.length === 1 && start.way === "open" && end.way === "open";
  const sewn = chains.filter((chain) => !isInTheAir(chain));
  const kept = sewn.length > 0 ? sewn : chains;
  const isSewn = (piece: string, edge: string): boolean => sewnTo({ piece, edge }, garment).length > 0;
  const apart = chains.filter((chain) => !kept.includes(chain));
  return {
    rounds: kept.map((chain) => {
      const around = aroundWhat(chain, pieces, garment);
      return { turns: wholeRound(chain, around, garment), around, chain };
    }),
    leftOut: [
      ...pieces.filter((each) => !isCut(each)).map(({ piece }) => ({ piece: piece.name, because: "uncut" as const })),
      ...apart.map(({ turns: [only], start, end }) => {
        const { piece } = only!;
        const isSet = isSewn(piece, start.edge) || isSewn(piece, end.edge);
        return { piece, because: isSet ? ("set-in" as const) : ("loose" as const) };
      }),
    ],
  };
};

/** Whether the recipe does not say how often a piece is cut. */
export const isUntold = ({ cuts }: Garment): boolean => cuts.length === 0;

const isClosed = ({ start }: Chain): boolean => start.way === "joined";

const timesCut = (name: string, { cuts }: Garment): number =>
  cuts.filter(({ piece }) => piece === name).reduce((sum, each) => sum + each.count, 0);

const aroundWhat = (chain: Chain, pieces: readonly HangingPiece[], garment: Garment): RoundOfPieces["around"] => {
  const own = pieces.filter(({ piece }) => chain.turns.some((turn) => turn.piece === piece.name));
  if (own.some(({ holding }) => holding.kind === "cap")) return "arm";
  if (!isClosed(chain) || own.length < 2) return "body";
  if (isSetIn(own, pieces, garment)) return "arm";
  // Two of each that close in a ring are two rings; gores would have nothing above them but a waist.
  const isPair = own.every(({ piece, holding }) => holding.kind === "bodice" && timesCut(piece.name, garment) === 2);
  return isPair ? "leg" : "body";
};

/** Whether a ring is sewn with its upper edges into a wider one, beside its sides, as a raglan sleeve is below the arm. */
const isSetIn = (own: readonly HangingPiece[], pieces: readonly HangingPiece[], garment: Garment): boolean => {
  const hemOf = (of: readonly HangingPiece[]): number =>
    of.reduce((sum, { holding }) => sum + pathLength(holding.hem.path), 0);
  const others = pieces.filter((each) => !own.includes(each));
  const beside = new Set(
    others.flatMap((each) => {
      const { piece, upper } = sidesOf(each);
      return [upper[0], upper.at(-1)].map((edge) => `${piece}.${edge}`);
    }),
  );
  const into = own
    .flatMap((each) => sidesOf(each).upper.flatMap((edge) => sewnTo({ piece: each.piece.name, edge }, garment)))
    .filter(({ piece, edge }) => beside.has(`${piece}.${edge}`));
  const wider = others.filter(({ piece }) => into.some((edge) => edge.piece === piece.name));
  return wider.length > 0 && hemOf(own) < hemOf(wider);
};

const wholeRound = (chain: Chain, around: RoundOfPieces["around"], garment: Garment): readonly Turn[] => {
  const { turns, start, end } = chain;
  const counts = turns.map(({ piece }) => timesCut(piece, garment));
  if (isClosed(chain)) {
    // Gores alike go round as often as they are cut.
    const times = around === "body" && counts.every((count) => count === counts[0]) ? Math.max(1, counts[0]!) : 1;
    return Array.from({ length: times }, () => turns).flat();
  }
  const isMirrored = start.way === "mirrored" || end.way === "mirrored";
  // Common practice, no source: a pattern is drafted from center to center, for one half of the body.
  const isHalf = isMirrored || (around === "body" && (isUntold(garment) || counts.some((count) => count > 1)));
  return isHalf ? [...turns, ...turns.map(mirrored).reverse()] : turns;
};

const mirrored = ({ piece, isReversed }: Turn): Turn => ({ piece, isReversed: !isReversed });
