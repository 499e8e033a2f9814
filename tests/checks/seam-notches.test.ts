// How far partner notches may be apart, and notches that have no partner.
import { describe, expect, test } from "vitest";
import { seamNotches } from "../../kernel/checks/seam-notches.ts";
import type { Garment, Notch, Seam } from "../../kernel/working.ts";
import { at, garment, judgementsOf, notch, rectangle, run, seam } from "./made-garment.ts";

/** A notch on the side of a panel 300 wide, this far down. */
const down = (y: number, double = false): Notch => notch("side", at(300, y), double);

const sewn = (first: readonly Notch[], second: readonly Notch[], more: Partial<Seam> = {}): Garment => {
  const front = rectangle("front", 300, 400, { notches: first });
  const back = rectangle("back", 300, 400, { notches: second });
  return garment([front, back], { seams: [seam([run(front, "side")], [run(back, "side")], more)] });
};

const verdicts = (of: Garment): string[] => judgementsOf(seamNotches, of).map(({ verdict }) => verdict);

describe("a pair without ease", () => {
  test.each([
    [200, "pass"],
    [200.99, "pass"],
    [201, "pass"],
    [201.01, "warning"],
    [199.01, "pass"],
    [199, "pass"],
    [198.99, "warning"],
  ])("%f mm to 200 mm: %s", (y, verdict) => {
    expect(verdicts(sewn([down(y)], [down(200)]))).toEqual([verdict]);
  });
});

describe("a pair with 20 mm of ease", () => {
  test.each([
    [198.99, "warning"],
    [199, "pass"],
    [210, "pass"],
    [221, "pass"],
    [221.01, "warning"],
  ])("%f mm to 200 mm: %s", (y, verdict) => {
    expect(verdicts(sewn([down(y)], [down(200)], { ease: 20 }))).toEqual([verdict]);
  });
});

test("a pair that is off points at the seam and shows both notches", () => {
  const [finding] = judgementsOf(seamNotches, sewn([down(200)], [down(205)]));
  expect(finding).toMatchObject({
    on: "front.side with back.side",
    wanted: 0,
    where: { line: 50 },
    message:
      "From the start of the seam it is 200 mm to the notch on the side of front and 205 mm to the notch on the side of back, 5 mm more.",
    hint: "Move one of them by 5 mm along its edge.",
    related: [{ where: { line: 20 } }, { where: { line: 20 } }],
  });
  expect(finding?.found).toBeCloseTo(-5, 9);
});

test("with ease the words say how much would do", () => {
  const [finding] = judgementsOf(seamNotches, sewn([down(230)], [down(200)], { ease: 20 }));
  expect(finding).toMatchObject({
    wanted: "from 0 to 20 mm",
    message:
      "From the start of the seam it is 230 mm to the notch on the side of front and 200 mm to the notch on the side of back, 30 mm less; the first may be up to 20 mm ahead.",
    hint: "Move one of them by 10 mm along its edge.",
  });
});

describe("notches left over", () => {
  test("one that has no partner", () => {
    expect(judgementsOf(seamNotches, sewn([down(200), down(300)], [down(200)]))).toMatchObject([
      { verdict: "pass" },
      {
        verdict: "warning",
        found: "no partner",
        where: { line: 50 },
        message:
          "The notch on the side of front, 300 mm from the start of the seam, has no partner on the side of back.",
        related: [{ where: { line: 20 } }],
      },
    ]);
  });

  test("a single and a double one are no pair", () => {
    expect(judgementsOf(seamNotches, sewn([down(200)], [down(200, true)]))).toMatchObject([
      { verdict: "warning", message: expect.stringContaining("The notch on the side of front") },
      { verdict: "warning", message: expect.stringContaining("The double notch on the side of back") },
    ]);
  });
});

describe("joints", () => {
  const [back, front] = [rectangle("back", 250, 700), rectangle("front", 260, 700)];
  const neck = (notches: readonly Notch[]): Garment => {
    const collar = rectangle("collar", 510, 80, { notches });
    return garment([collar, back, front], {
      seams: [seam([run(collar, "top")], [run(back, "top"), run(front, "top")])],
    });
  };

  test("pair with a notch", () => {
    expect(verdicts(neck([notch("top", at(250, 0))]))).toEqual(["pass"]);
    expect(judgementsOf(seamNotches, neck([notch("top", at(255, 0))]))).toMatchObject([
      { verdict: "warning", message: expect.stringContaining("250 mm to the joint after the top of back") },
    ]);
  });

  test("may be left over", () => {
    expect(judgementsOf(seamNotches, neck([]))).toEqual([]);
  });

  test("do not count for a double notch", () => {
    expect(verdicts(neck([notch("top", at(250, 0), true)]))).toEqual(["warning"]);
  });
});

test("notches beyond number are one finding", () => {
  const notches = Array.from({ length: 101 }, (_, index) => down(index + 1));
  expect(judgementsOf(seamNotches, sewn(notches, notches))).toMatchObject([
    {
      verdict: "warning",
      where: { line: 50 },
      message: "The side of front and the side of back have too many notches and joints to pair them.",
    },
  ]);
});

test("a seam that touches a piece with a failed line is not judged", () => {
  const of = sewn([down(200)], []);
  const pieces = new Map(of.pieces).set("back", { ...of.pieces.get("back")!, doubtful: true });
  expect(judgementsOf(seamNotches, { ...of, pieces })).toEqual([]);
});
