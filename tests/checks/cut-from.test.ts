// Which pieces must be cut, and from what.
import { describe, expect, test } from "vitest";
import { cutFrom } from "../../kernel/checks/cut-from.ts";
import { cut, garment, judgementsOf, rectangle, run, seam, verdictsOf } from "./made-garment.ts";

const [front, back, pattern] = [
  rectangle("front", 300, 400),
  rectangle("back", 300, 400),
  rectangle("pattern", 300, 400),
];
const seams = [seam([run(front, "side")], [run(back, "side")])];

test("a recipe that cuts nothing is a block", () => {
  expect(judgementsOf(cutFrom, garment([front, back], { seams }))).toEqual([]);
});

test("all that is sewn is cut", () => {
  const of = garment([front, back, pattern], { seams, cuts: [cut("front"), cut("back")] });
  expect(verdictsOf(cutFrom, of)).toEqual(["front: pass", "back: pass"]);
});

test("a piece that is sewn and not cut is a finding", () => {
  const of = garment([front, back, pattern], { seams, cuts: [cut("front")] });
  expect(judgementsOf(cutFrom, of)).toMatchObject([
    { on: "front", verdict: "pass", where: { line: 60 } },
    {
      on: "back",
      verdict: "error",
      found: "not cut",
      where: { line: 10 },
      message: "back is sewn to the side of front, but it is not cut from any fabric.",
      hint: "Add a line `cut back COUNT from FABRIC`.",
      related: [{ where: { line: 50 } }],
    },
  ]);
});

describe("a cut line", () => {
  test("names a piece that exists", () => {
    expect(judgementsOf(cutFrom, garment([front], { cuts: [cut("sleeve")] }))).toMatchObject([
      { on: "sleeve", verdict: "error", where: { line: 60 }, found: "no such piece" },
    ]);
  });

  test("names a fabric that exists", () => {
    expect(judgementsOf(cutFrom, garment([front], { cuts: [cut("front", "lining")] }))).toMatchObject([
      {
        on: "front",
        verdict: "error",
        found: "no such fabric",
        message: "This line cuts front from lining, but no fabric has that name.",
      },
    ]);
  });
});

test("pieces with a failed line are not judged", () => {
  const doubtful = { ...back, doubtful: true };
  const of = garment([front, doubtful], { seams, cuts: [cut("front"), cut("back", "lining")] });
  expect(verdictsOf(cutFrom, of)).toEqual(["front: pass"]);
  expect(verdictsOf(cutFrom, garment([front, doubtful], { seams, cuts: [cut("front")] }))).toEqual(["front: pass"]);
});
