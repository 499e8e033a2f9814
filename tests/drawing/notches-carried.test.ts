// Notches are carried to the cutting line square to the seam, whatever has become of it there.
import { describe, expect, test } from "vitest";
import { drawPiece } from "../../kernel/drawing/draw.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { endOf, type Path, startOf } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Notch, Piece } from "../../kernel/working.ts";
import { at, bent, type MadeEdge, madePiece, nowhere, polygonEdges } from "../cloth/made-piece.ts";
import { garmentOf } from "./made-garment.ts";

const notch = (edge: string, point: Point, double = false): Notch => ({ edge, point, double, drawnBy: nowhere });

const notchesOf = (edges: readonly MadeEdge[], ...notches: readonly Notch[]): Path[] => {
  const piece: Piece = madePiece("piece", edges, { notches });
  return drawPiece(garmentOf([piece]), piece)
    .groups[0]!.strokes.filter(({ kind }) => kind === "notch")
    .map(({ path }) => path);
};

/** A stroke as its two ends to a thousandth of a mm. */
const ends = (path: Path): number[] =>
  [startOf(path), endOf(path)].flatMap(({ x, y }) => [x, y]).map((value) => Math.round(value * 1000) / 1000 + 0);

const block = [at(0, 0), at(200, 0), at(200, 150), at(0, 150)];

describe("a notch", () => {
  test("stands on the cutting line across from its spot and goes 5 mm in", () => {
    expect(notchesOf(polygonEdges(block, 15), notch("0", at(60, 0))).map(ends)).toEqual([[60, -15, 60, -10]]);
  });

  test("that is double stands twice, 4 mm to either side", () => {
    const both = notchesOf(polygonEdges(block, 15), notch("2", at(60, 150), true)).map(ends);
    expect(both).toEqual([
      [64, 165, 64, 160],
      [56, 165, 56, 160],
    ]);
  });

  test("without an allowance stands on the sewing line and goes into the piece", () => {
    const bound = polygonEdges(block, 15).map((edge) => (edge.name === "0" ? { ...edge, allow: 0 } : edge));
    expect(notchesOf(bound, notch("0", at(60, 0))).map(ends)).toEqual([[60, 0, 60, 5]]);
    const both = notchesOf(bound, notch("0", at(60, 0), true)).map(ends);
    expect(both).toEqual([
      [56, 0, 56, 5],
      [64, 0, 64, 5],
    ]);
  });

  test("at an outer corner stands square to its own edge", () => {
    expect(notchesOf(polygonEdges(block, 15), notch("0", at(200, 0))).map(ends)).toEqual([[200, -15, 200, -10]]);
    expect(notchesOf(polygonEdges(block, 15), notch("1", at(200, 0))).map(ends)).toEqual([[215, 0, 210, 0]]);
  });

  // An inner corner of a right angle at (100, 100): within 15 of it the bands of both edges lie on one another.
  const ell = polygonEdges([at(0, 0), at(200, 0), at(200, 100), at(100, 100), at(100, 200), at(0, 200)], 15);

  test("near an inner corner, where straight out the other edge's band goes on and on, stands inward", () => {
    expect(notchesOf(ell, notch("2", at(110, 100))).map(ends)).toEqual([[110, 100, 110, 95]]);
    expect(notchesOf(ell, notch("2", at(150, 100))).map(ends)).toEqual([[150, 115, 150, 110]]);
  });

  test("at the very inner corner, where the piece itself goes on straight out, stands inward", () => {
    expect(notchesOf(ell, notch("2", at(100, 100))).map(ends)).toEqual([[100, 100, 100, 95]]);
  });
});

describe("a notch where allowances lie on one another", () => {
  const slot = polygonEdges(
    [at(0, 0), at(100, 0), at(100, 80), at(120, 80), at(120, 0), at(220, 0), at(220, 150), at(0, 150)],
    15,
  );

  test("on the wall of a slot that is filled stands inward", () => {
    expect(notchesOf(slot, notch("1", at(100, 40))).map(ends)).toEqual([[100, 40, 95, 40]]);
  });

  test("on its floor, 95 mm from the line that closes it, stands inward too", () => {
    expect(notchesOf(slot, notch("2", at(110, 80))).map(ends)).toEqual([[110, 80, 110, 85]]);
  });

  test("at the bottom of a tight curve goes up to the point in which its walls' lines meet", () => {
    // As in the tests of the cutting line: walls at 45 degrees that would meet at (0, 100), rounded with 10, allowed 15.
    const touch = 10 / Math.SQRT2;
    const middle = at(0, 100 - 10 * Math.SQRT2);
    const edges: MadeEdge[] = [
      { name: "left", path: bent([-80, 20], [-touch, middle.y + touch]), allow: 15 },
      { name: "floor", path: arcSpans(middle, at(-touch, middle.y + touch), -Math.PI / 2), allow: 15 },
      { name: "right", path: bent([touch, middle.y + touch], [80, 20]), allow: 15 },
      { name: "rest", path: bent([80, 20], [200, 20], [200, 170], [-200, 170], [-200, 20], [-80, 20]), allow: 15 },
    ];
    const [stroke] = notchesOf(edges, notch("floor", at(0, middle.y + 10)));
    expect(startOf(stroke!).x).toBeCloseTo(0, 6);
    expect(startOf(stroke!).y).toBeCloseTo(100 - 15 * Math.SQRT2, 4);
    // Of the 17.071 to the seam half would be deeper than 5.
    expect(endOf(stroke!).y - startOf(stroke!).y).toBeCloseTo(5, 6);
  });
});
