// Narrow and small pieces: what is written on them can be read, lies inside and over no line; edge names give way.
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { isInside, rim, room } from "../../kernel/drawing/box.ts";
import { drawPiece } from "../../kernel/drawing/draw.ts";
import type { Group } from "../../kernel/drawing/drawing.ts";
import { boxOf, textWidth, wrapped } from "../../kernel/drawing/lettering.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, startOf } from "../../kernel/geometry/path.ts";
import { between } from "../../kernel/geometry/point.ts";
import { boundary } from "../../kernel/outline.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, bent, madePiece, nowhere } from "../cloth/made-piece.ts";
import { cutOf, garmentOf } from "./made-garment.ts";

const drawn = (piece: Piece): Group => drawPiece(garmentOf([piece], [cutOf(piece.name, 2)]), piece).groups[0]!;

/** A band so many mm wide with the grain along it, or on the fold of the cloth. */
const band = (length: number, width: number, role: "seam" | "fold" = "seam"): Piece =>
  madePiece(
    "band",
    [
      { name: "upper", path: bent([0, 0], [length, 0]), role },
      { name: "right-end", path: bent([length, 0], [length, width]), allow: 10 },
      { name: "lower", path: bent([length, width], [0, width]), allow: 10 },
      { name: "left-end", path: bent([0, width], [0, 0]), allow: 10 },
    ],
    { grain: { kind: "along", edge: "upper", drawnBy: nowhere } },
  );

// Capitals of common sans-serif letters are 0.73 of their size high or little less; common practice, no source.
const capitals = 0.73;

describe.each([
  ["a belt loop", band(300, 24)],
  ["a tape", band(400, 12)],
  ["a waistband on the fold", band(700, 35, "fold")],
  ["a short collar on a long fold", band(60, 160, "fold")],
])("on %s", (_, piece) => {
  const { strokes, texts } = drawn(piece);
  const orders = texts.filter(({ text }) => text === text.toUpperCase());

  test("the label is there, with the count, in capitals of 3 mm or more", () => {
    const words = orders.map(({ text }) => text);
    expect(words).toContain("BAND");
    expect(words.join(" ")).toContain("CUT 2 SHELL");
    for (const { text, size } of orders) expect(size * capitals, text).toBeGreaterThanOrEqual(3);
  });

  test("nothing is written over a line, over other writing, or outside", () => {
    const lines = strokes.map(({ path }) => flattened(path, 0.2));
    // The widths of the allowances stand in their bands, all else inside the sewing line.
    const [outline, cut] = [boundary(piece)!, cuttingLine(piece)!.path].map((path) => flattened(path, 0.2));
    texts.forEach((text, index) => {
      const others = texts.filter((_, i) => i !== index).map((other) => rim(boxOf(other)));
      expect(room(boxOf(text), [...lines, ...others]), text.text).toBeGreaterThanOrEqual(1);
      expect(isInside(boxOf(text).center, text.text === "1 cm" ? cut! : outline!), text.text).toBe(true);
    });
  });
});

test("a piece that a level label fits in smaller letters has it level", () => {
  const collar = band(200, 40);
  const name = drawn({ ...collar, grain: { kind: "along", edge: "left-end", drawnBy: nowhere } }).texts.find(
    ({ text }) => text === "BAND",
  )!;
  expect(name.turn).toBe(0);
});

test("a strip too narrow for its edge names goes without those along it", () => {
  const words = drawn(band(400, 8)).texts.map(({ text }) => text);
  expect(words.some((text) => text.startsWith("upper") || text.startsWith("lower"))).toBe(false);
});

describe("a word that is too wide", () => {
  const size = 10;
  const wide = (text: string) => textWidth(text, size, "bold");

  test("is broken at its hyphen", () => {
    expect(wrapped("NECK-FACING", size, "bold", wide("NECK-FA"))).toEqual(["NECK-", "FACING"]);
    expect(wrapped("UPPER-NECK-FACING", size, "bold", wide("UPPER-NECK-"))).toEqual(["UPPER-NECK-", "FACING"]);
  });

  test("is broken inside only where it has none, and loses no letter", () => {
    const rows = wrapped("INTERLINING", size, "bold", wide("INTERL"));
    expect(rows.length).toBeGreaterThan(1);
    expect(rows.join("")).toBe("INTERLINING");
  });
});

describe("the grain line keeps clear of the outline", () => {
  const clearance = (piece: Piece): number => {
    const path = drawn(piece).strokes.find(({ kind }) => kind === "grain")!.path;
    const shares = Array.from({ length: 101 }, (_, i) => i / 100);
    const spots = shares.map((share) => between(startOf(path), endOf(path), share));
    return Math.min(...spots.map((spot) => nearest(boundary(piece)!, spot).distance));
  };

  test("where an edge bulges into the piece beside it", () => {
    // A third across the panel, where its grain would lie by itself, the side comes within 2 mm of it: about (442.6, 200)
    // its radius is the root of 362.6 and 200 squared, 414.1, so that it bulges in to 28.5.
    const panel = madePiece(
      "panel",
      [
        { name: "top", path: bent([0, 0], [80, 0]) },
        { name: "side", path: arcSpans(at(442.6, 200), at(80, 0), -2 * Math.atan2(200, 362.6)) },
        { name: "hem", path: bent([80, 400], [0, 400]) },
        { name: "center", path: bent([0, 400], [0, 0]) },
      ],
      { grain: { kind: "along", edge: "center", drawnBy: nowhere } },
    );
    expect(clearance(panel)).toBeGreaterThanOrEqual(9.99);
  });

  test("where it was given along an edge", () => {
    const piece: Piece = {
      ...band(300, 200),
      grain: { kind: "line", from: at(0, 0), to: at(300, 0), drawnBy: nowhere },
    };
    expect(clearance(piece)).toBeGreaterThanOrEqual(10);
  });
});
