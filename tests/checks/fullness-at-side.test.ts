// Where the fullness of an altered piece sits: worked with whole recipes, since it is judged by what was done to a piece.
import { expect, test } from "vitest";
import { kernel } from "../../kernel/kernel.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";

const block = `chalkline 1
units cm
piece block {
  point corner = (24 cm, 60 cm)
  line waist  = (0, 0) to (24 cm, 0)
  line side   = (24 cm, 0) to corner
  line hem    = (0, 60 cm) to corner
  line center = (0, 0) to (0, 60 cm)
  outline waist, side, hem, center
  mark hem as hem
  mark center as fold
}
`;
const judged = (lines: string) => {
  const { judgements, garment } = kernel(vocabulary).work({
    file: "test.chalk",
    text: `${block}piece panel = block {\n${lines}\n}\n`,
  });
  expect(garment.pieces.get("panel")!.doubtful).toBe(false);
  return judgements.filter(({ check, on }) => check === "fullness-at-side" && on === "panel.hem");
};

// Shares of the widths that were opened; arcs and squared ends make the cloth of some of them longer by a percent or two.
test.each([
  ["all at the side", "  flare-side side to hem by 10 cm\n  true-seam hem", "warning", 100],
  ["a little at the side", "  flare-side side to hem by 5.9 cm\n  true-seam hem", "pass", 100],
  ["all inside", "  spread-from waist at 50% to hem by 10 cm\n  true-seam hem", "pass", 0],
  ["half and half", "  spread-from waist at 50% to hem by 7.5 cm\n  flare-side side to hem by 7 cm", "pass", 48],
  [
    "more of it at the side",
    "  spread-from waist at 50% to hem by 3 cm\n  flare-side side to hem by 9 cm",
    "warning",
    75,
  ],
  ["just inside the side", "  spread-from waist at 95% to hem by 10 cm\n  true-seam hem", "warning", 100],
  ["a corner moved out by hand", "  move corner to corner right 12 cm", "warning", 100],
  ["a seam opened along its side", "  spread-from waist.end along side to hem by 8 cm", "warning", 100],
  ["a fold opened along itself", "  spread-from waist.start along center to hem by 8 cm", "pass", 0],
] as const)("%s", (_, lines, verdict, share) => {
  const [judgement, ...others] = judged(lines);
  expect(others).toEqual([]);
  expect(judgement!.verdict).toBe(verdict);
  expect(Math.abs(Number(judgement!.found) - share)).toBeLessThanOrEqual(2);
});

test.each([
  ["lengthened only", "  extend-hem hem by 10 cm"],
  // As wide at the waist as at the hem: nothing of it hangs in folds.
  ["widened all the way down", "  spread-apart waist at 50% to hem near 6 cm far 6 cm"],
])("a piece that is %s has no fullness to judge", (_, lines) => {
  expect(judged(lines)).toEqual([]);
});
