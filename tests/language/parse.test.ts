// Reading and working never throw, whatever stands in a recipe, and every finding points into the text.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkRules } from "../../grammar/line-parser.ts";
import { checkPatterns } from "../../grammar/tokens.ts";
import { readable } from "./recipe-texts.ts";
import { drafted, parse } from "./told.ts";

test("chevrotain finds nothing wrong with the patterns and the rules", () => {
  expect(checkPatterns).not.toThrow();
  expect(checkRules).not.toThrow();
});

const seeded = { seed: 20_240_601 };

const pointsIntoText = (text: string): void => {
  const { findings } = drafted(text);
  const { diagnostics } = parse({ file: "test.chalk", text });
  for (const { where, message, hint, fix } of [...findings, ...diagnostics]) {
    expect(message).not.toBe("");
    expect(`${message} ${hint ?? ""}`).not.toMatch(/undefined|NaN|Infinity|\[object/);
    for (const { file, from, to, line } of [where, ...(fix ? [fix.where] : [])]) {
      expect(file).toBe("test.chalk");
      expect(from).toBeGreaterThanOrEqual(0);
      expect(to).toBeGreaterThanOrEqual(from);
      expect(to).toBeLessThanOrEqual(text.length);
      expect(line).toBe(text.slice(0, from).split("\n").length);
    }
  }
};

test("of any characters", () => {
  fc.assert(fc.property(fc.string({ unit: "binary", maxLength: 300 }), pointsIntoText), { ...seeded, numRuns: 300 });
  fc.assert(fc.property(fc.string({ unit: "grapheme", maxLength: 300 }), pointsIntoText), { ...seeded, numRuns: 300 });
});

test("of any bytes", () => {
  const bytes = fc.uint8Array({ maxLength: 400 }).map((array) => Buffer.from(array).toString("latin1"));
  fc.assert(fc.property(bytes, pointsIntoText), { ...seeded, numRuns: 300 });
});

const words =
  'let param measure piece point line curve arc join outline mark allow notch grain solve repeat if else step use size base fabric seam cut check accept A B hem neck = ( ) { } , . -- + - * / < > <= >= <> and or not at toward left right up down bearing for end 3 1/2 50% cm mm in deg "x" # \n \n as to through leaving arriving with from by until because within start pi length( meet('.split(
    " ",
  );

test("of the words of the language in any order", () => {
  const text = fc
    .array(fc.constantFrom(...words), { maxLength: 60 })
    .map((list) => `chalkline 1\npiece p {\n${list.join(" ")}`);
  fc.assert(fc.property(text, pointsIntoText), { ...seeded, numRuns: 1500 });
});

describe("of a recipe that somebody slipped in", () => {
  const tokens = (text: string): string[] => text.match(/\n|[ \t]+|"[^"\n]*"|[\p{L}\d-]+|./gu) ?? [];
  const slip = fc.record({
    recipe: fc.nat(),
    at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
    other: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
    kind: fc.constantFrom("drop", "double", "swap", "replace", "cut", "char"),
    word: fc.constantFrom(...words),
  });

  test("a word dropped, doubled, swapped, replaced; the rest cut off", () => {
    fc.assert(
      fc.property(fc.array(slip, { minLength: 1, maxLength: 3 }), (slips) => {
        const { text } = readable[slips[0]!.recipe % readable.length]!;
        let list = tokens(text.slice(0, 6000));
        for (const { at, other, kind, word } of slips) {
          const [index, second] = [Math.floor(at * list.length), Math.floor(other * list.length)];
          const token = list[index] ?? "";
          if (kind === "drop") list.splice(index, 1);
          if (kind === "double") list.splice(index, 0, token);
          if (kind === "swap") [list[index], list[second]] = [list[second] ?? "", token];
          if (kind === "replace") list[index] = word;
          if (kind === "cut") list = list.slice(0, index);
          if (kind === "char") list[index] = token.slice(1);
        }
        pointsIntoText(list.join(""));
      }),
      { ...seeded, numRuns: 400 },
    );
  });
});
