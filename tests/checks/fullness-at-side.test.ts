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
const judged = (lines: string) =>
  kernel(vocabulary)
    .work({ file: "test.chalk", text: `${block}piece panel = block {\n${lines}\n}\n` })
    .judgements.filter(({ check }) => check === "fullness-at-side")
    .map(({ on, verdict, found }) => `${on}: ${verdict}, ${found} %`);

test.each([
  ["all at the side", "  flare-side side to hem by 10 cm\n  true-seam hem", ["panel.hem: warning, 100 %"]],
  ["a little at the side", "  flare-side side to hem by 5.9 cm\n  true-seam hem", ["panel.hem: pass, 100 %"]],
  ["all inside", "  spread-from waist at 50% to hem by 10 cm\n  true-seam hem", ["panel.hem: pass, 0 %"]],
  // 7 of 14 cm at the side, the rest inside; the arc of the side is a little longer than its chord.
  [
    "half and half",
    "  spread-from waist at 50% to hem by 7.1 cm\n  flare-side side to hem by 7 cm",
    ["panel.hem: pass, 49 %"],
  ],
  [
    "more of it at the side",
    "  spread-from waist at 50% to hem by 3 cm\n  flare-side side to hem by 9 cm",
    ["panel.hem: warning, 75 %"],
  ],
  ["a corner moved out by hand", "  move corner to corner right 12 cm", ["panel.hem: warning, 100 %"]],
  ["a seam opened along its side", "  spread-from waist.end along side to hem by 8 cm", ["panel.hem: warning, 100 %"]],
  ["lengthened only", "  extend-hem hem by 10 cm", []],
  ["a fold opened along itself", "  spread-from waist.start along center to hem by 8 cm", ["panel.hem: pass, 0 %"]],
])("%s", (_, lines, verdicts) => {
  expect(judged(lines)).toEqual(verdicts);
});
