// How far a hem may be off square, and which corners are not its business.
import { describe, expect, test } from "vitest";
import { hemSquare } from "../../kernel/checks/hem-square.ts";
import { cubic, straight } from "../../kernel/geometry/path.ts";
import { tan, toRadians } from "../../kernel/geometry/trig.ts";
import type { Piece } from "../../kernel/working.ts";
import { at, garment, judgementsOf, madePiece, marked, panel, rectangle, verdictsOf } from "./made-garment.ts";

/** A panel whose hem makes this angle, in degrees, with its side, and a right angle with its center. */
const flared = (degrees: number): Piece => {
  const flare = 400 * tan(toRadians(90 - degrees));
  return marked(panel("front", [at(0, 0), at(300, 0), at(300 + flare, 400), at(0, 400)]), "hem", "hem");
};

// Source of the 3 degrees: trade handbook 5.2.
describe("3 degrees either way", () => {
  test.each([
    [90, "pass"],
    [87.01, "pass"],
    [87, "pass"],
    [86.99, "warning"],
    [92.99, "pass"],
    [93, "pass"],
    [93.01, "warning"],
  ])("%f deg: %s", (degrees, verdict) => {
    const judgements = judgementsOf(hemSquare, garment([flared(degrees)]));
    expect(judgements).toMatchObject([
      { on: "front.hem at front.side", verdict, wanted: 90 },
      { on: "front.hem at front.center", verdict: "pass", wanted: 90 },
    ]);
    expect(judgements[0]?.found).toBeCloseTo(degrees, 9);
    expect(judgements[1]?.found).toBeCloseTo(90, 9);
  });
});

test("a finding points at the hem and shows its neighbour", () => {
  expect(judgementsOf(hemSquare, garment([flared(80)]))[0]).toMatchObject({
    where: { line: 13 },
    message: "The hem of front meets its side at 80 deg.",
    hint: "Square it with `true-seam hem`.",
    related: [{ where: { line: 12 }, message: "side is drawn here." }],
  });
});

test("edges that are no hem are not judged", () => {
  expect(judgementsOf(hemSquare, garment([marked(flared(70), "hem", "opening")]))).toEqual([]);
});

test("a fold is left to fold-square", () => {
  expect(verdictsOf(hemSquare, garment([marked(flared(90), "center", "fold")]))).toEqual([
    "front.hem at front.side: pass",
  ]);
});

test("a corner between two hems is the maker's own", () => {
  const slit = marked(marked(rectangle("front", 300, 400), "hem", "hem"), "side", "hem");
  expect(verdictsOf(hemSquare, garment([slit]))).toEqual([
    "front.side at front.top: pass",
    "front.hem at front.center: pass",
  ]);
});

test("a hem that is rounded up into the opening has no corner", () => {
  const cloak = madePiece("cloak", [
    ["top", straight(at(0, 0), at(300, 0))],
    ["side", straight(at(300, 0), at(300, 400))],
    ["hem", [cubic(at(300, 400), at(100, 400), at(0, 390), at(0, 300))]],
    ["opening", straight(at(0, 300), at(0, 0))],
  ]);
  expect(verdictsOf(hemSquare, garment([marked(cloak, "hem", "hem")]))).toEqual(["cloak.hem at cloak.side: pass"]);
});

test("a piece with a failed line is not judged", () => {
  expect(judgementsOf(hemSquare, garment([{ ...flared(70), doubtful: true }]))).toEqual([]);
});
