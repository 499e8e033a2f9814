// The circle skirt against its exact formulas (trade handbook 3.7, check values 1, 6 and 14; seam allowances of 7.6).
import { expect, test } from "vitest";
import { signedArea } from "../../kernel/geometry/area.ts";
import { startOf } from "../../kernel/geometry/path.ts";
import { distance } from "../../kernel/geometry/point.ts";
import { boundary } from "../../kernel/outline.ts";
import { length } from "../../kernel/value.ts";
import { lengthOf, placeOf, workedRecipe, workedText } from "../worked-recipe.ts";

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

// Check value 8: a public page's radii for a waist of 68 cm, rounded there to 10.8, 21.6 and 43.3 cm.
test.each([
  ["a full circle", "circle-skirt.chalk", "", 10.82],
  ["a half circle", "half-circle-skirt.chalk", "share = 0.5", 21.65],
  ["a quarter of a circle", "half-circle-skirt.chalk", "share = 0.25", 43.29],
])("a waist of 68 cm has in %s the radius of check value 8", (_, file, set, centimetres) => {
  const { garment } = workedText(
    `chalkline 1
use "${file}" as drafted { ${set} }
piece skirt = drafted.skirt { }
`,
    { measures: new Map([["waist-girth", length(680)]]) },
  );
  const { places } = garment.pieces.get("skirt")!;
  const { edges } = garment.pieces.get("skirt")!;
  const radius = distance(places.get("middle-point")!.point, startOf(edges.get("waist")!.path));
  expect(Math.abs(radius / 10 - centimetres)).toBeLessThanOrEqual(0.1);
});

test("two full circles for a waist of 700 have it on a radius of 55.7042 (check value 5)", () => {
  // Trade handbook 3.7: the hem is the waist and 2 pi f L, with f = 2 and L = 650: 8868.14.
  const { garment } = workedText(
    "chalkline 1\nunits mm\ngore quarter = 700 mm hem 8868.14 mm deep 650 mm in 8 seams 0 turned-up 0\n",
  );
  const quarter = garment.pieces.get("quarter")!;
  expect(Math.abs(quarter.edges.get("top")!.path[0]!.pivot!.y)).toBeCloseTo(55.7042, 2);
});

test("a waist too large for a half circle of this cloth makes four quarters with seams at the center", () => {
  const large = workedRecipe("circle-skirt.chalk", { measures: new Map([["waist-girth", length(1000)]]) });
  // The half circle would be 2 (1000 / (2 pi) + 650) = 1618 wide, and the cloth is 1600.
  expect(large.findings).toEqual([]);
  expect(large.garment.cuts.find(({ piece }) => piece === "skirt")).toMatchObject({ count: 4 });
  expect(skirt.garment.cuts.find(({ piece }) => piece === "skirt")).toMatchObject({ count: 2 });
});
