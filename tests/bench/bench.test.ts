// Every bench of the kernel runs, and measures what it says; how fast anything is, no test asks.
import { describe, expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { distance } from "../../kernel/geometry/point.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";
import { benches } from "./benches.ts";
import { longRecipe, spoiledRecipe } from "./long-recipe.ts";
import { isMet, ratioOf } from "./row.ts";
import { straightCoat } from "./straight-coat.ts";

describe("what is measured", () => {
  test("the long recipe has as many lines as were asked for, less one panel at most, and nothing wrong with it", () => {
    const text = longRecipe(300);
    const lines = text.split("\n").length - 1;
    expect(lines).toBeLessThanOrEqual(300);
    expect(lines).toBeGreaterThan(300 - 25);
    expect(workedText(text).findings).toEqual([]);
  });

  test("each of its spoiled lines is a finding, and no other line is", () => {
    const { text, spoiled } = spoiledRecipe(300);
    expect(spoiled.length).toBeGreaterThan(20);
    const { tree } = workedText(longRecipe(300));
    expect(tree.text.split("\n").length).toBe(text.split("\n").length);
    const found = workedText(text).diagnostics.filter(({ code }) => code === "bracket-stray");
    expect(found.map(({ where }) => where.line)).toEqual(spoiled);
  });

  test("the coat's own program draws what the recipe draws", () => {
    const { garment } = workedRecipe("blocks/straight-coat.chalk");
    for (const [name, { edges, notches }] of Object.entries(straightCoat())) {
      const piece = garment.pieces.get(name)!;
      for (const [edge, path] of Object.entries(edges))
        expect(pathLength(path), `${name}.${edge}`).toBeCloseTo(pathLength(piece.edges.get(edge)!.path), 9);
      expect(notches.length).toBe(piece.notches.length);
      for (const [index, { point }] of piece.notches.entries())
        expect(distance(notches[index]!, point), `notch of ${name}`).toBeLessThan(1e-9);
    }
  });
});

test("a ratio over its bound is not met, and a row without a bound is no goal", () => {
  const row = { goal: "", ours: 6, floor: { is: "", figure: 4 } };
  expect(ratioOf(row)).toBe(1.5);
  expect(isMet({ ...row, bound: 1.5 })).toBe(true);
  expect(isMet({ ...row, bound: 1.4 })).toBe(false);
  expect(isMet({ goal: "", ours: 9, bound: 8 })).toBe(false);
  expect(isMet(row)).toBeUndefined();
});

// What starts the program waits for a build, and reading 25,000 lines takes a while.
const quick = benches.filter(({ name }) => ["arc-length", "cutting-line", "tiles"].includes(name));

test.each(quick)("one round of $name", async ({ rows }) => {
  for (const row of await rows(1)) {
    expect(row.ours, row.goal).toBeGreaterThan(0);
    if (row.floor) expect(row.floor.figure, row.goal).toBeGreaterThan(0);
  }
});
