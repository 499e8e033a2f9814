// How far the two sides of a seam may differ, with ease and without.
import { describe, expect, test } from "vitest";
import { seamLength } from "../../kernel/checks/seam-length.ts";
import type { Garment, Seam } from "../../kernel/working.ts";
import { garment, judgementsOf, rectangle, run, seam } from "./made-garment.ts";

/** Two panels whose sides of these lengths are sewn together. */
const sewn = (first: number, second: number, more: Partial<Seam> = {}): Garment => {
  const [front, back] = [rectangle("front", 300, first), rectangle("back", 300, second)];
  return garment([front, back], { seams: [seam([run(front, "side")], [run(back, "side")], more)] });
};

const verdict = (of: Garment): string | undefined => judgementsOf(seamLength, of)[0]?.verdict;

describe("the tolerance of the seam", () => {
  test.each([
    [400, "pass"],
    [400.99, "pass"],
    [401, "pass"],
    [401.01, "error"],
    [399.01, "pass"],
    [399, "pass"],
    [398.99, "error"],
  ])("%f mm on 400 mm: %s", (first, wanted) => {
    expect(verdict(sewn(first, 400))).toBe(wanted);
  });

  test("is what the seam says", () => {
    expect(verdict(sewn(403, 400, { within: 3 }))).toBe("pass");
    expect(verdict(sewn(403.01, 400, { within: 3 }))).toBe("error");
    expect(verdict(sewn(400.01, 400, { within: 0 }))).toBe("error");
    expect(verdict(sewn(400, 400, { within: 0 }))).toBe("pass");
  });
});

describe("ease", () => {
  test.each([
    [425, "pass"],
    [426, "pass"],
    [426.01, "error"],
    [424, "pass"],
    [423.99, "error"],
    [400, "error"],
    [375, "error"],
  ])("25 mm, and %f mm on 400 mm: %s", (first, wanted) => {
    expect(verdict(sewn(first, 400, { ease: 25 }))).toBe(wanted);
  });
});

describe("words", () => {
  const finding = (of: Garment) => judgementsOf(seamLength, of)[0];

  test("longer, with both edges shown", () => {
    expect(finding(sewn(403, 400))).toMatchObject({
      on: "front.side with back.side",
      found: 3,
      wanted: 0,
      where: { line: 50 },
      message: "The side of front is 3 mm longer than the side of back.",
      hint: "Say `ease 3 mm` if the longer side is to be eased in; otherwise bring one of them to its length with `true-seam EDGE to LENGTH moving end`.",
      related: [{ message: "The side of front is drawn here." }, { message: "The side of back is drawn here." }],
    });
  });

  test("shorter", () => {
    expect(finding(sewn(397, 400))).toMatchObject({
      message: "The side of front is 3 mm shorter than the side of back.",
      hint: expect.stringMatching(/^Name the longer side first and say `ease 3 mm`/),
    });
  });

  test("not the ease that was said", () => {
    expect(finding(sewn(431, 400, { ease: 25 }))?.message).toBe(
      "The side of front is 31 mm longer than the side of back; the seam says 25 mm of ease.",
    );
    expect(finding(sewn(400, 400, { ease: 25 }))?.message).toBe(
      "The side of front is about as long as the side of back; the seam says 25 mm of ease.",
    );
  });

  test("both lengths where they agree", () => {
    expect(finding(sewn(400, 400.5))?.message).toBe("The side of front measures 400 mm, the side of back 400.5 mm.");
  });
});

test("the lists are laid end to end", () => {
  const [sleeve, back, front] = [
    rectangle("sleeve", 530, 600),
    rectangle("back", 250, 700),
    rectangle("front", 257, 700),
  ];
  const cap = seam([run(sleeve, "top")], [run(back, "top"), run(front, "top")], { ease: 25 });
  expect(judgementsOf(seamLength, garment([sleeve, back, front], { seams: [cap] }))).toMatchObject([
    {
      on: "sleeve.top with back.top, front.top",
      verdict: "error",
      found: 23,
      message:
        "The top of sleeve is 23 mm longer than the top of back and the top of front; the seam says 25 mm of ease.",
    },
  ]);
});

test("a seam that touches a piece with a failed line is not judged", () => {
  const of = sewn(500, 400);
  const pieces = new Map(of.pieces).set("back", { ...of.pieces.get("back")!, doubtful: true });
  expect(judgementsOf(seamLength, { ...of, pieces })).toEqual([]);
});
