// How far an edge may be off the length it was to keep.
import { describe, expect, test } from "vitest";
import { keptLength } from "../../kernel/checks/kept-length.ts";
import type { Piece } from "../../kernel/working.ts";
import { atLine, garment, judgementsOf, rectangle } from "./made-garment.ts";

/** A panel whose top was 138 mm in its block. */
const altered = (width: number): Piece =>
  rectangle("back", width, 400, {
    keeps: [{ edge: "top", wanted: 138, of: "straight.back", as: false, drawnBy: atLine(40) }],
  });

describe("0.5 mm either way", () => {
  test.each([
    [138, "pass"],
    [138.49, "pass"],
    [138.5, "pass"],
    [138.51, "error"],
    [137.51, "pass"],
    [137.5, "pass"],
    [137.49, "error"],
  ])("%f mm: %s", (width, verdict) => {
    expect(judgementsOf(keptLength, garment([altered(width)]))).toMatchObject([
      { on: "back.top", verdict, wanted: 138, where: { line: 40 } },
    ]);
  });
});

test("a finding tells the length and the excess", () => {
  expect(judgementsOf(keptLength, garment([altered(141)]))).toMatchObject([
    {
      found: 141,
      message: "The top of back measures 141 mm, 3 mm longer than that of straight.back.",
      related: [{ where: { line: 11 } }],
    },
  ]);
  expect(judgementsOf(keptLength, garment([altered(136)], { units: "cm" }))[0]?.message).toBe(
    "The top of back measures 13.6 cm, 0.2 cm shorter than that of straight.back.",
  );
});

test("an edge that is gone has not kept its length", () => {
  const piece = rectangle("back", 138, 400, {
    keeps: [{ edge: "armscye", wanted: 268.1, of: "straight.back", as: false, drawnBy: atLine(40) }],
  });
  expect(judgementsOf(keptLength, garment([piece]))).toMatchObject([{ on: "back.armscye", verdict: "error" }]);
});

test("a piece with a failed line is not judged", () => {
  expect(judgementsOf(keptLength, garment([{ ...altered(200), doubtful: true }]))).toEqual([]);
});
