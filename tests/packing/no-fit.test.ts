import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../kernel/geometry/point.ts";
import { convexParts } from "../../kernel/packing/convex-parts.ts";
import { depthIn, eachSide, exchanged, noFit } from "../../kernel/packing/no-fit.ts";
import { signedAreaOf } from "../../kernel/packing/strip.ts";
import { problems } from "./records.ts";
import { judged } from "./second-judge.ts";
import "../seeded.ts";

const forward = (outline: readonly Point[]): readonly Point[] =>
  signedAreaOf(outline) < 0 ? [...outline].reverse() : outline;

const outlines = problems().flatMap(({ strip }) => strip.shapes.map(({ outline }) => forward(outline)));

/** A star-shaped outline round the origin: any distances from it, in order of angle. */
const star = fc
  .array(fc.double({ min: 1, max: 10, noNaN: true }), { minLength: 3, maxLength: 14 })
  .map((radii): Point[] =>
    radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) };
    }),
  );

const isConvex = (ring: readonly Point[]): boolean =>
  ring.every((a, i) => {
    const [b, c] = [ring[(i + 1) % ring.length]!, ring[(i + 2) % ring.length]!];
    return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) >= -1e-9;
  });

const sumOfAreas = (parts: readonly Point[][]): number => parts.reduce((sum, part) => sum + signedAreaOf(part), 0);

describe("convex parts", () => {
  test("of every shape of the literature are convex and together as large as it", () => {
    for (const outline of outlines) {
      const parts = convexParts(outline);
      expect(parts.every(isConvex)).toBe(true);
      expect(sumOfAreas(parts)).toBeCloseTo(signedAreaOf(outline), 6);
    }
  });

  test("of any star are convex and together as large as it", () => {
    fc.assert(
      fc.property(star, (outline) => {
        const parts = convexParts(outline);
        expect(parts.every(isConvex)).toBe(true);
        expect(sumOfAreas(parts)).toBeCloseTo(signedAreaOf(outline), 6);
      }),
    );
  });

  test("a convex shape is one part, an L two", () => {
    const square = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 2, y: 2 },
      { x: 0, y: 2 },
    ];
    expect(convexParts(square)).toHaveLength(1);
    const l = [...square.slice(0, 2), { x: 2, y: 1 }, { x: 1, y: 1 }, { x: 1, y: 2 }, { x: 0, y: 2 }];
    expect(convexParts(l)).toHaveLength(2);
  });
});

describe("the no-fit region", () => {
  test("of two squares of 2 is a square of 4: worked by hand", () => {
    const square = [
      { x: 0, y: 0 },
      { x: 2, y: 0 },
      { x: 2, y: 2 },
      { x: 0, y: 2 },
    ];
    const region = noFit([square], [square], 0);
    expect(depthIn(region, 0, 0)).toBe(2);
    expect(depthIn(region, 1.5, 0)).toBe(0.5);
    expect(depthIn(region, 1.5, -1.75)).toBe(0.25);
    expect(depthIn(region, 2, 0)).toBe(0);
    expect(depthIn(region, -2.1, 1)).toBe(0);
  });

  // The second judge knows nothing of no-fit polygons: it lays both shapes and cuts out what they have in common.
  test("holds a place where the shapes overlap, and none where they do not", () => {
    const place = fc.double({ min: -20, max: 20, noNaN: true });
    fc.assert(
      fc.property(star, star, place, place, (fixed, moving, x, y) => {
        const region = noFit(convexParts(fixed), convexParts(moving), 0);
        const depth = depthIn(region, x, y);
        const strip = {
          width: 100,
          shapes: [fixed, moving].map((outline) => ({ outline, turns: [0], count: 1 })),
        };
        const layout = {
          length: 100,
          placements: [
            { shape: 0, turn: 0, by: { x: 50, y: 50 } },
            { shape: 1, turn: 0, by: { x: 50 + x, y: 50 + y } },
          ],
        };
        const { overlap } = judged(strip, layout);
        if (depth > 1e-4) expect(overlap).toBeGreaterThan(0);
        if (depth === 0) expect(overlap).toBeLessThan(1e-4);
        // Seen from the other shape it is as deep.
        expect(depthIn(exchanged(region), -x, -y)).toBe(depth);
      }),
      { numRuns: 300 },
    );
  });

  test("is as deep as the way out is long", () => {
    fc.assert(
      fc.property(star, star, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (fixed, moving, way) => {
        const region = noFit(convexParts(fixed), convexParts(moving), 0);
        const depth = depthIn(region, 1, 1);
        // Less far in any direction, it still lies in the region.
        const less = depth * 0.999;
        if (depth > 1e-3)
          expect(depthIn(region, 1 + less * Math.cos(way), 1 + less * Math.sin(way))).toBeGreaterThan(0);
      }),
    );
  });

  test("its border is free", () => {
    for (const [i, fixed] of outlines.entries()) {
      const moving = outlines[(i * 7 + 3) % outlines.length]!;
      const region = noFit(convexParts(fixed), convexParts(moving), 1e-6);
      const corners: Point[] = [];
      eachSide(region, (x, y) => {
        corners.push({ x, y });
      });
      expect(corners.length).toBeGreaterThan(2);
      for (const { x, y } of corners) expect(depthIn(region, x, y)).toBeLessThan(1e-9);
    }
  });
});
