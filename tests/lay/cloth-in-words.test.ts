import { expect, test } from "vitest";
import { boughtInWords } from "../../kernel/cloth/lay/cloth-in-words.ts";
import { layPrint } from "../../kernel/cloth/lay/lay-print.ts";

test("a length is asked for in a shop by the eighth of a yard or in metres", () => {
  // A yard is 914.4 mm, and an eighth of it 114.3.
  expect(boughtInWords(914.4, "in")).toBe("1 yd");
  expect(boughtInWords(114.3, "in")).toBe("1/8 yd");
  expect(boughtInWords(1143, "in")).toBe("1 1/4 yd");
  expect(boughtInWords(0, "in")).toBe("0 yd");
  expect(boughtInWords(1900, "cm")).toBe("1.9 m");
  expect(boughtInWords(2000, "mm")).toBe("2 m");
});

test("a long cloth is printed on pages of 5 m at most, which together show all of it", () => {
  const paper = { left: -15, top: -15, right: 12_000, bottom: 1500 };
  const { pages } = layPrint({ title: "a long cloth", words: "", paper, groups: [] });
  expect(pages).toHaveLength(3);
  expect(pages.map(({ width }) => width).every((width) => width <= 5000)).toBe(true);
  expect(pages.reduce((sum, { width }) => sum + width, 0)).toBeCloseTo(12_015, 6);
  expect(pages.map(({ window }) => window!.of.left)).toEqual([-15, 3990, 7995]);
});
