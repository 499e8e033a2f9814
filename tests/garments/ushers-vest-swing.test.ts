// The vest: one slash of 18 cm in each of two half fronts and two half backs.
import { expect, test } from "vitest";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { timesInGarment } from "../../kernel/record.ts";
import { lengthOf, workedRecipe } from "../worked-recipe.ts";

const vest = workedRecipe("ushers-vest-swing.chalk");

test("four openings of 18 cm are 72 cm more around the whole hem (plain sums; trade handbook 4.7)", () => {
  const spreads = vest.records.filter(({ step }) => step === "spread-from");
  const more = spreads.map(({ piece, changed: [change] }) => {
    const [was, is] = [change!.before!, change!.after].map((each) => pathLength(each.edges.get("hem")!.path));
    return (is! - was!) * timesInGarment(piece, vest.garment);
  });
  expect(spreads.map(({ piece }) => piece)).toEqual(["back", "front"]);
  expect(more.reduce((sum, each) => sum + each, 0)).toBeCloseTo(720, 6);
});

test("its shoulders are what the block's are less what was narrowed, and still match", () => {
  for (const piece of ["back", "front"]) {
    // 138 mm less 40 mm; trueing a corner of 13.7 deg takes a little more (trade handbook 4.3).
    expect(Math.abs(lengthOf(vest, piece, "shoulder") - 98)).toBeLessThanOrEqual(0.5);
  }
  expect(Math.abs(lengthOf(vest, "back", "shoulder") - lengthOf(vest, "front", "shoulder"))).toBeLessThanOrEqual(0.05);
});

test("its armholes bend one way only, as a fair armhole does (trade handbook 5.3)", () => {
  for (const piece of ["back", "front"]) {
    const { path } = vest.garment.pieces.get(piece)!.edges.get("armhole")!;
    const bends = path.map((span) => {
      if (span.kind !== "cubic") throw new Error("the armhole is a curve");
      const [a, b, c, d] = [span.start, span.startHandle, span.endHandle, span.end];
      return [
        (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x),
        (c.x - b.x) * (d.y - c.y) - (c.y - b.y) * (d.x - c.x),
      ].map(Math.sign);
    });
    expect(new Set(bends.flat()).size).toBe(1);
  }
});
