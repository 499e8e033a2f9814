// The outline of a recipe.
import { expect, test } from "vitest";
import { type OutlineSymbol, symbols } from "../../../editor/assist/symbols.ts";
import { worked } from "./marked.ts";

const outline = (list: readonly OutlineSymbol[], indent = ""): string[] =>
  list.flatMap(({ name, kind, detail, children }) => [
    `${indent}${kind} ${name}${detail === "" ? "" : `: ${detail}`}`,
    ...outline(children, `${indent}  `),
  ]);

test("pieces hold what is drawn in them, blocks within them too", () => {
  const text = `chalkline 1
units cm
measure bust-girth = 92 cm
step finished () {
}
piece p {
  point A = (0 cm, 0 cm)
  line top = A to (20 cm, 0 cm)
  if bust-girth > 1 cm {
    line inner = A to (20 cm, 10 cm)
  }
}
seam p.top with p.top
cut p 1
check length(p.top) >
  1 cm`;
  expect(outline(symbols(worked(text)))).toEqual([
    "measure bust-girth: 92 cm",
    "step finished",
    "piece p",
    "  place A: (0 cm, 0 cm)",
    "  edge top: 20 cm",
    "  edge inner",
    "seam p.top with p.top",
    "cut p 1",
    "check length(p.top) > 1 cm",
  ]);
});

test("a piece tells where it is copied from", () => {
  const text = 'chalkline 1\nuse "blocks/straight-coat.chalk" as straight\npiece back = straight.back {\n}';
  expect(outline(symbols(worked(text)))).toEqual([
    "use straight: with back, front, sleeve, bust-girth, …",
    "piece back: from straight.back",
  ]);
});

test("a name lies within the whole, and the whole within the text, also where a block is not closed", () => {
  const text = "chalkline 1\npiece p {\n  point A = (0 cm, 0 cm)\n  solve h from";
  const visit = (list: readonly OutlineSymbol[]): void => {
    for (const { name, from, to, nameFrom, nameTo, children } of list) {
      expect(text.slice(nameFrom, nameTo)).toBe(name);
      expect(from <= nameFrom && nameTo <= to && to <= text.length).toBe(true);
      visit(children);
    }
  };
  visit(symbols(worked(text)));
  expect(symbols(worked(text))).toHaveLength(1);
});
