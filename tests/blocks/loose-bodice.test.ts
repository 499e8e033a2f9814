// The loose bodice block against the handbook's loose block, drafted with the same amounts (trade handbook 3.2).
import { describe, expect, test } from "vitest";
import { endDirection, startDirection } from "../../kernel/geometry/path.ts";
import { dot } from "../../kernel/geometry/point.ts";
import { lengthOf, placeOf, workedRecipe, workedText } from "../worked-recipe.ts";

const asCoat = workedText(`chalkline 1
units mm
use "blocks/loose-bodice.chalk" as loose { bust-ease = 200 mm, drop = 40 mm, reach = 15 mm }
piece back = loose.back { }
piece front = loose.front { }
`);

describe("drafted with the amounts of the coat block, for R88", () => {
  // Check value 52, and q, U of the worked example.
  test.each([
    ["back", "neck-point", 74.0, -24.7],
    ["front", "neck-point", 74.0, -24.7],
    ["back", "shoulder-tip", 205.2, 18.0],
    ["front", "shoulder-tip", 202.0, 27.0],
    ["back", "underarm", 270.0, 245.0],
    ["front", "underarm", 270.0, 245.0],
  ])("it has the %s's %s where the handbook has it", (piece, place, x, y) => {
    const point = placeOf(asCoat, piece, place);
    expect(Math.abs(point.x - x)).toBeLessThanOrEqual(0.1);
    expect(Math.abs(point.y - y)).toBeLessThanOrEqual(0.1);
  });
  test("it has the necklines of check value 53", () => {
    expect(Math.abs(lengthOf(asCoat, "back", "neck") - 81.84)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lengthOf(asCoat, "front", "neck") - 119.63)).toBeLessThanOrEqual(0.05);
  });
  test("its front neck lies 59.33 below the nape (check value 55)", () => {
    const depth = placeOf(asCoat, "front", "front-neck").y - placeOf(asCoat, "back", "nape").y;
    expect(Math.abs(depth - 59.33)).toBeLessThanOrEqual(0.05);
  });
});

test("its corners are square where two pieces, or two halves, meet", () => {
  const outcome = workedRecipe("blocks/loose-bodice.chalk");
  expect(outcome.findings).toEqual([]);
  for (const half of ["back", "front"]) {
    const { edges } = outcome.garment.pieces.get(half)!;
    const path = (edge: string) => edges.get(edge)!.path;
    expect(Math.abs(dot(endDirection(path("neck")), startDirection(path("shoulder"))))).toBeLessThan(1e-9);
    expect(Math.abs(dot(startDirection(path("neck")), startDirection(path("center"))))).toBeLessThan(1e-9);
    expect(Math.abs(dot(startDirection(path("hem")), startDirection(path("center"))))).toBeLessThan(1e-9);
  }
});

test("back and front have shoulders and sides of one length", () => {
  const outcome = workedRecipe("blocks/loose-bodice.chalk");
  for (const edge of ["shoulder", "side"])
    expect(lengthOf(outcome, "back", edge)).toBeCloseTo(lengthOf(outcome, "front", edge), 9);
});
