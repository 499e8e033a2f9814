// Which pieces need a grain line, and how far it may be off a fold.
import { describe, expect, test } from "vitest";
import { grainPresent } from "../../kernel/checks/grain-present.ts";
import type { Grain, Piece } from "../../kernel/working.ts";
import { at, atLine, cut, garment, judgementsOf, marked, rectangle } from "./made-garment.ts";

const drawn = (to: readonly [number, number], from: readonly [number, number] = [0, 0]): Grain => ({
  kind: "line",
  from: at(...from),
  to: at(...to),
  drawnBy: atLine(25),
});
const along = (edge: string): Grain => ({ kind: "along", edge, drawnBy: atLine(25) });

const judged = (piece: Piece) => judgementsOf(grainPresent, garment([piece], { cuts: [cut("back")] }));

describe("a piece that is cut", () => {
  test("needs a grain line", () => {
    expect(judged(rectangle("back", 300, 400))).toMatchObject([
      {
        on: "back",
        verdict: "warning",
        found: "no grain line",
        where: { line: 10 },
        message: "back is cut from shell but has no grain line.",
        related: [{ where: { line: 60 } }],
      },
    ]);
  });

  test("may have it in any direction", () => {
    expect(judged(rectangle("back", 300, 400, { grain: drawn([100, 37]) }))).toMatchObject([{ verdict: "pass" }]);
    expect(judged(rectangle("back", 300, 400, { grain: along("top") }))).toMatchObject([{ verdict: "pass" }]);
  });

  test("has none where its line has no length, or its edge is gone", () => {
    expect(judged(rectangle("back", 300, 400, { grain: drawn([0, 0]) }))).toMatchObject([{ verdict: "warning" }]);
    expect(judged(rectangle("back", 300, 400, { grain: along("yoke") }))).toMatchObject([{ verdict: "warning" }]);
  });
});

test("a piece that is not cut needs none", () => {
  expect(judgementsOf(grainPresent, garment([rectangle("back", 300, 400)]))).toEqual([]);
  expect(judgementsOf(grainPresent, garment([rectangle("back", 300, 400)], { cuts: [cut("front")] }))).toEqual([]);
});

describe("a piece with a fold", () => {
  const folded = (more: Partial<Piece>): Piece => marked(rectangle("back", 300, 400, more), "center", "fold");

  test("has its grain along the fold without a word", () => {
    expect(judged(folded({}))).toMatchObject([{ verdict: "pass", found: 0 }]);
  });

  test("may say so, up or down", () => {
    expect(judged(folded({ grain: along("center") }))).toMatchObject([{ verdict: "pass" }]);
    expect(judged(folded({ grain: drawn([50, 10], [50, 300]) }))).toMatchObject([{ verdict: "pass" }]);
  });

  // The sine of the angle is the tolerance: 3 mm in a metre, trade handbook 5.6.
  test.each([
    [2.99, "pass"],
    [3, "pass"],
    [3.01, "warning"],
    [-3.01, "warning"],
  ])("%f mm off in a metre: %s", (off, verdict) => {
    const grain = drawn([off, Math.sqrt(1_000_000 - off * off)]);
    expect(judged(folded({ grain }))).toMatchObject([{ verdict }]);
  });

  test("does not have it a little off", () => {
    // 40 mm in 400 is atan(0.1) = 5.7106 deg.
    expect(judged(folded({ grain: drawn([40, 400]) }))).toMatchObject([
      {
        verdict: "warning",
        found: expect.closeTo(5.7106, 4),
        wanted: 0,
        where: { line: 25 },
        message: "The grain of back is 5.7 deg off its fold center.",
        hint: "Write `grain along center`; accept it with a reason where the cloth is folded across.",
        related: [{ where: { line: 14 } }],
      },
    ]);
  });

  test("may have it across or on the bias, where the cloth is folded so", () => {
    expect(judged(folded({ grain: along("top") }))).toMatchObject([{ verdict: "pass", found: 90 }]);
    expect(judged(folded({ grain: drawn([100, 100]) }))).toMatchObject([
      { verdict: "pass", found: expect.closeTo(45, 9) },
    ]);
  });
});

test("a grain line drawn in another recipe is mended where the piece is made from it", () => {
  const borrowed: Grain = { ...drawn([40, 400]), drawnBy: atLine(25, "blocks/coat.chalk") };
  const [finding] = judged(marked(rectangle("back", 300, 400, { grain: borrowed }), "center", "fold"));
  expect(finding).toMatchObject({ verdict: "warning", where: atLine(10) });
});

test("a piece with a failed line is not judged", () => {
  expect(judged(rectangle("back", 300, 400, { doubtful: true }))).toEqual([]);
});
