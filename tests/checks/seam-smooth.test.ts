// Which lines run across a seam, and how much of a corner they may make there.
import { describe, expect, test } from "vitest";
import { seamSmooth } from "../../kernel/checks/seam-smooth.ts";
import { cubic, straight } from "../../kernel/geometry/path.ts";
import { part } from "../../kernel/geometry/split.ts";
import { tan, toRadians } from "../../kernel/geometry/trig.ts";
import type { Garment, Judgement, Piece } from "../../kernel/working.ts";
import {
  at,
  garment,
  judgementsOf,
  madePiece,
  marked,
  panel,
  rectangle,
  run,
  seam,
  verdictsOf,
} from "./made-garment.ts";

/** A panel whose hem makes this angle, in degrees, with its side; its top is square. */
const leaning = (name: string, degrees: number): Piece => {
  const rise = 300 * tan(toRadians(90 - degrees));
  return panel(name, [at(0, 0), at(300, 0), at(300, 400), at(0, 400 - rise)]);
};

const sides = (front: Piece, back: Piece, more: Partial<Garment> = {}): Garment =>
  garment([front, back], { seams: [seam([run(front, "side")], [run(back, "side")])], ...more });

const hemsOf = (of: Garment): Judgement => {
  const found = judgementsOf(seamSmooth, of).filter(({ on }) => on.startsWith("front.hem with back.hem"));
  expect(found).toHaveLength(1);
  return found[0]!;
};

test("both ends of a seam are judged", () => {
  expect(verdictsOf(seamSmooth, sides(rectangle("front", 300, 400), rectangle("back", 250, 400)))).toEqual([
    "front.top with back.top at front.side: pass",
    "front.hem with back.hem at front.side: pass",
  ]);
});

// Each row: the two angles, and what they come to. Source of 3 and 8 degrees: trade handbook 5.2.
describe("the two corners together", () => {
  test.each([
    [90, 90, "pass"],
    [95, 85, "pass"],
    [91.5, 91.49, "pass"],
    [91.5, 91.5, "pass"],
    [91.5, 91.51, "warning"],
    [88.5, 88.5, "pass"],
    [88.5, 88.49, "warning"],
    [94, 93.99, "warning"],
    [94, 94, "warning"],
    [94, 94.01, "error"],
    [86, 85.99, "error"],
  ])("%f and %f deg: %s", (front, back, verdict) => {
    const judgement = hemsOf(sides(leaning("front", front), leaning("back", back)));
    expect(judgement.verdict).toBe(verdict);
    expect(judgement.found).toBeCloseTo(front + back, 9);
    expect(judgement.wanted).toBe(180);
  });
});

test("a finding names both lines and their angles, and points at the first", () => {
  expect(hemsOf(sides(leaning("front", 95), leaning("back", 93)))).toMatchObject({
    on: "front.hem with back.hem at front.side",
    where: { line: 13 },
    message:
      "Where the side of front is sewn to the side of back, the hem of front and the hem of back make a corner of 8 deg: " +
      "their angles are 95 deg and 93 deg, and should make 180 deg together.",
    related: [
      { where: { line: 50 }, message: "They are sewn together here: front.side with back.side." },
      { where: { line: 13 }, message: "The hem of back is drawn here." },
    ],
  });
});

describe("which lines run across a seam", () => {
  const [front, back] = [leaning("front", 80), leaning("back", 80)];
  const facing = rectangle("facing", 600, 50);

  test("those sewn on together", () => {
    const hemFacing = seam([run(facing, "top")], [run(front, "hem"), run(back, "hem")]);
    const of = sides(front, back);
    expect(
      hemsOf({ ...of, seams: [...of.seams, hemFacing], pieces: new Map(of.pieces).set("facing", facing) }),
    ).toMatchObject({ verdict: "error", found: expect.closeTo(160, 9) });
  });

  test("not those of which one is sewn to something else", () => {
    const hemFacing = seam([run(facing, "top")], [run(front, "hem")]);
    const of = sides(front, back);
    const others = { ...of, seams: [...of.seams, hemFacing], pieces: new Map(of.pieces).set("facing", facing) };
    expect(verdictsOf(seamSmooth, others).filter((verdict) => verdict.includes("hem with back.hem"))).toEqual([]);
  });

  test("not those sewn to each other, as at the tip of a wedge", () => {
    const gore = madePiece("gore", [
      ["one", straight(at(0, 0), at(-50, 200))],
      ["hem", straight(at(-50, 200), at(50, 200))],
      ["other", straight(at(0, 0), at(50, 200))],
    ]);
    const of = garment([gore], { seams: [seam([run(gore, "one")], [run(gore, "other")])] });
    // The hem meets itself at both corners of 76 deg (the angle whose tangent is 200 / 50).
    expect(judgementsOf(seamSmooth, of)).toMatchObject([
      {
        on: "gore.hem with gore.hem at gore.one",
        verdict: "error",
        found: expect.closeTo((2 * (Math.atan(4) * 180)) / Math.PI, 9),
        message: expect.stringContaining("the two ends of the hem of gore make a corner of 28.1 deg"),
      },
    ]);
  });

  test("not a fold", () => {
    const folded = marked(front, "hem", "fold");
    expect(verdictsOf(seamSmooth, sides(folded, back))).toEqual(["front.top with back.top at front.side: pass"]);
  });
});

