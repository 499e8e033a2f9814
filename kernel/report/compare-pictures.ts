// The words of the pictures: what stands beside each dimension line, and the whole of a picture for those who hear it read out.
import type { ChangedPiece } from "../compare/comparison.ts";
import type { LaidBy } from "../compare/laid-over.ts";
import { overlay } from "../drawing/overlay.ts";
import { overlaySvg } from "../drawing/overlay-svg.ts";
import type { Piece } from "../working.ts";
import type { Review } from "./compare-told.ts";
import { change, far, shortArea, shortLength } from "./compare-words.ts";

/** The two pieces behind a changed one, by its name now; either may be missing. */
export type PairOf = (name: string) => { readonly before: Piece | undefined; readonly after: Piece | undefined };

/** A picture of a changed piece, as SVG. */
export interface Picture {
  readonly piece: string;
  readonly svg: string;
}

/** One picture for every piece whose outline or lines changed. */
export const picturesOf = (review: Review, pairOf: PairOf, by: LaidBy): Picture[] =>
  review.comparison.pieces
    .filter(isPictured)
    .map((piece): Picture => ({ piece: piece.name, svg: pictureOf(piece, review, pairOf, by) }));

// A piece on which nothing but words changed looks as it did.
const isPictured = ({ edges, area, places }: ChangedPiece): boolean =>
  area !== null || edges.length > 0 || places.length > 0;

const pictureOf = (piece: ChangedPiece, review: Review, pairOf: PairOf, by: LaidBy): string => {
  const { before, after } = pairOf(piece.name);
  const { units, blame } = review;
  const { added = 0, removed = 0 } = piece.area ?? {};
  const words = {
    title: `${piece.name}, before and after`,
    description: descriptionOf(piece, review),
    added: `cloth added: ${shortArea(added, units)}`,
    removed: `cloth taken off: ${shortArea(removed, units)}`,
    beside: ({ of }: { readonly of: { readonly kind: "edge" | "corner"; readonly name: string } }): string[] => {
      if (of.kind === "corner") {
        const corner = piece.corners.find(({ edges }) => edges.join("/") === of.name);
        return [far(corner?.moved ?? 0, units)];
      }
      const edge = piece.edges.find(({ name }) => name === of.name)!;
      const caused = blame.get(`${piece.name}.${of.name}`);
      return [
        `${of.name} ${change(edge.difference!, units)}`,
        caused ? `line ${caused.line}: ${firstWords(caused.text)}` : "",
      ];
    },
  };
  return overlaySvg(overlay(before, after, piece, by), words, piece.name);
};

/** The step or the name at the head of a line: "spread-from shoulder", "param flare". */
const firstWords = (text: string): string => text.split(/\s+/).slice(0, 2).join(" ");

const descriptionOf = ({ edges, status }: ChangedPiece, { units }: Review): string => {
  if (status === "added") return "A new piece.";
  if (status === "removed") return "A piece that is gone.";
  const told = edges.flatMap(({ name, before, after, difference }) =>
    before === null || after === null || difference === null
      ? []
      : [`${name} ${shortLength(before, units)} to ${shortLength(after, units)}`],
  );
  return `The piece as it is over the piece as it was. ${told.join(", ")}.`;
};
