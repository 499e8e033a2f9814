// How far an edge may be off square to a fold.
import { describe, expect, test } from "vitest";
import { foldSquare } from "../../kernel/checks/fold-square.ts";
import { tan, toRadians } from "../../kernel/geometry/trig.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, garment, judgementsOf, marked, panel, rectangle, verdictsOf } from "./made-garment.ts";

/** A panel on the fold whose top makes this angle, in degrees, with the fold. */
const slanting = (degrees: number): Piece => {
  const drop = 300 * tan(toRadians(90 - degrees));
  return marked(panel("yoke", [at(0, 0), at(300, drop), at(300, 400), at(0, 400)]), "center", "fold");
};

// Source of the 1 degree: trade handbook 5.2, common practice.
describe("1 degree either way", () => {
  test.each([
    [90, "pass"],
    [89.01, "pass"],
    [89, "pass"],
    [88.99, "warning"],
    [90.99, "pass"],
    [91, "pass"],
    [91.01, "warning"],
  ])("%f deg: %s", (degrees, verdict) => {
    const judgements = judgementsOf(foldSquare, garment([slanting(degrees)]));
    expect(judgements).toMatchObject([
      { on: "yoke.hem at yoke.center", verdict: "pass", wanted: 90 },
      { on: "yoke.top at yoke.center", verdict, wanted: 90 },
    ]);
    expect(judgements[1]?.found).toBeCloseTo(degrees, 9);
  });
});

test("a finding points at the edge and shows the fold", () => {
  expect(judgementsOf(foldSquare, garment([slanting(100)]))[1]).toMatchObject({
    where: { line: 11 },
    message: "The top of yoke meets the fold center at 100 deg.",
    hint: "Square it with `true-seam top`.",
    related: [{ where: { line: 14 }, message: "center is drawn here." }],
  });
});

test("without a fold there is nothing to judge", () => {
  expect(judgementsOf(foldSquare, garment([marked(slanting(70), "center", "seam")]))).toEqual([]);
});

test("where two folds meet nothing is judged", () => {
  const twice = marked(marked(rectangle("skirt", 300, 400), "center", "fold"), "top", "fold");
  expect(verdictsOf(foldSquare, garment([twice]))).toEqual([
    "skirt.side at skirt.top: pass",
    "skirt.hem at skirt.center: pass",
  ]);
});

test("a piece with a failed line is not judged", () => {
  expect(judgementsOf(foldSquare, garment([{ ...slanting(70), doubtful: true }]))).toEqual([]);
});
