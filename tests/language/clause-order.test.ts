// The clauses of a line may stand in any order: whichever it is, the same garment comes of it, and tidying settles it.
import { describe, expect, test } from "vitest";
import { tidy } from "../../grammar/print.ts";
import type { Line, Stretch } from "../../grammar/tree.ts";
import { linesWithin } from "../../grammar/within.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { drafted, parse } from "./told.ts";
import { comesTo } from "./without-places.ts";

const orders = <T>(things: readonly T[]): T[][] =>
  things.length < 2
    ? [[...things]]
    : things.flatMap((first, index) =>
        orders(things.filter((_, other) => other !== index)).map((rest) => [first, ...rest]),
      );

/** The text with the clauses of one line in every other order. */
const reordered = (text: string, { clauses }: Line): string[] => {
  const [start, end] = [Math.min(...clauses.map(({ from }) => from)), Math.max(...clauses.map(({ to }) => to))];
  const written = ({ from, to }: Stretch): string => text.slice(from, to);
  return orders(clauses)
    .slice(1, 7)
    .map((order) => text.slice(0, start) + order.map(written).join(" ") + text.slice(end));
};

const recipes = [
  ...vocabulary.steps.map(({ name, example }) => [name, example] as const),
  [
    "statements",
    `chalkline 1
fabric shell "drill" width 150 cm weight 260 gsm bending-length 3 cm shrink-length 3% shrink-width 1% one-way
measure hip-girth = 96 cm from 70 cm to 160 cm
param flare = 9 cm from 0 cm to 20 cm
check hip-girth > 90 cm and flare < 20 cm because "it must"
check hip-girth = 96 cm within 1 mm because "it must"
step finish (length wide = 3 cm, angle turn = 0, place from-here) { drill from-here right wide }
piece a {
  finish wide 4 cm turn 10 deg from-here (0, 0)
  solve h from 1 cm to 9 cm until h = 5 cm { point tip = (h, h) }
  curve c = (0, 0) to (9 cm, 0) through (3 cm, 1 cm) heading right, (6 cm, 2 cm) leaving up arriving down tension 1.2
}`,
  ] as const,
];

describe.each(recipes)("%s", (_, text) => {
  const { tree, forms } = parse({ file: "test.chalk", text });
  const several = linesWithin(tree.lines).filter(({ clauses }) => clauses.length > 1);

  test("gives the same in any order", () => {
    const expected = comesTo(drafted(text));
    for (const line of several) {
      for (const other of reordered(text, line)) {
        expect(other).not.toBe(text);
        expect(comesTo(drafted(other)), other).toEqual(expected);
        const read = parse({ file: "test.chalk", text: other });
        expect(tidy(read.tree, read.forms)).toBe(tidy(tree, forms));
      }
    }
  });
});

test("there are lines with several clauses to try", () => {
  const count = recipes
    .flatMap(([, text]) => linesWithin(parse({ file: "test.chalk", text }).tree.lines))
    .filter(({ clauses }) => clauses.length > 1).length;
  expect(count).toBeGreaterThan(20);
});
