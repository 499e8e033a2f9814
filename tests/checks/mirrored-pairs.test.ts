// A piece that is sewn on both sides of the garment is cut for both.
import { expect, test } from "vitest";
import { workedText } from "../worked-recipe.ts";

/** Judgements of the check on a flap that is sewn to a front, both cut so often. */
const judged = (front: string, flap: string, more = "") =>
  workedText(`chalkline 1
units cm
fabric shell width 150 cm
piece front {
  line upper = (0, 0) to (14 cm, 0)
  line round = (14 cm, 0) to (0, 0) through (14 cm, 30 cm), (0, 30 cm)
  outline upper, round
  grain (7 cm, 4 cm) to (7 cm, 24 cm)
  allow upper, round by 1 cm
}
piece flap {
  line upper = (0, 0) to (14 cm, 0)
  line round = (14 cm, 0) to (0, 0) through (14 cm, 5 cm), (0, 5 cm)
  outline upper, round
  grain (7 cm, 1 cm) to (7 cm, 4 cm)
  allow upper, round by 1 cm
}
seam flap.upper with front.upper
cut front ${front} from shell
cut flap ${flap} from shell
${more}`).judgements.filter(({ check }) => check === "mirrored-pairs");

test.each([
  ["2", "1", "warning"],
  ["2", "3", "pass"],
  ["1", "1", "pass"],
])("fronts cut %s, flaps cut %s: %s", (front, flap, verdict) => {
  expect(judged(front, flap).find(({ on }) => on === "flap")).toMatchObject({ verdict });
});

test("an even number is a pair already, and layers may make it more", () => {
  expect(judged("2", "2")).toEqual([]);
  expect(judged("2", "4")).toEqual([]);
});

test("says how many are wanted", () => {
  expect(judged("2", "1")).toMatchObject([
    { on: "flap", found: 1, wanted: 2, hint: expect.stringContaining("cut flap 2 from shell") },
  ]);
});
