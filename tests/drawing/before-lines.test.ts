// What was before is shown under an alteration, and not under what was cut out, laid elsewhere or turned over.
import { expect, test } from "vitest";
import { beforeLines } from "../../kernel/drawing/before-lines.ts";
import type { Piece } from "../../kernel/working.ts";
import { bent, madePiece } from "../cloth/made-piece.ts";

const box = (left: number, top: number, right: number, bottom: number, source?: Piece): Piece =>
  madePiece(
    "front",
    [
      { name: "top", path: bent([left, top], [right, top]) },
      { name: "side", path: bent([right, top], [right, bottom]) },
      { name: "hem", path: bent([right, bottom], [left, bottom]) },
      { name: "opening", path: bent([left, bottom], [left, top]) },
    ],
    source ? { source } : {},
  );
const coat = box(0, 0, 300, 1000);

test("a longer, wider coat shows the edges that moved", () => {
  const before = beforeLines(box(0, 0, 340, 1100, coat));
  expect(before.map(({ path }) => path)).toEqual(
    ["top", "side", "hem", "opening"].map((name) => coat.edges.get(name)!.path),
  );
});

test("a coat made into a jacket of two thirds its length shows the coat", () => {
  expect(beforeLines(box(0, 0, 300, 667, coat))).not.toEqual([]);
});

test("a facing of a quarter of the coat shows no coat", () => {
  expect(beforeLines(box(0, 0, 75, 1000, coat))).toEqual([]);
});

test("a piece laid elsewhere shows nothing", () => {
  expect(beforeLines(box(400, 0, 700, 1000, coat))).toEqual([]);
});

test("a piece turned over in its own middle shows nothing, though it covers the same spot", () => {
  // The opening comes to lie right and the side left; the hem slants so that the two differ.
  const slanted = { ...coat, edges: new Map(coat.edges) };
  const over: Piece = madePiece(
    "front",
    [
      { name: "top", path: bent([300, 0], [0, 0]) },
      { name: "side", path: bent([0, 0], [0, 990]) },
      { name: "hem", path: bent([0, 990], [300, 1000]) },
      { name: "opening", path: bent([300, 1000], [300, 0]) },
    ],
    { source: slanted },
  );
  expect(beforeLines(over)).toEqual([]);
});
