// Before and after inside one recipe: every piece that was copied from another, against what it was copied from.
import type { Outcome } from "../kernel.ts";
import type { Piece } from "../working.ts";
import { comparePieces } from "./compare-pieces.ts";
import type { ChangedPiece, Comparison } from "./comparison.ts";

/** The derived pieces of a garment that differ from their sources, in the order of the recipe; `from` is what it copies. */
export const compareSources = (outcome: Outcome): Comparison => ({
  values: [],
  pieces: [...sourcesOf(outcome)].flatMap(([name, source]): ChangedPiece[] => {
    const piece = outcome.garment.pieces.get(name)!;
    const changed = comparePieces(source, piece, name);
    return changed ? [{ ...changed, from: piece.from ?? source.name }] : [];
  }),
  seams: [],
  cuts: [],
  checks: { began: [], ceased: [] },
});

/** The pieces that derived ones were copied from, by the names of the copies. */
export const sourcesOf = ({ garment }: Outcome): ReadonlyMap<string, Piece> =>
  new Map([...garment.pieces.values()].flatMap(({ name, source }) => (source ? [[name, source] as const] : [])));
