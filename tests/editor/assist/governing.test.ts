// Which number a pull at a spot turns: by geometry that can be worked out by hand.
import { expect, test } from "vitest";
import { dials } from "../../../editor/assist/dials.ts";
import { type Governing, governing, type Spot, spotOn } from "../../../editor/assist/governing.ts";
import { type WorkedText, workedText } from "../../../editor/assist/worked-text.ts";
import { kernel } from "../../../kernel/kernel.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";

const chalk = kernel(vocabulary);

// A rectangle of 20 cm by 50 cm, slashed from the middle of its waist and lengthened.
const recipe = `chalkline 1
units cm
param flare = 6 cm from 0 cm to 20 cm
piece panel {
  point A = (0, 0)
  point B = A right 20 cm
  point C = B down 50 cm
  point D = A down 50 cm
  line waist = A to B
  line side = B to C
  line hem = C to D
  line center = D to A
  outline waist, side, hem, center
  spread-from waist at 50% to hem by flare
  extend-hem hem by 4 cm
}
`;

const worked: WorkedText = workedText(chalk, { file: "panel.chalk", text: recipe });
const found = (spot: Spot, on: WorkedText = worked): { label: string; slope: Governing["slope"] }[] => {
  const all = dials(on);
  return governing(on, spot).map(({ dial, slope }) => ({ label: all[dial]!.label, slope }));
};

test("the spots are where the recipe puts them", () => {
  expect(worked.outcome.findings.filter(({ severity }) => severity === "error")).toEqual([]);
  expect(spotOn(worked.outcome.garment, { piece: "panel", edge: "waist", part: 0.5 })).toEqual({ x: 100, y: 0 });
  expect(spotOn(worked.outcome.garment, { piece: "panel", place: "D" })).toMatchObject({ x: 0 });
  expect(spotOn(worked.outcome.garment, { piece: "nowhere", place: "D" })).toBeUndefined();
});

test("a place goes 10 mm for every cm of the number that drew it, the way the number points", () => {
  const plain = `${recipe.slice(0, recipe.indexOf("  spread-from"))}}\n`;
  const drafted = workedText(chalk, { file: "panel.chalk", text: plain });
  const slopes = new Map(found({ piece: "panel", place: "D" }, drafted).map(({ label, slope }) => [label, slope]));
  const down = slopes.get("point D");
  expect(down?.x).toBeCloseTo(0, 6);
  expect(down?.y).toBeCloseTo(10, 6);
});

test("the hem's corner is moved by the opening sideways and by the lengthening downward", () => {
  const labels = found({ piece: "panel", edge: "hem", part: 0 });
  const flare = labels.find(({ label }) => label === "flare");
  const longer = labels.find(({ label }) => label === "extend-hem by");
  // The part beyond the slash turns about the middle of the waist, 500 mm above the hem: for a small angle the corner, 100 mm
  // from the slash, goes nearly as far sideways as the hem is opened, and a fifth of that up.
  expect(flare?.slope.x).toBeGreaterThan(9);
  expect(flare?.slope.x).toBeLessThan(12);
  expect(flare?.slope.y).toBeLessThan(0);
  expect(longer?.slope.y).toBeGreaterThan(9);
});

test("what does not move a spot does not govern it", () => {
  expect(found({ piece: "panel", edge: "waist", part: 0 }).map(({ label }) => label)).not.toContain("extend-hem by");
  expect(found({ piece: "panel", place: "nowhere" })).toEqual([]);
});
