// The width of each allowance, written in the band between sewing line and cutting line.
import { describe, expect, test } from "vitest";
import { rim, room } from "../../kernel/drawing/box.ts";
import { drawPiece } from "../../kernel/drawing/draw.ts";
import type { Group, Text } from "../../kernel/drawing/drawing.ts";
import { boxOf } from "../../kernel/drawing/lettering.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import type { Piece, Units } from "../../kernel/working.ts";
import { at, bent, madePiece, nowhere, polygonEdges } from "../cloth/made-piece.ts";
import { garmentOf } from "./made-garment.ts";

const groupOf = (piece: Piece, units: Units = "cm"): Group =>
  drawPiece({ ...garmentOf([piece]), units }, piece).groups[0]!;
const textsOf = (piece: Piece, units?: Units): readonly Text[] => groupOf(piece, units).texts;
const said = (texts: readonly Text[]): string[] => texts.map(({ text }) => text);

/** A block of 200 x 150, its top with an allowance of its own. */
const block = (top: number, width = 200): Piece =>
  madePiece(
    "block",
    polygonEdges([at(0, 0), at(width, 0), at(width, 150), at(0, 150)], 15).map((edge) =>
      edge.name === "0" ? { ...edge, allow: top } : edge,
    ),
  );

describe("the width of an allowance", () => {
  test("stands in the middle of its band, once for each edge", () => {
    const widths = textsOf(block(25)).filter(({ text }) => text === "2.5 cm");
    expect(widths).toHaveLength(1);
    expect(boxOf(widths[0]!).center.y).toBeCloseTo(-12.5, 6);
    expect(textsOf(block(25)).filter(({ text }) => text === "1.5 cm")).toHaveLength(3);
  });

  // 15.875 mm are 5/8 in (trade handbook, section 6.1).
  test("is told in the units of the recipe", () => {
    expect(said(textsOf(block(15.875), "in"))).toContain("5/8 in");
    expect(said(textsOf(block(25), "mm"))).toContain("25 mm");
  });

  test("is not written along a fold, nor where there is none", () => {
    const piece = madePiece("block", [
      { name: "top", path: bent([0, 0], [200, 0]), allow: 0 },
      { name: "side", path: bent([200, 0], [200, 150]), allow: 15 },
      { name: "hem", path: bent([200, 150], [0, 150]), allow: 15 },
      { name: "center", path: bent([0, 150], [0, 0]), allow: 15, role: "fold" },
    ]);
    expect(said(textsOf(piece)).filter((text) => text === "1.5 cm")).toHaveLength(2);
    expect(said(textsOf(piece))).toContain("top, no allowance");
  });

  test("keeps clear of notches and lines", () => {
    const notches = [20, 50, 80, 110, 140, 170].map((x) => ({
      edge: "0",
      point: at(x, 0),
      double: true,
      drawnBy: nowhere,
    }));
    const { texts, strokes } = groupOf({ ...block(15), notches });
    const width = texts.filter(({ text }) => text === "1.5 cm").find((text) => boxOf(text).center.y < 0)!;
    const lines = strokes.map(({ path }) => flattened(path, 0.1));
    const others = texts.filter((text) => text !== width).map((text) => rim(boxOf(text)));
    expect(room(boxOf(width), [...lines, ...others])).toBeGreaterThan(1);
  });

  test("stands with the edge's name instead where its band is too narrow for letters", () => {
    // 4 mm leave no room for letters of 3.6 and the white around them.
    expect(said(textsOf(block(4)))).toContain("0 0.4 cm");
    expect(said(textsOf(block(6)))).toEqual(expect.arrayContaining(["0", "0.6 cm"]));
  });

  test("is left out along an edge shorter than itself", () => {
    const widths = textsOf(block(25, 6)).filter(({ text }) => text === "2.5 cm");
    expect(widths).toEqual([]);
  });
});
