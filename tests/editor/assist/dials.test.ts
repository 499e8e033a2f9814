// Dials: which numbers of a text can be turned, how far, and how they are written when they are.
import { expect, test } from "vitest";
import { dials, dialText } from "../../../editor/assist/dials.ts";
import { edited } from "../../../editor/assist/text-edit.ts";
import { workedText } from "../../../editor/assist/worked-text.ts";
import { kernel } from "../../../kernel/kernel.ts";
import { vocabulary } from "../../../kernel/vocabulary.ts";

const chalk = kernel(vocabulary);
const dialsOf = (text: string) => dials(workedText(chalk, { file: "panel.chalk", text }));

const recipe = `chalkline 1
units cm
param flare = 9 cm from 2 cm to 20 cm "how far it swings"
param turns = 1/2 in from 0 in to 2 in
piece panel {
  point A = (0, 0)
  point B = A right 20 cm
  line waist = A to B
  point M = waist at 50%
}
`;

test("a param's dial goes as far as its range says, in the unit of its number, and carries what is said of it", () => {
  const [flare, turns] = dialsOf(recipe);
  expect(flare).toMatchObject({
    label: "flare",
    note: "how far it swings",
    isParam: true,
    value: 9,
    unit: "cm",
    least: 2,
    most: 20,
    line: 3,
  });
  expect(turns).toMatchObject({ label: "turns", value: 0.5, unit: "in", least: 0, most: 2, line: 4 });
});

test("the ends of a range are no dials of their own; every other number is, with the words before it and its piece", () => {
  const found = dialsOf(recipe).map(({ label, value, unit, piece }) => [label, value, unit, piece]);
  expect(found).toEqual([
    ["flare", 9, "cm", undefined],
    ["turns", 0.5, "in", undefined],
    ["point A", 0, "", "panel"],
    ["point A", 0, "", "panel"],
    ["point B", 20, "cm", "panel"],
    ["point M", 50, "%", "panel"],
  ]);
});

test("a dial's stretch of the text is its number and unit, and nothing else", () => {
  expect(dialsOf(recipe).map(({ from, to }) => recipe.slice(from, to))).toEqual([
    "9 cm",
    "1/2 in",
    "0",
    "0",
    "20 cm",
    "50%",
  ]);
});

test("a turned number keeps its unit, the space before it, and fractions where it had one", () => {
  const turned = (index: number, value: number): string => {
    const dial = dialsOf(recipe)[index]!;
    return dialText(recipe, dial, value);
  };
  expect(turned(0, 12.5)).toBe("12.5 cm");
  expect(turned(1, 1.375)).toBe("1 3/8 in");
  expect(turned(1, 2)).toBe("2 in");
  expect(turned(1, 0.3)).toBe("0.3 in");
  expect(turned(5, 40)).toBe("40%");
  expect(dialText("a 9cm b", { from: 2, to: 5, unit: "cm" }, 10)).toBe("10cm");
});

test("every dial of every text that it writes is read back with the value it was turned to", () => {
  dialsOf(recipe).forEach((dial, index) => {
    const value = dial.value + dial.stride;
    const text = edited(recipe, [{ from: dial.from, to: dial.to, text: dialText(recipe, dial, value) }]);
    expect(dialsOf(text)[index]!.value).toBeCloseTo(value, 9);
  });
});

test("a broken text has the dials of the lines that can be read", () => {
  expect(dialsOf(recipe.replace("right 20 cm", "right 20")).map(({ label }) => label)).toContain("flare");
  expect(dialsOf("")).toEqual([]);
});
