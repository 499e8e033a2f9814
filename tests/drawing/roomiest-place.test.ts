// The search for the place of a label, against figures whose answer is known.
import fc from "fast-check";
import { expect, test } from "vitest";
import { asSeenBy, type Box, room, squareDistance, squareRoom } from "../../kernel/drawing/box.ts";
import { roomiestPlace } from "../../kernel/drawing/roomiest-place.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import { at, bent } from "../cloth/made-piece.ts";

const level = (width: number, height: number) => ({ width, height, turn: 0 });

test("in a rectangle it is the middle", () => {
  const place = roomiestPlace(bent([0, 0], [300, 0], [300, 100], [0, 100], [0, 0]), [], level(100, 40));
  expect(place.center.x).toBeCloseTo(150, 6);
  expect(place.center.y).toBeCloseTo(50, 6);
  // 50 to the long sides, of a block that is 20 half high.
  expect(place.room).toBeCloseTo(2.5, 6);
});

test("in a right triangle a square block grows to the inscribed square", () => {
  // The largest square in the corner of a right triangle with legs a and b has the side ab / (a + b), here 50.
  const place = roomiestPlace(bent([0, 0], [100, 0], [0, 100], [0, 0]), [], level(40, 40));
  expect(place.room).toBeCloseTo(50 / 40, 1);
  expect(place.center.x).toBeCloseTo(25, 0);
  expect(place.center.y).toBeCloseTo(25, 0);
});

test("in an L it lies in the thick part", () => {
  const ell = bent([0, 0], [400, 0], [400, 60], [120, 60], [120, 300], [0, 300], [0, 0]);
  const place = roomiestPlace(ell, [], level(110, 80));
  expect(place.room).toBeGreaterThan(1);
  expect(place.center.x).toBeLessThan(120);
});

test("a block turned upright fits a tall strip that a level one does not", () => {
  const strip = bent([0, 0], [50, 0], [50, 400], [0, 400], [0, 0]);
  expect(roomiestPlace(strip, [], level(120, 30)).room).toBeLessThan(1);
  expect(roomiestPlace(strip, [], { ...level(120, 30), turn: -Math.PI / 2 }).room).toBeGreaterThan(1);
});

test("a line through the middle moves it aside", () => {
  const square = bent([0, 0], [200, 0], [200, 200], [0, 200], [0, 0]);
  const place = roomiestPlace(square, [[at(100, -10), at(100, 210)]], level(60, 20));
  expect(Math.abs(place.center.x - 100)).toBeGreaterThan(30);
});

test("the room it tells is the room there is, and few places have more", () => {
  const corner = fc.record({
    x: fc.double({ min: -40, max: 40, noNaN: true }),
    y: fc.double({ min: -40, max: 40, noNaN: true }),
  });
  fc.assert(
    fc.property(
      fc.tuple(corner, corner, corner, corner),
      fc.double({ min: -1.5, max: 1.5, noNaN: true }),
      (shifts, turn) => {
        const square = [at(0, 0), at(200, 0), at(200, 200), at(0, 200)];
        const corners = square.map(({ x, y }, i) => at(x + shifts[i]!.x, y + shifts[i]!.y));
        const loop: Path = bent(...[...corners, corners[0]!].map(({ x, y }): [number, number] => [x, y]));
        const place = roomiestPlace(loop, [], { width: 160, height: 90, turn });
        const box: Box = { center: place.center, turn, halfWidth: 80, halfHeight: 45 };
        expect(room(box, [flattened(loop, 0.1)])).toBeCloseTo(place.room, 6);
        for (const dx of [-20, 0, 20])
          for (const dy of [-20, 0, 20]) {
            const center = at(100 + dx, 100 + dy);
            expect(room({ ...box, center }, [flattened(loop, 0.1)])).toBeLessThan(Math.max(place.room, 1.6) + 0.15);
          }
      },
    ),
    { numRuns: 60, seed: 3 },
  );
});

test("a line's distance in squares is the larger of across and down, at its nearest place", () => {
  expect(squareDistance(at(3, -10), at(3, 10))).toBe(3);
  expect(squareDistance(at(-10, 4), at(10, 4))).toBe(4);
  // The line x + y = 10 is nearest at (5, 5).
  expect(squareDistance(at(0, 10), at(10, 0))).toBe(5);
  expect(squareDistance(at(7, 2), at(9, 3))).toBe(7);
  expect(squareDistance(at(-1, -1), at(2, 2))).toBe(0);
});

const spot = fc.record({
  x: fc.double({ min: -100, max: 100, noNaN: true }),
  y: fc.double({ min: -100, max: 100, noNaN: true }),
});
const crooked = fc.array(fc.array(spot, { minLength: 2, maxLength: 40 }), { minLength: 1, maxLength: 8 });

/** The plain way: every stretch of every line is looked at. */
const nearestOf = (
  lines: readonly (readonly { x: number; y: number }[])[],
  seen: (p: Box["center"]) => Box["center"],
) => Math.min(...lines.flatMap((line) => line.slice(1).map((end, i) => squareDistance(seen(line[i]!), seen(end)))));

test("passing over stretches that are far off changes nothing, to the last digit", () => {
  fc.assert(
    fc.property(crooked, fc.array(spot, { minLength: 1, maxLength: 20 }), (lines, places) => {
      const roomAt = squareRoom(lines);
      for (const place of places)
        expect(roomAt(place)).toBe(nearestOf(lines, ({ x, y }) => at(x - place.x, y - place.y)));
    }),
  );
  const half = fc.double({ min: 0.5, max: 60, noNaN: true });
  fc.assert(
    fc.property(crooked, spot, half, half, fc.double({ min: -3, max: 3, noNaN: true }), (lines, center, w, h, turn) => {
      const box: Box = { center, turn, halfWidth: w, halfHeight: h };
      expect(room(box, lines)).toBe(nearestOf(lines, asSeenBy(box)));
    }),
  );
});
