// The fitted bodice against the handbook's worked example for its reference figure R88 (trade handbook 3.3, check values
// 58 to 63).
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { dartMeasures } from "../../kernel/dart-measures.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { toDegrees } from "../../kernel/geometry/trig.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { cornersOf } from "../../kernel/outline.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { chalkline, lengthOf, placeOf, recipeSources, workedRecipe } from "../worked-recipe.ts";

const block = workedRecipe("blocks/fitted-bodice.chalk");

const text = readFileSync(new URL("../../recipes/blocks/fitted-bodice.chalk", import.meta.url), "utf8");
const work = (recipe: string): Outcome =>
  chalkline.work({ file: "blocks/fitted-bodice.chalk", text: recipe }, { sources: recipeSources });
/** The recipe up to a line of the front, the block of the piece closed again. */
const upTo = (line: string): Outcome => {
  const at = text.indexOf(`\n${line}`, text.indexOf("piece front"));
  expect(at).toBeGreaterThan(0);
  return work(`${text.slice(0, at)}\n}\n`);
};
const drafted = upTo("  # drafted beside the bust point");
const withDart = (line: string): Outcome => {
  const at = text.indexOf("\n  if place > ");
  return work(`${text.slice(0, at)}\n${line}\n}\n`);
};

const isAt = (point: Point, x: number, y: number, within: number): void => {
  expect(Math.abs(point.x - x)).toBeLessThanOrEqual(within);
  expect(Math.abs(point.y - y)).toBeLessThanOrEqual(within);
};
const dartOf = (outcome: Outcome, piece: string, name: string) => outcome.garment.pieces.get(piece)!.darts.get(name)!;
const sewn = (outcome: Outcome, piece: string, edge: string): number =>
  sewnLengthOf(outcome.garment.pieces.get(piece)!, edge);

