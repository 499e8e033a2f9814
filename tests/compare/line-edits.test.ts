// Line edits: they lead from one text to the other, and no fewer lines could.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type LineEdit, lineEdits, withoutEdit } from "../../kernel/compare/line-edits.ts";

const text = fc.array(fc.constantFrom("a", "b", "c", "", "d e"), { maxLength: 14 }).map((lines) => lines.join("\n"));

test("taking all edits back, the last first, gives the text of before", () => {
  fc.assert(
    fc.property(text, text, (before, after) => {
      const back = lineEdits(before, after).reduceRight(withoutEdit, after);
      expect(back).toBe(before);
    }),
  );
});

test("no way is shorter: lines put in and taken out are all but twice those of the longest common subsequence", () => {
  fc.assert(
    fc.property(text, text, (before, after) => {
      const size = (edits: readonly LineEdit[]): number =>
        edits.reduce((sum, { was, is }) => sum + was.length + is.length, 0);
      const [was, is] = [before.split("\n"), after.split("\n")];
      expect(size(lineEdits(before, after))).toBe(was.length + is.length - 2 * longestCommon(was, is));
    }),
  );
});

/** The textbook table (Cormen, Leiserson, Rivest, Stein, Introduction to Algorithms, section 15.4). */
const longestCommon = (one: readonly string[], other: readonly string[]): number => {
  const table = Array.from({ length: one.length + 1 }, () => new Array<number>(other.length + 1).fill(0));
  for (let i = 1; i <= one.length; i += 1)
    for (let j = 1; j <= other.length; j += 1)
      table[i]![j] =
        one[i - 1] === other[j - 1] ? table[i - 1]![j - 1]! + 1 : Math.max(table[i - 1]![j]!, table[i]![j - 1]!);
  return table[one.length]![other.length]!;
};

test("as many lines in place of as many are edits of their own", () => {
  expect(lineEdits("a\nb\nc\nd", "a\nx\ny\nd")).toEqual([
    { wasFrom: 2, was: ["b"], from: 2, is: ["x"] },
    { wasFrom: 3, was: ["c"], from: 3, is: ["y"] },
  ]);
  expect(lineEdits("a\nd", "a\nx\ny\nd")).toEqual([{ wasFrom: 2, was: [], from: 2, is: ["x", "y"] }]);
  expect(lineEdits("a\r\nb", "a\nb")).toEqual([]);
});
