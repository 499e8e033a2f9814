// What the rounds of a garment take for granted where its recipe does not say it, and what they leave out: a sentence each.
import { boundary } from "../../outline.ts";
import type { Garment, Piece } from "../../working.ts";
import type { Chain, HangingPiece } from "./chains.ts";
import { isUntold, type LeftOut, roundsIn } from "./rounds.ts";

/** Sentences about the rounds that hanging pieces make. */
export const roundNotes = (pieces: readonly HangingPiece[], garment: Garment): string[] => {
  const { rounds, leftOut } = roundsIn(pieces, garment);
  return [
    ...rounds.flatMap(({ chain, around }) => [
      ...(around === "body" && isUntold(garment) ? halfNotes(chain) : []),
      ...endNotes(chain, garment),
    ]),
    ...leftOut.map((each) => `${each.piece} is left out of the hem seen from below: ${why[each.because]}.`),
    ...hemNotes(pieces, garment),
  ];
};

const why: Record<LeftOut["because"], string> = {
  uncut: "the recipe does not cut it",
  loose: "nothing is sewn to its sides",
  "set-in": "it is set in between pieces that are sewn to each other past it",
};

/** Half a garment that neither a fold nor a `cut` line says to be one. */
const halfNotes = ({ turns, start, end }: Chain): string[] => {
  if (start.way !== "open" || end.way !== "open") return [];
  const names = turns.map(({ piece }) => piece);
  return [
    `No \`cut\` line says how often ${listed(names)} ${names.length > 1 ? "are" : "is"} cut: taken as one half of two.`,
  ];
};

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

/** An opening is closed when it is worn; any other edge that nothing is sewn to is only taken to be. */
const endNotes = ({ turns, start, end }: Chain, { pieces }: Garment): string[] => {
  const ends = [
    { piece: turns[0]!.piece, ...start },
    { piece: turns.at(-1)!.piece, ...end },
  ];
  const open = ends.filter(
    ({ piece, edge, way }) => way === "open" && pieces.get(piece)!.edges.get(edge)?.role === "seam",
  );
  return [...new Set(open.map(({ piece, edge }) => `${piece}.${edge}`))].map(
    (name) => `Nothing is sewn to ${name}: the hem seen from below is taken to close there.`,
  );
};

/** What is cut and has more than one hem, of which the picture cannot tell which one hangs. */
const hemNotes = (pieces: readonly HangingPiece[], garment: Garment): string[] => {
  const hanging = new Set(pieces.map(({ piece }) => piece.name));
  return [...garment.pieces.values()].flatMap((piece) => {
    const hems = hemsIn(piece);
    const isTold = garment.cuts.some((cut) => cut.piece === piece.name) && boundary(piece) !== undefined;
    if (hanging.has(piece.name) || piece.doubtful || !isTold || hems < 2) return [];
    return [`${piece.name} is left out of the hem seen from below: it has ${hems} hems.`];
  });
};

const hemsIn = ({ outline, edges }: Piece): number =>
  outline.filter(({ edge }) => edges.get(edge)!.role === "hem").length;
