// How a piece begins: empty, or as a copy of another that stays as it was.
import type { Where } from "../grammar/diagnostic.ts";
import type { Piece } from "./working.ts";

export const emptyPiece = (name: string, drawnBy: Where): Piece => ({
  name,
  edges: new Map(),
  places: new Map(),
  outline: [],
  allowances: new Map(),
  notches: [],
  drills: [],
  labels: [],
  hinges: [],
  darts: new Map(),
  takeUps: [],
  keeps: [],
  doubtful: false,
  drawnBy,
});

/** A copy to be altered: the source, called `from` in the recipe, is its "before" and what `keep` holds it to. */
export const copyOf = (source: Piece, name: string, from: string, drawnBy: Where): Piece => ({
  ...source,
  name,
  source,
  from,
  kept: source,
  // Hinges and promises were the source's own affair.
  hinges: [],
  keeps: [],
  drawnBy,
});
