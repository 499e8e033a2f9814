import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { outerPolygon, rimOf } from "../../kernel/cloth/lay/outer-polygon.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { signedAreaOf } from "../../kernel/packing/strip.ts";
import { bentLineOf, unitedByClipper } from "../cloth/clipper-judge.ts";
import { workedRecipe } from "../worked-recipe.ts";
import "../seeded.ts";

/** By how much area one bent line goes beyond another, by Clipper2 in WebAssembly: what both hold less what the other holds. */
const beyond = (inner: readonly Point[], outer: readonly Point[]): number =>
  Math.abs(signedAreaOf(unitedByClipper([forward(inner), forward(outer)]))) - Math.abs(signedAreaOf(outer));

const forward = (line: readonly Point[]): readonly Point[] => (signedAreaOf(line) < 0 ? [...line].reverse() : line);

describe("the rim of a piece", () => {
  test("holds all of every piece of a coat, and little more", () => {
    const { pieces } = workedRecipe("lobby-coat-collar.chalk").garment;
    for (const piece of pieces.values()) {
      const cutting = cuttingLine(piece)!.path;
      const rim = rimOf([cutting]);
      const fine = bentLineOf(cutting);
      expect(beyond(fine, rim)).toBeLessThan(1e-3);
      // Some thousandths of a mm all round.
      expect(signedAreaOf(rim) - Math.abs(signedAreaOf(fine))).toBeLessThan(0.02 * 6000);
      for (const within of [4, 1, 0.5]) {
        const polygon = outerPolygon(rim, within);
        expect(beyond(fine, polygon)).toBeLessThan(1e-3);
        expect(polygon.length).toBeLessThan(rim.length / 2);
      }
    }
  });

  test("of a circle of 100 has its area within a thousandth, and fewer corners the less it must keep to it", () => {
    const circle = arcSpans({ x: 0, y: 0 }, { x: 100, y: 0 }, 2 * Math.PI);
    const rim = rimOf([circle]);
    const area = Math.PI * 100 ** 2;
    expect(signedAreaOf(rim)).toBeGreaterThan(area);
    expect(signedAreaOf(rim)).toBeLessThan(area * 1.001);
    const corners = [0.1, 0.5, 2, 8].map((within) => outerPolygon(rim, within).length);
    expect([...corners].sort((a, b) => b - a)).toEqual(corners);
    // A polygon round a circle of 100 that stands out by 8 at its corners has at least 8: 100 (1 / cos(180 / 8) - 1) = 8.2.
    expect(corners[3]).toBeGreaterThanOrEqual(8);
  });

  test("two halves that meet along a line are one, and what lies inside is filled", () => {
    const half = (left: number, right: number) =>
      through([
        { x: left, y: 0 },
        { x: right, y: 0 },
        { x: right, y: 50 },
        { x: left, y: 50 },
        { x: left, y: 0 },
      ]);
    const rim = rimOf([half(0, 30), half(30, 60)]);
    expect(signedAreaOf(rim)).toBeCloseTo(60 * 50, -1);
    expect(outerPolygon(rim, 0.1)).toHaveLength(4);
  });
});

describe("an outer polygon", () => {
  test("holds any star that it is made of", () => {
    const star = fc
      .array(fc.double({ min: 20, max: 100, noNaN: true }), { minLength: 5, maxLength: 40 })
      .map((radii): Point[] =>
        radii.map((radius, i) => {
          const angle = (2 * Math.PI * i) / radii.length;
          return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
        }),
      );
    fc.assert(
      fc.property(star, fc.constantFrom(0.5, 2, 8), (ring, within) => {
        const polygon = outerPolygon(ring, within);
        expect(beyond(ring, polygon)).toBeLessThan(1e-3);
        expect(polygon.length).toBeLessThanOrEqual(ring.length);
      }),
      { numRuns: 60 },
    );
  });
});
