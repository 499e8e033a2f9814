// What every word of a recipe is, for colouring.
import { expect, test } from "vitest";
import { semanticTokens } from "../../../editor/assist/semantic-tokens.ts";
import { worked } from "./marked.ts";

/** "word:kind" for each word but the signs, with its modifiers. */
const told = (text: string): string[] => {
  const recipe = worked(text);
  return semanticTokens(recipe)
    .filter(({ kind }) => kind !== "sign")
    .map(({ from, to, kind, modifiers }) => [`${text.slice(from, to)}:${kind}`, ...modifiers].join("+"));
};

test("verbs, clause words, names, values, units, numbers, texts and comments", () => {
  expect(told('chalkline 1\nparam flare = 9 cm from 0 cm to 20 cm "opening" # wide')).toEqual([
    "chalkline:verb",
    "1:number",
    "param:verb",
    "flare:value+given",
    "9:number",
    "cm:unit",
    "from:clause",
    "0:number",
    "cm:unit",
    "to:clause",
    "20:number",
    "cm:unit",
    '"opening":text',
    "# wide:comment",
  ]);
});

test("edges, places and pieces are told apart where they are given and where they are used", () => {
  const words = told(
    "chalkline 1\npiece p {\n  point A = (0 cm, 0 cm)\n  line l = A to (3 cm, 0 cm)\n  notch l at 50%\n}\ncheck length(p.l) > 1 cm",
  );
  for (const word of [
    "p:piece+given",
    "A:place+given",
    "l:edge+given",
    "A:place",
    "at:word",
    "length:function",
    "p:piece",
    "l:edge",
  ])
    expect(words).toContain(word);
});

test("a line that cannot be read is coloured as far as it goes", () => {
  expect(told("chalkline 1\npiece p {\n  point A = (0 cm, 0 cm)\n  line l = A to to\n}").slice(-5)).toEqual([
    "line:verb",
    "l:edge+given",
    "A:place",
    "to:clause",
    "to:name+unknown",
  ]);
});

test("words that nobody knows are marked, and steps of the recipe's own", () => {
  const words = told(
    "chalkline 1\nstep trimmed (edge bottom) {\n  mark bottom as hem\n}\npiece p {\n  trimmed bottom C\n  flatten C\n}",
  );
  for (const word of [
    "trimmed:verb+given",
    "bottom:parameter+given",
    "bottom:edge",
    "trimmed:verb+own",
    "C:name+unknown",
    "flatten:verb+unknown",
  ])
    expect(words).toContain(word);
});

test("what a line took out of a piece keeps its colour above that line", () => {
  const text =
    "chalkline 1\npiece p {\n  line a = (0 cm, 0 cm) to (3 cm, 0 cm)\n  line b = a.end to (5 cm, 0 cm)\n  join c = a, b\n}";
  expect(told(text).filter((word) => word === "a:edge" || word === "b:edge")).toEqual(["a:edge", "a:edge", "b:edge"]);
});

test("words stand in order and do not overlap, nor go over the end of a line", () => {
  const text = 'chalkline 1\nrecipe "a\npiece p {\n  outline a,\n    b }\n} } "';
  const tokens = semanticTokens(worked(text));
  tokens.forEach(({ from, to }, index) => {
    expect(from).toBeLessThan(to);
    expect(text.slice(from, to)).not.toContain("\n");
    if (index > 0) expect(tokens[index - 1]!.to).toBeLessThanOrEqual(from);
  });
});
