// Darts and pleats on an edge that runs on across a fold or a joint turn with the edge.
import { expect, test } from "vitest";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import { workedText } from "../worked-recipe.ts";

const half = (waist: string, sewn: string): string => `chalkline 1
units cm
piece half {
  line waist = ${waist}
  line side = (20 cm, 0) to (20 cm, 60 cm)
  line hem = (0, 60 cm) to (20 cm, 60 cm)
  line center = (0, 0) to (0, 60 cm)
  outline center, waist, side, hem
  mark center as fold
  ${sewn}
}
piece whole = half {
  unfold center
}
`;

const whole = (waist: string, sewn: string) => {
  const { findings, garment } = workedText(half(waist, sewn));
  expect(findings).toEqual([]);
  return garment.pieces.get("whole")!;
};

test.each(["(0, 0) to (20 cm, 0)", "(20 cm, 0) to (0, 0)"])("a whole waist loses both darts: %s", (waist) => {
  // Twice 20 cm, less two darts of 2 cm (plain sums).
  expect(sewnLengthOf(whole(waist, "dart d = waist at 50% width 2 cm long 10 cm"), "waist")).toBeCloseTo(360, 0);
});

test("pleats of both halves lie as mirror images: one toward each end", () => {
  const { takeUps } = whole("(0, 0) to (20 cm, 0)", "pleat waist in 1 deep 2 cm as knife facing start");
  expect(takeUps.map(({ laid }) => laid).sort()).toEqual(["end", "start"]);
});
