// How deep a curved hem may be turned up: the handbook's figures, and which hems are judged.
import { describe, expect, test } from "vitest";
import { deepestTurnUp, hemAllowanceCurve } from "../../kernel/checks/hem-allowance-curve.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { straight } from "../../kernel/geometry/path.ts";
import type { Garment, Piece } from "../../kernel/working.ts";
import { allowed, at, cut, garment, judgementsOf, madePiece, marked, rectangle, shell } from "./made-garment.ts";

/** A sector about the origin, its hem of a radius, through an angle to both sides of straight down. */
const sector = (radius: number, inner: number, half: number): Piece => {
  const on = (r: number, angle: number) => at(r * Math.sin(angle), r * Math.cos(angle));
  return marked(
    madePiece("skirt", [
      ["waist", arcSpans(at(0, 0), on(inner, -half), -2 * half)],
      ["side", straight(on(inner, half), on(radius, half))],
      ["hem", arcSpans(at(0, 0), on(radius, -half), -2 * half)],
      ["center", straight(on(inner, -half), on(radius, -half))],
    ]),
    "hem",
    "hem",
  );
};

const inCloth = (piece: Piece, bendingLength?: number): Garment =>
  garment([piece], {
    cuts: [cut("skirt")],
    fabrics: new Map([["shell", bendingLength === undefined ? shell : { ...shell, bendingLength }]]),
  });

test.each([
  // Source: handbook of the trade 6.3 and check values 75 and 76, and its table.
  [700, 0.05, 17.07],
  [700, 0.03, 10.34],
  [300, 0.02, 3.0],
  [1000, 0.08, 38.5],
  [3000, 0.05, 73.2],
])("radius %f, ease %f: at most %f", (radius, share, most) => {
  expect(Math.abs(deepestTurnUp(radius, share) - most)).toBeLessThan(0.05);
});

describe("a hem of radius 700", () => {
  const skirt = sector(700, 200, 0.4);
  test.each([
    [17, undefined, "pass"],
    [17.2, undefined, "warning"],
    [10.3, 20, "pass"],
    [10.5, 20, "warning"],
    // 2 % of crisp cloth: 0.02 x 700 / 2.02.
    [6.9, 30, "pass"],
    [7, 30, "warning"],
  ])("turned up by %f in cloth that bends over %s: %s", (width, bending, verdict) => {
    expect(judgementsOf(hemAllowanceCurve, inCloth(allowed(skirt, width, ["hem"]), bending))).toMatchObject([
      { on: "skirt.hem", verdict, found: width },
    ]);
  });
});

test("of a full circle turned up by 40, 502.65 have to be eased in", () => {
  // Source: handbook of the trade, check value 77; a quarter of it here, and said in the units of the garment.
  const [finding] = judgementsOf(hemAllowanceCurve, inCloth(allowed(sector(700, 200, Math.PI / 4), 40, ["hem"])));
  expect(finding!.message).toBe(
    `At its tightest the hem of skirt curves with a radius of 700 mm: turned up by 40 mm, 12.1 % of its raw edge has to be eased in there, ${(502.65 / 4).toFixed(1)} mm in all; the cloth takes 5 %.`,
  );
  expect(finding!.hint).toBe("Allow at most 17.1 mm, or finish the hem with a facing cut to its shape.");
});

test("a straight hem, and one that curves inward, may be as deep as one likes", () => {
  const straightHem = allowed(marked(rectangle("skirt", 300, 400), "hem", "hem"), 80, ["hem"]);
  expect(judgementsOf(hemAllowanceCurve, garment([straightHem]))).toMatchObject([
    { verdict: "pass", wanted: "any depth" },
  ]);
  const scooped = marked(sector(700, 200, 0.4), "waist", "hem");
  const [waist] = judgementsOf(hemAllowanceCurve, garment([allowed(scooped, 30, ["waist"])]));
  expect(waist).toMatchObject({ on: "skirt.waist", verdict: "pass" });
});

test("nothing is judged without an allowance, or where a line failed", () => {
  expect(judgementsOf(hemAllowanceCurve, garment([sector(700, 200, 0.4)]))).toEqual([]);
  expect(judgementsOf(hemAllowanceCurve, garment([allowed(sector(700, 200, 0.4), 0, ["hem"])]))).toEqual([]);
  const failed = { ...allowed(sector(700, 200, 0.4), 40, ["hem"]), doubtful: true };
  expect(judgementsOf(hemAllowanceCurve, garment([failed]))).toEqual([]);
});
