// The grain lies along the line in which a piece hangs: square to its hem, or on purpose on the bias or across.
import { expect, test } from "vitest";
import { grainHang } from "../../kernel/checks/grain-hang.ts";
import type { Grain } from "../../kernel/working.ts";
import { atLine, garment, judgementsOf, marked, rectangle } from "./made-garment.ts";

/** A grain line that leans by so many degrees off upright, drawn on a rectangle with a level hem. */
const leaning = (degrees: number): Grain => {
  const radians = (degrees * Math.PI) / 180;
  return {
    kind: "line",
    from: { x: 50, y: 50 },
    to: { x: 50 + 200 * Math.sin(radians), y: 50 + 200 * Math.cos(radians) },
    drawnBy: atLine(25),
  };
};

const judged = (degrees: number) =>
  judgementsOf(grainHang, garment([marked(rectangle("back", 300, 400, { grain: leaning(degrees) }), "hem", "hem")]));

test.each([
  [0, "pass"],
  [9.9, "pass"],
  [10.1, "warning"],
  [-20, "warning"],
  [39.9, "warning"],
  [40.1, "pass"],
  [45, "pass"],
  [60, "warning"],
  [90, "pass"],
])("a grain %f deg off upright: %s", (degrees, verdict) => {
  expect(judged(degrees)).toMatchObject([{ on: "back", verdict, where: { line: 25 } }]);
});

test("says by how much it is off", () => {
  expect(judged(20)).toMatchObject([{ found: expect.closeTo(20, 6), wanted: 0 }]);
});

test("a piece without a hem, or without a grain line, is not judged", () => {
  expect(judgementsOf(grainHang, garment([rectangle("back", 300, 400, { grain: leaning(20) })]))).toEqual([]);
  expect(judgementsOf(grainHang, garment([marked(rectangle("back", 300, 400), "hem", "hem")]))).toEqual([]);
});
