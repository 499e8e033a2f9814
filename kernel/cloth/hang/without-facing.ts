// A piece as it hangs once its facing is folded back: the outline comes down the fold line, and the facing is gone behind it.
import { endOf, startOf } from "../../geometry/path.ts";
import { sameSpot } from "../../geometry/point.ts";
import { cornersOf } from "../../outline.ts";
import type { Edge, OutlinePart, Piece } from "../../working.ts";

/** The piece cut short at a line that parts one of its hems from all others; itself where there is no such line. */
export const withoutFacing = (piece: Piece): Piece => {
  const hems = piece.outline.filter(({ edge }) => piece.edges.get(edge)!.role === "hem");
  if (hems.length < 2) return piece;
  const inOutline = new Set(piece.outline.map(({ edge }) => edge));
  const lines = [...piece.edges.values()].filter(({ name, path }) => !inOutline.has(name) && path.length > 0);
  for (const line of lines) {
    const outline = parted(piece, line);
    if (outline) return { ...piece, outline, edges: new Map(piece.edges).set(line.name, { ...line, role: "opening" }) };
  }
  return piece;
};

/** The side of a line from corner to corner that has the longer way round, where it keeps just one hem. */
const parted = (piece: Piece, line: Edge): OutlinePart[] | undefined => {
  const corners = cornersOf(piece);
  const at = (spot: ReturnType<typeof startOf>): number => corners.findIndex(({ point }) => sameSpot(point, spot));
  const [start, end] = [at(startOf(line.path)), at(endOf(line.path))];
  if (start < 0 || end < 0 || start === end) return undefined;
  const { outline } = piece;
  // Corner n lies between part n and the next.
  const between = (from: number, to: number): OutlinePart[] =>
    Array.from(
      { length: (to - from + outline.length) % outline.length },
      (_, step) => outline[(from + 1 + step) % outline.length]!,
    );
  const sides = [
    [...between(start, end), { edge: line.name, turned: true }],
    [...between(end, start), { edge: line.name, turned: false }],
  ];
  return sides.find(
    (side) => side.length > 4 && side.filter(({ edge }) => piece.edges.get(edge)!.role === "hem").length === 1,
  );
};