describe("the fitted bodice of R88", () => {
  test("comes out clean", () => {
    expect(block.findings).toEqual([]);
  });

  test("has armscyes of 228.04 and 236.84, 464.88 together (check value 58)", () => {
    expect(Math.abs(lengthOf(block, "back", "armscye") - 228.04)).toBeLessThanOrEqual(0.05);
    expect(Math.abs(lengthOf(block, "front", "armscye") - 236.84)).toBeLessThanOrEqual(0.05);
  });

  test("has a neckline of 369.08 (check value 59)", () => {
    const half = lengthOf(block, "back", "neck") + lengthOf(block, "front", "neck");
    expect(Math.abs(2 * half - 369.08)).toBeLessThanOrEqual(0.05);
  });

  test.each([
    ["back", "neck-point", 69, -23],
    ["back", "shoulder-tip", 193.6, 17.5],
    ["front", "shoulder-tip", 183, 23.1],
    ["front", "front-neck", 0, 51],
    ["back", "underarm", 235, 220],
    ["front", "underarm", 245, 220],
    ["back", "across", 180, 118.7],
    ["front", "across", 170, 121.5],
  ])("has the %s's %s where the handbook has it (worked example)", (piece, name, x, y) => {
    isAt(placeOf(block, piece, name), x, y, 0.1);
  });

  test("has its bust point at (92.50, 240.96) (check value 60)", () => {
    isAt(placeOf(block, "front", "bust-point"), 92.5, 240.96, 0.02);
  });

  test("has its bust dart drafted at the side, 10.0862 deg at the bust point (check value 61)", () => {
    const before = withDart("");
    const bust = dartOf(before, "front", "bust");
    expect(Math.abs(toDegrees(dartMeasures(bust).angle) - 10.0862)).toBeLessThanOrEqual(0.001);
    isAt(bust.first, 245.48, 227.46, 0.02);
    isAt(bust.second, 245.48, 254.46, 0.02);
    expect(Math.abs(dartMeasures(bust).legs[0] - 153.57)).toBeLessThanOrEqual(0.02);
    isAt(placeOf(before, "front", "side-waist"), 225, 436.89, 0.02);
  });

  // Check value 62: what the dart is wide wherever it is moved to.
  test.each([
    ["  move-dart bust to dart-lower toward side-waist 6 cm - above", 28.33, "side"],
    ["  move-dart bust to shoulder at 50%", 42.76, "shoulder"],
    ["  move-dart bust to meet(waistline, bust-point--bust-point down 30 cm)", 34.47, "waistline"],
  ])("%s: it is %f wide on the %s", (line, width, edge) => {
    const moved = withDart(line.replace("bust-point--bust-point down 30 cm", "bust-point--(x(bust-point), 60 cm)"));
    const bust = dartOf(moved, "front", "bust");
    expect(bust.edge).toBe(edge);
    expect(Math.abs(dartMeasures(bust).width - width)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(toDegrees(dartMeasures(bust).angle) - 10.0862)).toBeLessThanOrEqual(0.001);
    expect(Math.abs(sewn(moved, "front", "side") - 191.05)).toBeLessThanOrEqual(0.01);
  });

  test("has its dart 60 below the underarm, and its tip 25 short of the bust point (worked example)", () => {
    const moved = withDart("  move-dart bust to dart-lower toward side-waist 6 cm - above");
    isAt(dartOf(moved, "front", "bust").first, 248.85, 279.88, 0.02);
    isAt(dartOf(moved, "front", "bust").second, 239.62, 306.66, 0.02);
    expect(Math.abs(dartMeasures(dartOf(moved, "front", "bust")).legs[0] - 161.12)).toBeLessThanOrEqual(0.02);
    const short = withDart(
      "  move-dart bust to dart-lower toward side-waist 6 cm - above\n  shorten-dart bust by 2.5 cm",
    );
    const bust = dartOf(short, "front", "bust");
    isAt(bust.tip, 116.13, 249.1, 0.02);
    expect(Math.abs(dartMeasures(bust).legs[0] - 136.24)).toBeLessThanOrEqual(0.02);
    expect(Math.abs(toDegrees(dartMeasures(bust).angle) - 11.935)).toBeLessThanOrEqual(0.002);
  });

  test("has side seams of 191.05, as sewn (check value 63)", () => {
    expect(Math.abs(sewn(block, "back", "side") - 191.05)).toBeLessThanOrEqual(0.01);
    expect(Math.abs(sewn(withDart(""), "front", "side") - 191.05)).toBeLessThanOrEqual(0.01);
    // Trueing the seam over its dart, taken back by 25, costs a hundredth of a millimetre.
    expect(Math.abs(sewn(block, "front", "side") - 191.05)).toBeLessThanOrEqual(0.02);
  });

  test("goes round the underarm at 177.67 deg (worked example)", () => {
    const angle = (piece: string): number =>
      toDegrees(
        cornersOf(drafted.garment.pieces.get(piece)!).find(
          ({ before, after }) => before.edge.name === "armscye" && after.edge.name === "side",
        )!.interior,
      );
    expect(Math.abs(angle("back") + angle("front") - 177.67)).toBeLessThanOrEqual(0.01);
  });

  test("has a waist of 380 on each half, less what trueing takes (worked example)", () => {
    const half = sewn(block, "back", "waistline") + sewn(block, "front", "waistline");
    expect(Math.abs(half - 380)).toBeLessThanOrEqual(0.5);
  });
});

// Both have to work for every body: one whose bust point lies higher or lower than the dart's place, and one without a waist.
test.each([
  ["dart-place    = 6 cm", "dart-place    = 12 cm"],
  ["side-neck-point-to-bust-point      = 26.5 cm", "side-neck-point-to-bust-point      = 33 cm"],
  ["side-neck-point-to-bust-point      = 26.5 cm", "side-neck-point-to-bust-point      = 24 cm"],
  ["waist-girth                        = 72 cm", "waist-girth                        = 88 cm"],
])("%s, but %s: clean", (was, is) => {
  expect(text).toContain(was);
  expect(work(text.replace(was, is)).findings.map(({ message }) => message)).toEqual([]);
});

// Trade handbook 3.1, step 3: what is too much for one dart is shared by two.
test("a bust of 116 cm over a waist of 83 cm has two waist darts in each quarter, and is clean", () => {
  const measures = new Map(
    Object.entries({ "bust-girth": 1160, "waist-girth": 830 }).map(([name, value]) => [
      name,
      { kind: "length" as const, value },
    ]),
  );
  const drafted = workedRecipe("blocks/fitted-bodice.chalk", { measures });
  expect(drafted.findings).toEqual([]);
  for (const piece of ["back", "front"]) {
    const { darts } = drafted.garment.pieces.get(piece)!;
    expect([...darts.keys()].filter((name) => name !== "bust")).toEqual(["inner", "outer"]);
    // (1160 + 80 - 830 - 40) / 4 = 92.5, a quarter of it in the side seam.
    const widths = ["inner", "outer"].map((name) => dartMeasures(darts.get(name)!).width);
    expect(Math.abs(widths[0]! + widths[1]! - 92.5 * 0.75)).toBeLessThan(5);
  }
});
