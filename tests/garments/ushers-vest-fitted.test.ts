// The long fitted vest: what its block takes up at the waist edge it takes up inside, in double-ended darts.
import { expect, test } from "vitest";
import { distance } from "../../kernel/geometry/point.ts";
import { measuredJson } from "../../kernel/report/measured-json.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { placeOf, workedRecipe } from "../worked-recipe.ts";

const vest = workedRecipe("ushers-vest-fitted.chalk");
const pieceOf = (name: string) => vest.garment.pieces.get(name)!;
const dartOf = (name: string) => pieceOf(name).darts.get("waist-dart")!;

// Trade handbook 3.3, 3: the back's quarter is (W + ease) / 4 - 5, the front's (W + ease) / 4 + 5, with 80 mm of ease here.
test.each([
  ["back", 72, 195],
  ["front", 72, 205],
  ["back", 76, 205],
  ["front", 76, 215],
])("the waist of the %s is sewn to its quarter of %i cm and 8 cm of ease", (piece, girth, quarter) => {
  const measures = new Map([["waist-girth", { kind: "length" as const, value: girth * 10 }]]);
  const { garment } = girth === 72 ? vest : workedRecipe("ushers-vest-fitted.chalk", { measures });
  expect(sewnLengthOf(garment.pieces.get(piece)!, "waist")).toBeCloseTo(quarter, 1);
});

// Trade handbook 3.3, 4: the back's dart stands at XB / 4 and ends level with the underarm, 220 down; it ends 30 mm above the hem,
// which lies 150 below the waist at 410. XB is 350.
test("the back's dart runs from the underarm level to 3 cm above the hem", () => {
  const { tip, lower } = dartOf("back");
  expect([tip.x, tip.y]).toEqual([expect.closeTo(87.5, 6), expect.closeTo(220, 6)]);
  expect([lower!.x, lower!.y]).toEqual([expect.closeTo(87.5, 6), expect.closeTo(410 + 150 - 30, 6)]);
});

// 20 to 30 mm short of the bust point: trade handbook 4.9.
test("the front's dart points to the bust point and ends 25 mm short of it", () => {
  const bust = placeOf(vest, "front", "bust-point");
  expect(dartOf("front").tip.x).toBeCloseTo(bust.x, 6);
  expect(distance(dartOf("front").tip, bust)).toBeCloseTo(25, 6);
});

test("the measured report has both halves of a dart", () => {
  const { pieces } = measuredJson(vest) as unknown as {
    pieces: { darts: { name: string; width: number; legs: number[]; lower?: { tip: number[]; legs: number[] } }[] }[];
  };
  const [dart] = pieces[0]!.darts;
  // Straight down on the middle of a level width: Pythagoras over 190 above and 120 below.
  expect(dart!.legs[0]).toBeCloseTo(Math.hypot(190, dart!.width / 2), 6);
  expect(dart!.lower!.legs[1]).toBeCloseTo(Math.hypot(120, dart!.width / 2), 6);
  expect(dart!.lower!.tip).toEqual([expect.closeTo(87.5, 6), expect.closeTo(530, 6)]);
});
