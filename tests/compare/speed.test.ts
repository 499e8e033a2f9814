// Comparing two garments of twenty pieces takes less than twice the time of working both.
import { expect, test } from "vitest";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { recipeText, workedAfresh } from "./compared.ts";

const copies = Array.from({ length: 9 }, (_, i) =>
  ["back", "front"]
    .map((piece) => `piece ${piece}-${i} = ${piece} {\n  extend-hem hem by ${i + 1} mm + extra\n  true-seam hem\n}\n`)
    .join(""),
).join("");

const garment = (flare: string): string => {
  const swing = recipeText("lobby-coat-swing.chalk").replace("flare  = 9 cm", `flare  = ${flare}`);
  // The new pieces stand above the seams, as a line uses only names from above it.
  return swing.replace("seam front.shoulder", `let extra = 0 mm\n${copies}seam front.shoulder`);
};

const timed = (work: () => void): number => {
  const start = performance.now();
  work();
  return performance.now() - start;
};

test("twenty pieces", () => {
  const [one, other] = [garment("9 cm"), garment("12 cm")];
  const rounds = Array.from({ length: 5 }, () => {
    let sides: ReturnType<typeof workedAfresh>[] = [];
    const working = timed(() => {
      sides = [workedAfresh(one), workedAfresh(other)];
    });
    expect(sides.map(({ garment: { pieces } }) => pieces.size)).toEqual([21, 21]);
    const comparing = timed(() => {
      expect(compareGarments(sides[0]!, sides[1]!).pieces.length).toBe(20);
    });
    return { working, comparing };
  });
  // The best of a few rounds: on a busy machine one of them may wait for others.
  const least = (of: (round: (typeof rounds)[number]) => number): number => Math.min(...rounds.map(of));
  expect(least(({ comparing }) => comparing)).toBeLessThan(2 * least(({ working }) => working));
});
