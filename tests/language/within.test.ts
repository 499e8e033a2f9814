// Walking a tree: nothing that stands in it is missed, and it comes in the order of the text. Source: a recipe read by eye.
import { expect, test } from "vitest";
import { expressionsWithin, linesWithin } from "../../grammar/within.ts";
import { parse } from "./told.ts";

const read = (text: string) => parse({ file: "test.chalk", text }).tree.lines;

test("lines of blocks and branches, in the order of the text", () => {
  const lines = read(`chalkline 1
piece a {
  repeat 2 as n {
    if n = 1 { point A = (1 cm, 0) } else if n = 2 {
      point B = (2 cm, 0)
    } else { point C = (3 cm, 0) }
  }
  point D = (0, 0)
}
let x = 1
`);
  expect(linesWithin(lines).map(({ verb, names }) => [verb.text, ...names.map(({ text }) => text)].join(" "))).toEqual([
    "chalkline",
    "piece a",
    "repeat",
    "if",
    "point A",
    "if",
    "point B",
    "else",
    "point C",
    "point D",
    "let x",
  ]);
});

const numbers = (text: string): string[] => {
  const all = linesWithin(read(text)).flatMap(expressionsWithin);
  return all.flatMap((each) => (each.kind === "number" ? [each.written] : []));
};

test.each([
  ["let a = -(1 + 2) * max(3, sqrt(4)) / 5", "1 2 3 4 5"],
  ["point A = (1 cm, 2 cm) right 3 cm toward (4 cm, 5 cm) 6 cm bearing 7 deg for 8 cm", "1 2 3 4 5 6 7 8"],
  ["point A = hem at 1 cm", "1"],
  ["point A = hem at end - 1 cm", "1"],
  ["point A = turned((1 cm, 2 cm)--(3 cm, 4 cm)).start", "1 2 3 4"],
  [
    "curve c = (1 cm, 2 cm) to (3 cm, 4 cm) through (5 cm, 6 cm) heading toward (7 cm, 8 cm), (9 cm, 10 cm) leaving up",
    "1 2 3 4 5 6 7 8 9 10",
  ],
  ["cut back 2 from shell", "2"],
  ["step s (length a = 1 cm, length b, angle c = 2 deg) {\n point A = (3 cm, 4 cm)\n}", "1 2 3 4"],
  ["size M { bust-girth = 92 cm, waist-girth = 72 cm }", "92 72"],
  ['use "a.chalk" as a { flare = 1 cm + 2 cm }', "1 2"],
  ["if not (1 = 2) { let a = 3 } else { let a = 4 }", "1 2 3 4"],
])("every number of %s", (text, expected) => {
  expect(numbers(text).join(" ")).toBe(expected);
});

test("a sum as long as a line may hold", () => {
  const terms = Array.from({ length: 200 }, (_, index) => `${index + 1}`);
  expect(numbers(`let a = ${terms.join(" + ")}`)).toEqual(terms);
});
