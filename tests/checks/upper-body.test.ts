// What an experienced cutter sees on the upper body: dropped shoulders, necks, balance, and the ease of a cap.
import { describe, expect, test } from "vitest";
import { shoulderSeams } from "../../kernel/shoulder-seams.ts";
import type { Judged } from "../../kernel/working.ts";
import { workedRecipe, workedText } from "../worked-recipe.ts";

const judged = (text: string, check: string): Judged[] =>
  workedText(`chalkline 1\nunits mm\n${text}`).judgements.filter(
    ({ check: by, on }) => by === check && !on.startsWith("loose."),
  );

/** The loose block of R88, its two halves altered by the same lines or by lines of their own. */
const bodice = (back: string, front = back, more = ""): string => `use "blocks/loose-bodice.chalk" as loose
piece back = loose.back {
${back}
}
piece front = loose.front {
${front}
}
seam front.shoulder with back.shoulder
seam front.side with back.side
${more}`;

describe("a dropped shoulder", () => {
  const drop = (by: number, lowering: number): string =>
    bodice(`  drop-shoulder shoulder by ${by} mm lowering ${lowering} mm out 10 mm`);
  const verdicts = (by: number, lowering: number): string[] =>
    judged(drop(by, lowering), "dropped-shoulder-armhole").map(({ on, verdict }) => `${on} ${verdict}`);

  test("is no concern of a set-in armhole", () => expect(verdicts(0, 0)).toEqual([]));
  test("with the underarm lowered as the handbook lowers it passes", () => {
    // Source: trade handbook 4.12: dropped by 60, the underarm 40 lower and 10 further out.
    expect(verdicts(60, 40)).toEqual(["back.armscye pass", "front.armscye pass"]);
  });
  test("with the underarm where it was is warned of, and told how far it has to go", () => {
    const findings = judged(drop(70, 0), "dropped-shoulder-armhole");
    expect(findings.map(({ verdict }) => verdict)).toEqual(["warning", "warning"]);
    for (const { found, wanted, hint } of findings) {
      const short = Number(wanted) - Number(found);
      expect(short).toBeGreaterThan(0);
      // Lowered by what the hint says, rounded up, it passes.
      expect(hint).toMatch(/^Lower the underarm by [\d.]+ mm or more/);
    }
    const most = Math.max(...findings.map(({ found, wanted }) => Number(wanted) - Number(found)));
    expect(verdicts(70, Math.ceil(most))).toEqual(["back.armscye pass", "front.armscye pass"]);
  });
  test("is judged in every size alike: the block of bust 104 dropped by 75", () => {
    const larger = (lowering: number) =>
      workedText(`chalkline 1\nunits mm\n${drop(75, lowering)}`, { size: "B104" }).judgements.filter(
        ({ check }) => check === "dropped-shoulder-armhole",
      );
    expect(larger(50).map(({ verdict }) => verdict)).toEqual(["pass", "pass"]);
    expect(larger(0).map(({ verdict }) => verdict)).toEqual(["warning", "warning"]);
  });
});

describe("the neck of a front", () => {
  const neck = (by: number): Judged[] => judged(bodice("", `  lower-neck neck by ${by} mm`), "neck-depths");
  // The block's front neck lies 59.33 below its nape (check value 55); 50 to 75 is usual (trade handbook 4.15).
  test.each([
    [0, 59.33, "pass"],
    [-9.3, 50.03, "pass"],
    [-9.4, 49.93, "warning"],
    [15.6, 74.93, "pass"],
    [15.7, 75.03, "warning"],
    [150, 209.33, "warning"],
  ])("lowered by %d lies %d below the nape: %s", (by, below, verdict) => {
    const [finding, ...others] = neck(by);
    expect(others).toEqual([]);
    expect(finding?.verdict).toBe(verdict);
    expect(Math.abs(Number(finding?.found) - below)).toBeLessThan(0.01);
  });
  test("as high as that of the back is found whichever piece the seam names first", () => {
    const text = `use "blocks/loose-bodice.chalk" as loose
piece one = loose.back { }
piece other = loose.back { }
seam one.shoulder with other.shoulder`;
    expect(judged(text, "neck-depths").map(({ found, verdict }) => [Number(found), verdict])).toEqual([[0, "warning"]]);
  });
  test("carried up into a cascade is not judged", () => {
    expect(judged(bodice("", "  cascade-front fall = center"), "neck-depths")).toEqual([]);
  });
});

