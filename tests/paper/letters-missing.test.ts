// Letters that a print cannot set are told where the recipe writes them.
import { expect, test } from "vitest";
import { sourceText } from "../../grammar/source.ts";
import { lettersMissing } from "../../kernel/lettering/letters-missing.ts";
import { chalkline } from "../worked-recipe.ts";

const text = `chalkline 1
# 前 stands in this comment, which nobody prints.
recipe "Lobby 前 coat"
units cm
fabric 布 "wool" width 150 cm
piece flap-名 {
  line top   = (0, 0) to (15 cm, 0)
  line round = (15 cm, 0) to (0, 0) through (15 cm, 18 cm), (0, 18 cm)
  outline top, round
  label "right של side"
}
piece other = flap-名 {
  label "straße"
}
cut other 2 from 布
`;

const told = (characters: readonly string[]) => {
  const { garment } = chalkline.work({ file: "coat.chalk", text });
  return lettersMissing(characters, garment, new Map([["coat.chalk", sourceText(text)]]));
};

const stretches = (characters: readonly string[]): [number, string][] =>
  told(characters).findings.map(({ where }) => [where.line, text.slice(where.from, where.to)]);

test("in the title, in a piece's name, in a label, once, however many pieces have it, and in an order", () => {
  expect(stretches(["前"])).toEqual([[3, "前"]]);
  expect(stretches(["名"])).toEqual([[6, "名"]]);
  // Both letters of the word in one finding, though two pieces have the label.
  expect(stretches(["ש", "ל"])).toEqual([[10, "של"]]);
  expect(stretches(["布"])).toEqual([[15, "布"]]);
});

test("a small letter is told where only its capital is missing", () => {
  // Unicode SpecialCasing: the capital of ß is SS, and labels' own words are not set in capitals, names are.
  expect(stretches(["Å"])).toEqual([]);
  expect(told(["Å"]).elsewhere).toEqual(["Å"]);
  const capital = chalkline.work({ file: "a.chalk", text: text.replaceAll("名", "å") });
  const texts = new Map([["a.chalk", sourceText(text.replaceAll("名", "å"))]]);
  expect(lettersMissing(["Å"], capital.garment, texts).findings.map(({ where }) => where.line)).toEqual([6]);
});

test("each as its number, with what to do, and what the recipe does not say is left to a note", () => {
  const { findings, elsewhere } = told(["前", "ש", "猫"]);
  expect(elsewhere).toEqual(["猫"]);
  expect(findings.map(({ code, severity }) => `${severity} ${code}`)).toEqual([
    "warning letter-missing",
    "warning letter-missing",
  ]);
  // Unicode code charts: U+524D CJK UNIFIED IDEOGRAPH-524D, U+05E9 HEBREW LETTER SHIN.
  expect(findings[0]!.message).toContain("前 as U+524D");
  expect(findings[1]!.message).toContain("right to left");
  expect(findings[1]!.message).toContain("ש as U+05E9");
});
