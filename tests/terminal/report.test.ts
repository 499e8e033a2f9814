// The plain parts of reports: columns, wrapping, amounts, JSON text.
import { expect, test } from "vitest";
import { readAmount } from "../../editor/files/amount.ts";
import { differenceIn } from "../../kernel/report/amounts.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { columnsOf, readable } from "../../kernel/report/readable.ts";
import { lettersOf } from "../../kernel/report/said.ts";
import { aligned, amount, words } from "../../kernel/report/table.ts";
import { wrapped } from "../../kernel/report/wrapped.ts";

test("amounts stand with their decimal points, or their whole inches, under one another", () => {
  const cm = aligned([
    [words("hem"), amount("9 cm"), words("a")],
    [words("shoulder"), amount("104.27 cm"), words("b")],
  ]);
  expect(cm.map(lettersOf)).toEqual(["  hem         9 cm     a", "  shoulder  104.27 cm  b"]);
  const inches = aligned([
    [amount("12 3/8 in")],
    [amount("3/8 in")],
    [amount("9 in")],
    [amount("-1/2 in")],
    [amount("0.125 in")],
  ]);
  expect(inches.map(lettersOf)).toEqual(["  12 3/8 in", "     3/8 in", "   9 in", "    -1/2 in", "   0.125 in"]);
});

test("columns count wide letters twice and marks on a letter not at all", () => {
  // East Asian Wide in Unicode Standard Annex 11; U+0301 is a combining mark.
  expect([columnsOf("coat"), columnsOf("外套"), columnsOf("cafe\u0301")]).toEqual([4, 4, 4]);
  const lines = aligned([
    [words("外套"), words("x")],
    [words("back"), words("y")],
  ]).map(lettersOf);
  expect(lines).toEqual(["  外套  x", "  back  y"]);
});

test("signs that steer are replaced one for one", () => {
  expect(readable("a\u001b[31m\u202eb\tc")).toBe("a\ufffd[31m\ufffdb c");
});

test("a text is wrapped at its blanks, and a number keeps its unit", () => {
  expect(wrapped("hem 27 cm to 31 1/2 in more", 12)).toEqual(["hem 27 cm to", "31 1/2 in", "more"]);
  expect(wrapped("", 10)).toEqual([]);
});

test("differences are told as small as they are, and not at all below a pencil line", () => {
  expect([0.04, -0.04, 0.07, -0.3, 90, -15].map((mm) => differenceIn(mm, "cm"))).toEqual([
    "=",
    "=",
    "+0.07 mm",
    "-0.3 mm",
    "+9 cm",
    "-1.5 cm",
  ]);
  // 0.3 mm is 0.0118 in; 114.3 mm is 4 1/2 in.
  expect([0.3, 114.3].map((mm) => differenceIn(mm, "in"))).toEqual(["+0.012 in", "+4 1/2 in"]);
});

test("JSON keeps names that an object would trip over, and every digit", () => {
  const text = jsonText(
    new Map<string, number | number[]>([
      ["__proto__", 1 / 3],
      ["constructor", [1, -0]],
    ]),
  );
  expect(text).toBe('{ "__proto__": 0.3333333333333333, "constructor": [1, 0] }\n');
  expect(() => jsonText(Number.NaN)).toThrow();
});

test("an amount is one number as the language writes it, and nothing else", () => {
  // The international inch is 25.4 mm exactly.
  expect(readAmount("4 5/8 in")).toEqual({ kind: "length", value: expect.closeTo(4.625 * 25.4, 9) });
  expect(readAmount("-12cm")).toEqual({ kind: "length", value: -120 });
  expect(readAmount("50%")).toEqual({ kind: "number", value: 0.5 });
  for (const text of [
    "",
    "cm",
    "1 cm + 1 cm",
    "length(hem)",
    "5 cm # more",
    "5 cm\nlet b = 2",
    "5 cm 6 cm",
    "1e9 cm",
    '"5 cm"',
    "5 parsecs",
    "1/0 cm",
  ]) {
    expect(readAmount(text), text).toBeUndefined();
  }
});
