// A hung garment in the room: its folded hem is as long as the cloth, and its body as round as an ellipse is.
import { expect, test } from "vitest";
import { onEllipse } from "../../kernel/cloth/hang/ellipse.ts";
import { type Figure, figuresOf } from "../../kernel/cloth/hang/figures.ts";
import { rigged } from "../../kernel/cloth/hang/rigged.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Garment } from "../../kernel/working.ts";
import { workedRecipe } from "../worked-recipe.ts";

const lengthOf = (points: readonly Point[]): number =>
  points.slice(1).reduce((sum, p, index) => sum + Math.hypot(p.x - points[index]!.x, p.y - points[index]!.y), 0);

const bodyOf = (garment: Garment): readonly Figure[] => {
  const { rounds, columns, straight } = rigged(garment);
  return figuresOf(rounds[0]!, columns, straight);
};

const below = (figures: readonly Figure[]): Figure => figures.find(({ from }) => from === "below")!;
const hemLine = (figure: Figure): readonly Point[] =>
  figure.shapes.flatMap((shape) => (shape.kind === "rim" ? [shape.along] : []))[0]!;

test("a quarter of an ellipse 100 by 50 is 121.106 mm long", () => {
  // Trade handbook, check value 85.
  const around = 4 * 121.106;
  expect(onEllipse(0.25, around, 0.5).at.x).toBeCloseTo(100, 2);
  expect(onEllipse(0, around, 0.5).at.y).toBeCloseTo(50, 2);
});

test("a circle is the ellipse that is as deep as it is wide", () => {
  const { at, out } = onEllipse(1 / 8, 2 * Math.PI * 10, 1);
  expect(at.x).toBeCloseTo(10 * Math.SQRT1_2, 3);
  expect(at.y).toBeCloseTo(10 * Math.SQRT1_2, 3);
  expect(out.x).toBeCloseTo(Math.SQRT1_2, 6);
});

test.each(["lobby-coat-swing", "ushers-vest-swing", "circle-skirt", "stage-cape", "a-line-skirt"])(
  "the hem of %s is as long in its folds as it is cut, to 1 %",
  (file) => {
    const { garment } = workedRecipe(`${file}.chalk`);
    const { rounds } = rigged(garment);
    const cut = rounds[0]!.turns.reduce(
      (sum, { piece }) => sum + pathLength(garment.pieces.get(piece)!.edges.get("hem")!.path),
      0,
    );
    expect(Math.abs(lengthOf(hemLine(below(bodyOf(garment)))) / cut - 1)).toBeLessThan(0.01);
  },
);

test("what is alike on both sides stands alike on both sides", () => {
  const hem = hemLine(below(bodyOf(workedRecipe("lobby-coat-swing.chalk").garment)));
  for (const { x, y } of hem) {
    const nearest = Math.min(...hem.map((p) => Math.hypot(p.x + x, p.y - y)));
    expect(nearest).toBeLessThan(1e-6);
  }
});

test("a straight coat has no folds, and its hem is the ellipse", () => {
  const { garment } = workedRecipe("lobby-coat-straight-again.chalk", {});
  const figure = below(bodyOf(garment));
  expect(figure.folds).toBe(0);
});

test("a stiffer cloth makes fewer folds, and deeper ones", () => {
  const made = [10, 40].map((bendingLength) => {
    const { garment } = workedRecipe("circle-skirt.chalk");
    const fabrics = new Map([...garment.fabrics].map(([name, fabric]) => [name, { ...fabric, bendingLength }]));
    const cuts = [{ piece: "skirt", count: 2, fabric: [...fabrics.keys()][0]!, drawnBy: garment.cuts[0]!.drawnBy }];
    const figure = below(bodyOf({ ...garment, fabrics, cuts }));
    const depths = figure.shapes.flatMap((shape) => (shape.kind === "crest" ? [shape.depth] : []));
    return { folds: figure.folds, depth: Math.max(...depths) };
  });
  expect(made[0]!.folds).toBeGreaterThan(made[1]!.folds);
  expect(made[0]!.depth).toBeLessThan(made[1]!.depth);
});
