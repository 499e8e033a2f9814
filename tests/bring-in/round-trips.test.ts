// Our own pieces, written in every format we have, traced, and laid over themselves.
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { dxfSheet } from "../../editor/bring-in/dxf-sheet.ts";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { draw } from "../../kernel/drawing/draw.ts";
import { cuttingRoomDxf } from "../../kernel/exchange/cutting-room.ts";
import { dxf } from "../../kernel/export/dxf.ts";
import { svg } from "../../kernel/export/svg.ts";
import { layeredSvg } from "../../kernel/export/svg-layers.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { mapped, type Path } from "../../kernel/geometry/path.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { faceFrom } from "../../kernel/lettering/lettering.ts";
import { boundary } from "../../kernel/outline.ts";
import type { Piece } from "../../kernel/working.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { howFar, traced } from "./traced.ts";

const recipes = [
  "lobby-coat-swing.chalk",
  "ushers-vest-swing.chalk",
  "circle-skirt.chalk",
  "stage-cape.chalk",
  "raglan-stage-cloak.chalk",
];

/** With its upper left corner at (0, 0), wherever it lay. */
const atOrigin = (path: Path): Path => {
  const { left, top } = bounds([path]);
  return mapped(path, ({ x, y }) => ({ x: x - left, y: y - top }));
};

/** Notches as they are snipped; a double one that lies across a corner comes back as two. */
const strokes = ({ notches }: Piece): number => notches.reduce((sum, { double }) => sum + (double ? 2 : 1), 0);

/** Where cloth begins and ends to be gathered stands a notch too. */
const gatherEnds = ({ takeUps }: Piece): number => 2 * takeUps.length;

const fontFile = (name: string): Uint8Array =>
  readFileSync(fileURLToPath(new URL(`../../node_modules/dejavu-fonts-ttf/ttf/${name}.ttf`, import.meta.url)));
const lettering = { plain: faceFrom(fontFile("DejaVuSans")), bold: faceFrom(fontFile("DejaVuSans-Bold")) };

const sheets = [
  ["svg", (piece: string, all: Outcome) => svg(draw(all.garment).pieces.get(piece)!), "svg"],
  ["lettered svg", (piece: string, all: Outcome) => svg(draw(all.garment).pieces.get(piece)!, lettering), "svg"],
  ["layers", (piece: string, all: Outcome) => layeredSvg(draw(all.garment).pieces.get(piece)!), "svg"],
  ["laser", (piece: string, all: Outcome) => dxf(draw(all.garment).pieces.get(piece)!), "dxf"],
] as const;

