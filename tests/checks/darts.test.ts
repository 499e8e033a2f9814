// What is judged of darts: their legs, where they end by the bust point, and that they lie on the cloth.
import { describe, expect, test } from "vitest";
import { dartInside } from "../../kernel/checks/dart-inside.ts";
import { dartLegs } from "../../kernel/checks/dart-legs.ts";
import { dartNearApex } from "../../kernel/checks/dart-near-apex.ts";
import { straight } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Dart, Piece } from "../../kernel/working.ts";
import { at, atLine, garment, judgementsOf, madePiece, verdictsOf } from "./made-garment.ts";

const dart = (name: string, first: Point, second: Point, tip: Point, line = 30): [string, Dart] => [
  name,
  { name, edge: "waist", first, second, tip, drawnBy: atLine(line) },
];

/** A square of 400 with its waist on top, and a bust point in its middle. */
const bodice = (darts: readonly [string, Dart][], more: Partial<Piece> = {}): Piece =>
  madePiece(
    "front",
    [
      ["waist", straight(at(0, 0), at(400, 0))],
      ["side", straight(at(400, 0), at(400, 400))],
      ["top", straight(at(400, 400), at(0, 400))],
      ["center", straight(at(0, 400), at(0, 0))],
    ],
    {
      darts: new Map(darts),
      places: new Map([["bust-point", { name: "bust-point", point: at(200, 200), drawnBy: atLine(5) }]]),
      ...more,
    },
  );

describe("dart-legs", () => {
  // Source of the 0.5 mm: trade handbook 5.1.
  test.each([
    [0, "pass"],
    [0.5, "pass"],
    [0.51, "warning"],
    [-3, "warning"],
  ])("a first leg %f longer: %s", (longer, verdict) => {
    const tip = at(200, 150);
    const piece = bodice([dart("bust", at(200, -longer), at(350, 150), tip)]);
    expect(judgementsOf(dartLegs, garment([piece]))).toMatchObject([
      { on: "front.bust", verdict, wanted: 0, where: { line: 30 } },
    ]);
    expect(judgementsOf(dartLegs, garment([piece]))[0]!.found).toBeCloseTo(Math.abs(longer), 6);
  });
  test("a piece with a failed line is not judged", () => {
    const piece = bodice([dart("bust", at(180, 0), at(230, 0), at(200, 150))], { doubtful: true });
    expect(judgementsOf(dartLegs, garment([piece]))).toEqual([]);
  });
});

describe("dart-near-apex", () => {
  const ending = (y: number, x = 200): Piece => bodice([dart("bust", at(x - 15, 0), at(x + 15, 0), at(x, y))]);
  // Source of the 20 mm: trade handbook 4.9, common practice.
  test.each([
    [200, "warning"],
    [181, "warning"],
    [180, "pass"],
    [170, "pass"],
  ])("a waist dart that ends at %f, the bust point at 200: %s", (y, verdict) => {
    expect(judgementsOf(dartNearApex, garment([ending(y)])).map((each) => each.verdict)).toEqual([verdict]);
  });
  test("says how far to take it back, to 25 mm short", () => {
    expect(judgementsOf(dartNearApex, garment([ending(190)]))[0]).toMatchObject({
      found: 10,
      wanted: 20,
      message: "The dart bust of front ends 10 mm short of the bust point.",
      hint: "Take its tip back with `shorten-dart bust by 15 mm`.",
    });
  });
  test.each([
    ["far from it", ending(100)],
    ["beside it", ending(195, 230)],
    ["away from it", bodice([dart("bust", at(185, 400), at(215, 400), at(200, 100))])],
  ])("a dart that ends %s has nothing to do with it", (_, piece) => {
    expect(judgementsOf(dartNearApex, garment([piece]))).toEqual([]);
  });
  test("without a place of that name nothing is judged", () => {
    const piece = { ...ending(200), places: new Map() };
    expect(judgementsOf(dartNearApex, garment([piece]))).toEqual([]);
  });
});

describe("dart-inside", () => {
  test("side by side, and split from one tip: both have their place", () => {
    const piece = bodice([
      dart("one", at(80, 0), at(100, 0), at(120, 150)),
      dart("two", at(140, 0), at(160, 0), at(120, 150)),
      dart("three", at(300, 0), at(320, 0), at(310, 100)),
    ]);
    expect(verdictsOf(dartInside, garment([piece]))).toEqual([
      "front.one: pass",
      "front.two: pass",
      "front.three: pass",
    ]);
  });
  test("of two that cross the later one is told, with the other", () => {
    const piece = bodice([
      dart("one", at(80, 0), at(100, 0), at(160, 150)),
      dart("two", at(140, 0), at(160, 0), at(60, 150), 31),
    ]);
    expect(judgementsOf(dartInside, garment([piece]))).toMatchObject([
      { on: "front.one", verdict: "pass" },
      { on: "front.two", verdict: "error", found: "crossed", where: { line: 31 }, related: [{ where: { line: 30 } }] },
    ]);
  });
  test("a tip beyond the outline, or a leg that leaves it", () => {
    const out = bodice([dart("one", at(80, 0), at(100, 0), at(90, 410))]);
    expect(verdictsOf(dartInside, garment([out]))).toEqual(["front.one: error"]);
    const back = bodice([dart("one", at(80, 0), at(100, 0), at(90, -20))]);
    expect(verdictsOf(dartInside, garment([back]))).toEqual(["front.one: error"]);
  });
});

const atelier = kernel(vocabulary);
test.each([dartLegs, dartNearApex, dartInside])("the recipes of $name pass and fail", ({ name, passes, fails }) => {
  const found = (text: string): string[] => atelier.work({ file: "test.chalk", text }).findings.map(({ code }) => code);
  expect(found(passes)).toEqual([]);
  expect(found(fails)).toEqual([name]);
});
