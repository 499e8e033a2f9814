// How long the cloth of one fold is, and how slack becomes folds.
import { expect, test } from "vitest";
import { stiffnessOf } from "../../kernel/cloth/hang/fabric-stiffness.ts";
import { foldsOf, wavelengthOf } from "../../kernel/cloth/hang/folds.ts";
import { slackAlong } from "../../kernel/cloth/hang/slack.ts";
import { workedRecipe } from "../worked-recipe.ts";

test.each([
  // Trade handbook, the hang preview: at a length of 1 m; its figures lie 0.75 % under its own formula, all four alike.
  [10, 178],
  [20, 300],
  [30, 406],
  [40, 504],
])("a bending length of %d mm makes folds of some %d mm", (bendingLength, expected) => {
  expect(Math.abs(wavelengthOf(bendingLength, 1000) / expected - 1)).toBeLessThan(0.01);
});

test("600 mm of cloth on 360 mm folds in two, each with legs of 150 mm over 90 mm", () => {
  const places = Array.from({ length: 7 }, (_, index) => ({
    flat: { x: index * 100, y: 0 },
    hung: { x: index * 60, y: 0 },
  }));
  // Legs of 150 on half widths of 90: 150, 90, 120 is a right triangle.
  const { count, depth } = foldsOf(slackAlong(places), 300);
  expect(count).toBe(2);
  expect(depth).toBeCloseTo(120, 6);
});

test("what is not slack does not fold", () => {
  const places = [0, 100, 200].map((x) => ({ flat: { x, y: 0 }, hung: { x, y: 0 } }));
  expect(foldsOf(slackAlong(places), 300).count).toBe(0);
});

test.each([
  // Trade handbook 7.2, from memory: gabardine 18 to 24 mm, wool crêpe 14 to 19, canvas 35 to 60.
  ["gabardine, navy", undefined, 21, "name"],
  ["Wool Crêpe", undefined, 16.5, "name"],
  ["stage canvas", undefined, 47.5, "name"],
  ["gabardine", 30, 30, "recipe"],
  ["curtain of the old house", undefined, 20, "nothing"],
] as const)(
  "a cloth called %s with a stated bending length of %s mm is taken as %d mm",
  (title, stated, wanted, from) => {
    const { cuts, fabrics, ...garment } = workedRecipe("lobby-coat-swing.chalk").garment;
    const { bendingLength: _, ...shell } = fabrics.get("shell")!;
    const fabric = { ...shell, title, ...(stated !== undefined && { bendingLength: stated }) };
    const given = { ...garment, cuts, fabrics: new Map([["shell", fabric]]) };
    expect(stiffnessOf("back", given)).toEqual({ bendingLength: wanted, from });
  },
);