describe.each(recipes)("%s", (file) => {
  const worked = workedRecipe(file);
  const pieces = [...worked.garment.pieces.values()];

  test.each(sheets)(
    "a piece drawn as %s is traced along its cutting line, and along its sewing line",
    (_, write, kind) => {
      for (const piece of pieces) {
        const text = write(piece.name, worked);
        // Where the paper begins is a matter of the sheet, so each is laid at the upper left.
        const cut = traced(text, kind);
        expect(cut.outlines).toHaveLength(1);
        // What DXF holds is within 0.05 of the curve it stands for already.
        const within = kind === "dxf" ? 0.15 : 0.1;
        expect(howFar(atOrigin(cut.outlines[0]!), atOrigin(cuttingLine(piece)!.path))).toBeLessThan(within);
        const sewn = traced(text, kind, { line: "sewing" });
        expect(sewn.outlines).toHaveLength(1);
        expect(howFar(atOrigin(sewn.outlines[0]!), atOrigin(boundary(piece)!))).toBeLessThan(within);
        // The allowances that were measured make the cutting line that was drawn, at the place where it lies beside the outline.
        const [again] = sewn.pieces;
        const besideOutline = (of: Piece): Path => {
          const { left, top } = bounds([boundary(of)!]);
          return mapped(cuttingLine(of)!.path, ({ x, y }) => ({ x: x - left, y: y - top }));
        };
        expect(howFar(besideOutline(again!), besideOutline(piece))).toBeLessThan(within);
        expect(sewn.made.notes).toEqual([]);
      }
    },
  );

  test("a whole sheet is as many pieces, and notches, grain and folds come back", () => {
    const { outlines, made, pieces: again } = traced(svg(draw(worked.garment).sheet), "svg");
    expect(made.pieces.map(({ name }) => name)).toEqual(pieces.map(({ name }) => name));
    for (const [i, piece] of pieces.entries()) {
      expect(howFar(atOrigin(outlines[i]!), atOrigin(cuttingLine(piece)!.path))).toBeLessThan(0.1);
      const found = again[i]!;
      expect(strokes(found)).toBe(strokes(piece) + gatherEnds(piece));
      expect(found.grain === undefined).toBe(false);
      const folds = (all: Piece): number => [...all.edges.values()].filter(({ role }) => role === "fold").length;
      expect(folds(found)).toBe(folds(piece));
    }
  });

  test("the file for cutting rooms comes back with its names, at its size", () => {
    const text = cuttingRoomDxf([{ base: true, garment: worked.garment }]);
    const { outlines, made, pieces: again } = traced(text, "dxf");
    const drawn = dxfSheet(text, undefined).lines.filter(({ means }) => means === "cutting");
    expect(made.pieces.map(({ name }) => name)).toEqual(pieces.map(({ name }) => name));
    for (const [i, piece] of pieces.entries()) {
      expect(howFar(atOrigin(outlines[i]!), atOrigin(cuttingLine(piece)!.path))).toBeLessThan(0.15);
      // Of the drawing itself, whose chords are all that the file knows.
      expect(howFar(outlines[i]!, drawn[i]!.path)).toBeLessThan(0.1);
      expect(strokes(again[i]!)).toBe(strokes(piece) + gatherEnds(piece));
      expect(again[i]!.grain?.kind).toBe("line");
    }
  });
});

describe("an allowance that was drawn in is stripped off again", () => {
  // A coat front's shape with a curved neck and armhole, 1.5 cm round about; corners carried on, as strip trims them.
  const net = (allow: string): string => `chalkline 1
recipe "Usher's vest"
units cm
piece vest {
  point A = (8 cm, 0)
  point B = (22 cm, 4 cm)
  point C = (27 cm, 24 cm)
  point D = (27 cm, 60 cm)
  point E = (0, 60 cm)
  point F = (0, 9 cm)
  line shoulder = A to B
  curve armhole = B to C handles (19 cm, 12 cm), (21 cm, 22 cm)
  line side = C to D
  line hem = D to E
  line opening = E to F
  curve neck = F to A handles (5 cm, 9 cm), (7 cm, 5 cm)
  outline shoulder, armhole, side, hem, opening, neck
  grain (14 cm, 20 cm) to (14 cm, 50 cm)
  ${allow}
}
`;

  test.each([
    ["svg", (all: Outcome) => svg(draw(all.garment).pieces.get("vest")!), "svg", 0.1],
    ["dxf", (all: Outcome) => cuttingRoomDxf([{ base: true, garment: all.garment }]), "dxf", 0.15],
  ] as const)("out of %s", (_, write, kind, within) => {
    const worked = workedText(net("allow shoulder, armhole, side, hem, opening, neck by 1.5 cm"));
    const { made } = traced(write(worked), kind);
    const [piece] = made.pieces;
    expect(piece!.edges.length).toBeGreaterThanOrEqual(6);
    const strip = /strip ([\w, -]+) by its width/.exec(made.recipe)![1]!;
    expect(strip).toBe(piece!.edges.join(", "));
    const recipe = made.recipe.replace(/\n {2}grain/, `\n  strip ${strip} by 1.5 cm\n  grain`);
    const stripped = workedText(recipe);
    expect(stripped.findings.filter(({ severity }) => severity === "error")).toEqual([]);
    const outline = atOrigin(boundary(stripped.garment.pieces.get("vest")!)!);
    const original = atOrigin(boundary(worked.garment.pieces.get("vest")!)!);
    expect(howFar(outline, original)).toBeLessThan(within);
    expect(pathLength(outline)).toBeCloseTo(pathLength(original), 0);
  });
});
