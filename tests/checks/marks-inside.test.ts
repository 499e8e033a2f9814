// Drill holes and labels lie on the cloth of their piece.
import { expect, test } from "vitest";
import { marksInside } from "../../kernel/checks/marks-inside.ts";
import type { Piece } from "../../kernel/working.ts";
import { atLine, garment, judgementsOf, rectangle } from "./made-garment.ts";

const drilled = (x: number, y: number, more: Partial<Piece> = {}) =>
  judgementsOf(
    marksInside,
    garment([rectangle("back", 300, 400, { drills: [{ point: { x, y }, drawnBy: atLine(20) }], ...more })]),
  );

test.each([
  [150, 200, "pass"],
  [300, 200, "pass"],
  [300.009, 200, "pass"],
  [300.011, 200, "warning"],
  [-5, 200, "warning"],
])("a drill hole at (%f, %f): %s", (x, y, verdict) => {
  expect(drilled(x, y)).toMatchObject([{ on: "back", verdict, where: { line: 20 } }]);
});

test("says how far outside it lies", () => {
  expect(drilled(330, 200)).toMatchObject([
    { found: 30, wanted: 0, message: expect.stringContaining("outside its sewing line.") },
  ]);
});

test("looks at labels that were given a place, and at no others", () => {
  const labels = [
    { text: "pocket", at: { x: 500, y: 200 }, drawnBy: atLine(21) },
    { text: "right side only", drawnBy: atLine(22) },
  ];
  expect(judgementsOf(marksInside, garment([rectangle("back", 300, 400, { labels })]))).toMatchObject([
    { verdict: "warning", where: { line: 21 } },
  ]);
});

test("a piece with a failed line is not judged", () => {
  expect(drilled(500, 200, { doubtful: true })).toEqual([]);
});