describe("the balance of front and back", () => {
  const balance = (lines: string): Judged[] => judged(bodice("", lines), "balance");
  test("of the block is level", () => {
    expect(balance("").map(({ found, verdict }) => [Number(found).toFixed(6), verdict])).toEqual([
      ["0.000000", "pass"],
    ]);
  });
  // Only the front gets longer or shorter here, from center to side, as if the back allowed it.
  test.each([
    [-9.9, "pass"],
    [-10.1, "warning"],
    [24.9, "pass"],
    [25.1, "warning"],
  ])("with the front longer by %d: %s", (by, verdict) => {
    const [finding] = balance(`  extend-hem hem by ${by} mm`);
    expect(finding?.verdict).toBe(verdict);
    expect(Number(finding?.found)).toBeCloseTo(by, 6);
    if (verdict === "warning") expect(finding?.message).toContain(by < 0 ? "its hem kicks up" : "its hem dips");
  });
  test("lets a front be longer by what its bust dart takes up", () => {
    const [finding] = balance(`  point bust-point = (92.5 mm, 240.96 mm)
  fuller-bust bust-dart = bust-point by 36 mm about armscye at 55% to side at 60 mm`);
    expect(Number(finding?.found)).toBeGreaterThan(25);
    expect(finding?.verdict).toBe("pass");
  });
  test("leaves alone what is meant to be uneven", () => {
    expect(balance("  extend-hem hem by 300 mm")).toEqual([]);
  });
});

describe("the ease of a cap", () => {
  const sewn = (ease: number, weight: string, arm = 50): string =>
    `fabric shell "cloth" width 150 cm${weight}
${bodice("")}
use "blocks/set-in-sleeve.chalk" as set-in {
  armhole-back = length(back.armscye)
  armhole-front = length(front.armscye)
  cap-ease = ${ease} mm
  arm-ease = ${arm} mm
}
piece sleeve = set-in.sleeve { }
seam sleeve.cap with back.armscye, front.armscye ease ${ease} mm
seam sleeve.under-front with sleeve.under-back
cut sleeve 2 from shell
`;
  // Source: trade handbook 2.3: woven dress 20 to 38, tailored wool 35 to 60, shirt sleeve or dropped shoulder 0 to 10.
  test.each([
    [19, " weight 200 gsm", "warning"],
    [21, " weight 200 gsm", "pass"],
    [37, " weight 200 gsm", "pass"],
    [39, " weight 200 gsm", "warning"],
    [34, " weight 340 gsm", "warning"],
    [36, " weight 340 gsm", "pass"],
    [59, " weight 340 gsm", "pass"],
    [25, " weight 270 gsm", "pass"],
    [55, " weight 270 gsm", "pass"],
    [25, "", "pass"],
    [15, "", "warning"],
  ])("of %d in cloth%s: %s", (ease, weight, verdict) => {
    const [finding, ...others] = judged(sewn(ease, weight), "cap-ease");
    expect(others).toEqual([]);
    expect(finding?.verdict).toBe(verdict);
    expect(Number(finding?.found)).toBeCloseTo(ease, 2);
  });
  test.each([
    [5, "pass"],
    [11, "warning"],
  ])("of %d in a flat cap: %s", (ease, verdict) => {
    // The cap of a sleeve 470 wide is less than half as high as its armhole.
    const [finding] = judged(sewn(ease, " weight 200 gsm", 190), "cap-ease");
    expect(finding?.verdict).toBe(verdict);
    expect(finding?.message).toContain("a flat cap");
  });
  test("is not asked of a collar", () => {
    const collar = `${bodice("")}
piece band {
  let long = length(back.neck) + length(front.neck)
  line lower  = (0, 0) to (long, 0)
  line tip    = (long, 0) to (long, -40 mm)
  line upper  = (0, -40 mm) to (long, -40 mm)
  line center = (0, -40 mm) to (0, 0)
  outline lower, tip, upper, center
}
seam band.lower with back.neck, turned(front.neck)
`;
    expect(judged(collar, "cap-ease")).toEqual([]);
  });
});

test("shoulders are found by how the pieces lie, and a yoke seam or a side seam is none", () => {
  const { garment } = workedRecipe("lobby-coat-swing.chalk");
  const found = shoulderSeams(garment);
  expect(found.map(({ front, back }) => [front.piece.name, back.piece.name])).toEqual([["front", "back"]]);
  const [{ front, back }] = found as [(typeof found)[number]];
  expect(front.neck.name).toBe("neck");
  expect(front.center.name).toBe("opening");
  expect(back.armhole.side).toBe("side");
  expect(shoulderSeams(workedRecipe("circle-skirt.chalk").garment)).toEqual([]);
});