test("a seam that ends within an edge meets no corner", () => {
  const [front, back] = [leaning("front", 80), leaning("back", 80)];
  const downTo = (piece: Piece) => ({
    ...run(piece, "side"),
    path: part(piece.edges.get("side")!.path, 0, 300),
    whole: false,
  });
  const of = garment([front, back], { seams: [seam([downTo(front)], [downTo(back)])] });
  expect(verdictsOf(seamSmooth, of)).toEqual(["front.top with back.top at front.side: pass"]);
});

test("a pair sewn to its mirror image counts each corner twice", () => {
  const mirrored = (degrees: number): Garment => {
    const back = leaning("back", degrees);
    return garment([back], { seams: [seam([run(back, "side")], [run(back, "side")])] });
  };
  expect(judgementsOf(seamSmooth, mirrored(91.49))[1]).toMatchObject({ verdict: "pass" });
  expect(judgementsOf(seamSmooth, mirrored(91.51))[1]).toMatchObject({
    on: "back.hem with back.hem at back.side",
    verdict: "warning",
    message: expect.stringMatching(
      /^Where the side of back is sewn to its mirror image, the hem of back and its mirror image/,
    ),
  });
});

test("runs walked from their ends meet at the right corners", () => {
  const [front, back] = [leaning("front", 95), leaning("back", 85)];
  // Walked from the hem up, so the seam starts there.
  const of = garment([front, back], { seams: [seam([run(front, "side", true)], [run(back, "side", true)])] });
  expect(verdictsOf(seamSmooth, of)).toEqual([
    "front.hem with back.hem at front.side: pass",
    "front.top with back.top at front.side: pass",
  ]);
});

// An outline may be drafted against the clock; its inside is inside all the same.
test("a mirrored piece has the same angles", () => {
  const front = leaning("front", 95);
  const back = panel("back", [at(0, 0), at(-300, 0), at(-300, 400), at(0, 400 + 300 * tan(toRadians(5)))]);
  expect(hemsOf(sides(front, back)).found).toBeCloseTo(190, 9);
});

// Source: trade handbook 3.2, worked example R88 coat, whose neck curves meet the shoulder at 90 deg (rule 7).
test("the coat block of the handbook has a smooth neck at the shoulder", () => {
  const half = (
    name: string,
    tip: readonly [number, number],
    start: number,
    handles: readonly [number, number][],
  ): Piece =>
    madePiece(name, [
      ["neck", [cubic(at(0, start), at(...handles[0]!), at(...handles[1]!), at(74, -24.7))]],
      ["shoulder", straight(at(74, -24.7), at(...tip))],
      ["rest", straight(at(...tip), at(0, 300))],
      ["center", straight(at(0, 300), at(0, start))],
    ]);
  const back = half("back", [205.2, 18], 0, [
    [44.4, 0],
    [69.4, -10.6],
  ]);
  const front = half("front", [202, 27], 59.3, [
    [40.9, 59.3],
    [56.6, 18.3],
  ]);
  const of = garment([back, front], { seams: [seam([run(front, "shoulder")], [run(back, "shoulder")])] });
  const [neck] = judgementsOf(seamSmooth, of);
  expect(neck).toMatchObject({ on: "front.neck with back.neck at front.shoulder", verdict: "pass" });
  // The handbook gives its points to 0.1 mm, which turns a handle of 15 mm by up to 0.4 deg.
  expect(Math.abs(Number(neck?.found) - 180)).toBeLessThan(0.5);
});

test("a seam that touches a piece with a failed line is not judged", () => {
  const of = sides(leaning("front", 70), { ...leaning("back", 70), doubtful: true });
  expect(judgementsOf(seamSmooth, of)).toEqual([]);
});
