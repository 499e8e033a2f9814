// Edges of all pieces, where a line of the garment wants edges: those first that no line has sewn yet.
import { worthInWords } from "../in-words.ts";
import type { Known } from "../known-names.ts";
import type { Spot } from "../line-at.ts";
import type { WantedKind } from "../wanted-kinds.ts";
import type { WorkedText } from "../worked-text.ts";
import { membersOf } from "./member-words.ts";
import type { Suggested } from "./suggested.ts";

/** `front.side`, `back.side`, … outside of pieces. */
export const seamsHere = (worked: WorkedText, spot: Spot, known: Known, wanted: readonly WantedKind[]): Suggested[] => {
  const { outcome } = worked;
  if (known.piece || !wanted.includes("edge") || isPathBegun(spot)) return [];
  const from = spot.line?.from ?? spot.offset;
  const sewn = new Set(
    outcome.garment.seams
      .filter(({ drawnBy }) => drawnBy.from < from)
      .flatMap(({ first, second }) => [...first, ...second].map(({ piece, edge }) => `${piece}.${edge}`)),
  );
  const here = new Set(
    spot.line?.words.map((_, index, words) =>
      words
        .slice(index, index + 3)
        .map(({ text }) => text)
        .join(""),
    ) ?? [],
  );
  return [...known.names.values()].flatMap(({ name: piece, value }) => {
    if (value?.kind !== "piece") return [];
    return value.piece.outline.map(({ edge }, index) => {
      const label = `${piece}.${edge}`;
      const role = value.piece.edges.get(edge)?.role ?? "seam";
      const part = membersOf(value).find(({ name }) => name === edge)?.value;
      const late = (sewn.has(label) || here.has(label) ? 3 : 0) + (role === "seam" ? 0 : 1);
      return {
        label,
        kind: "edge" as const,
        detail: `${role}, ${(part && worthInWords(part, outcome.garment.units)) ?? ""}`,
        rank: (wanted[0] === "edge" ? -5 : 5) + late + index / 1000,
      };
    });
  });
};

/** In `front|.side` only the piece is to be chosen. */
const isPathBegun = ({ line, word }: Spot): boolean =>
  word !== undefined && line?.words.some(({ text, from }) => text === "." && from === word.to) === true;
