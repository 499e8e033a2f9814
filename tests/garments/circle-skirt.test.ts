// The circle skirt against its exact formulas (trade handbook 3.7, check values 1, 6 and 14; seam allowances of 7.6).
import { expect, test } from "vitest";
import { signedArea } from "../../kernel/geometry/area.ts";
import { boundary } from "../../kernel/outline.ts";
import { length } from "../../kernel/value.ts";
import { lengthOf, placeOf, workedRecipe } from "../worked-recipe.ts";

const skirt = workedRecipe("circle-skirt.chalk");

test("waist 700 has its waist on a radius of 111.4085 mm (check value 1)", () => {
  expect(Math.abs(placeOf(skirt, "skirt", "waist-side").x - 111.4085)).toBeLessThanOrEqual(0.01);
});

test("its hem, length 650, measures 4784.07 mm (check value 6)", () => {
  // The piece is a quarter; arcs are drawn as cubics of at most 11.25 deg.
  expect(Math.abs(4 * lengthOf(skirt, "skirt", "hem") - 4784.07)).toBeLessThanOrEqual(0.05);
});

test("its cloth is 1.7823 square metres (check value 14)", () => {
  const quarter = Math.abs(signedArea(boundary(skirt.garment.pieces.get("skirt")!)!));
  expect(Math.abs((4 * quarter) / 1e6 - 1.7823)).toBeLessThanOrEqual(0.0005);
});

test("40 mm more of waist is 6.366 mm more of radius (check value 13)", () => {
  const larger = workedRecipe("circle-skirt.chalk", { measures: new Map([["waist-girth", length(740)]]) });
  const grown = placeOf(larger, "skirt", "waist-side").x - placeOf(skirt, "skirt", "waist-side").x;
  expect(Math.abs(grown - 6.366)).toBeLessThanOrEqual(0.001);
});
