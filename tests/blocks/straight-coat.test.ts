// The coat block against the handbook's worked example for its reference figure R88 (trade handbook 3.2, check values
// 52 to 55), and against its grade (8.2, check values 72 and 73).
import { describe, expect, test } from "vitest";
import { lengthOf, placeOf, workedRecipe } from "../worked-recipe.ts";

const block = workedRecipe("blocks/straight-coat.chalk");

describe("the coat block of R88", () => {
  // Check value 52.
  test.each([
    ["back", "neck-point", 74.0, -24.7],
    ["front", "neck-point", 74.0, -24.7],
    ["back", "shoulder-tip", 205.2, 18.0],
    ["front", "shoulder-tip", 202.0, 27.0],
    // Worked example of 3.2: q, U and the two middle points of the armscye.
    ["back", "underarm", 270.0, 245.0],
    ["back", "across", 190.0, 131.5],
    ["front", "across", 175.0, 136.0],
  ])("has the %s's %s where the handbook has it", (piece, place, x, y) => {
    const point = placeOf(block, piece, place);
    expect(Math.abs(point.x - x)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(point.y - y)).toBeLessThanOrEqual(0.1);
  });

  test("has the necklines of check value 53", () => {
    // The back neck goes 15 mm past the center, for the seam allowance drawn in; the front 20 mm, for the wrap.
    expect(Math.abs(lengthOf(block, "back", "neck") - 15 - 81.84)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lengthOf(block, "front", "neck") - 20 - 119.63)).toBeLessThanOrEqual(0.05);
  });

  test("has the armscyes of check value 54", () => {
    expect(Math.abs(lengthOf(block, "back", "armscye") - 268.15)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lengthOf(block, "front", "armscye") - 273.4)).toBeLessThanOrEqual(0.05);
  });

  test("has its front neck point 59.33 mm under the nape, between 2 and 3 in (check value 55)", () => {
    const depth = placeOf(block, "front", "front-neck").y - placeOf(block, "back", "nape").y;
    expect(Math.abs(depth - 59.33)).toBeLessThanOrEqual(0.05);
    expect(depth).toBeGreaterThan(50.8);
    expect(depth).toBeLessThan(76.2);
  });

  test("has shoulders of 138 mm, the same in front and back (worked example of 3.2)", () => {
    expect(lengthOf(block, "back", "shoulder")).toBeCloseTo(138, 6);
    expect(lengthOf(block, "front", "shoulder")).toBeCloseTo(138, 6);
  });

  test("has a cap that is the armscye and its ease, within what solve promises", () => {
    const armscye = lengthOf(block, "back", "armscye") + lengthOf(block, "front", "armscye");
    expect(Math.abs(lengthOf(block, "sleeve", "cap") - armscye - 25)).toBeLessThanOrEqual(0.001);
  });

  test("has sleeve seams of one length, for the wrist is centered under the cap (trade handbook 3.4, step 5)", () => {
    expect(lengthOf(block, "sleeve", "under-back")).toBeCloseTo(lengthOf(block, "sleeve", "under-front"), 6);
  });
});

describe("the coat block graded from bust 88 to 92", () => {
  const larger = workedRecipe("blocks/straight-coat.chalk", { size: "B92" });
  const grown = (piece: string, edge: string): number => lengthOf(larger, piece, edge) - lengthOf(block, piece, edge);

  // Check value 72: the moves of neck point and back tip.
  test.each([
    ["neck-point", 2.0, -0.67],
    ["shoulder-tip", 3.9, -0.05],
    ["underarm", 10.0, 5.0],
  ])("moves the back's %s as the handbook says", (place, x, y) => {
    const [before, after] = [placeOf(block, "back", place), placeOf(larger, "back", place)];
    expect(Math.abs(after.x - before.x - x)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(after.y - before.y - y)).toBeLessThanOrEqual(0.02);
  });

  test("grows the armscye by 16.01 and the neckline by 10.47 (check value 73; the neckline is twice the half)", () => {
    expect(Math.abs(grown("back", "armscye") + grown("front", "armscye") - 16.01)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(2 * (grown("back", "neck") + grown("front", "neck")) - 10.47)).toBeLessThanOrEqual(0.05);
  });
});

// Bodies as a survey has them, rounded: a strong arm, and a broad shoulder over a narrow chest. The scye measured on them
// would be too shallow for the arm, so the armhole is cut lower (trade handbook 1.4, rule 5, and 3.4, step 4).
test.each([
  [
    "a strong arm",
    { "upper-arm-girth": 430, "bust-girth": 1060, "scye-depth": 180, "across-back-width": 440 },
    0.62 * 430,
  ],
  ["a shallow scye", { "bust-girth": 1000, "scye-depth": 150 }, 0.19 * 1000 + 20],
])("%s: the armhole lies as low as the arm wants, and the sleeve still goes in", (_, body, level) => {
  const measures = new Map(Object.entries(body).map(([name, value]) => [name, { kind: "length" as const, value }]));
  const drafted = workedRecipe("blocks/straight-coat.chalk", { measures });
  expect(drafted.findings).toEqual([]);
  expect(placeOf(drafted, "back", "underarm").y).toBeCloseTo(level + 40, 6);
});

test("a broad shoulder over a narrow chest: the armhole is lower than the scye and its drop, and clean", () => {
  const measures = new Map(
    Object.entries({ "bust-girth": 800, "shoulder-length": 175, "scye-depth": 150, "across-back-width": 380 }).map(
      ([name, value]) => [name, { kind: "length" as const, value }],
    ),
  );
  const drafted = workedRecipe("blocks/straight-coat.chalk", { measures });
  expect(drafted.findings).toEqual([]);
  expect(placeOf(drafted, "back", "underarm").y).toBeGreaterThan(0.19 * 800 + 20 + 40);
});
