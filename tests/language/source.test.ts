// Offsets and lines. Source: the lines of each text counted by hand.
import fc from "fast-check";
import { expect, test } from "vitest";
import { lineOf, lineStarts, lineStretch, positionIn, sourceText } from "../../grammar/source.ts";

test("lines begin behind line breaks, and an empty text has one", () => {
  expect(lineStarts("")).toEqual([0]);
  expect(lineStarts("ab\n\ncd\n")).toEqual([0, 3, 4, 7]);
});

test("an offset belongs to the line that it stands on, the line break to the line it ends", () => {
  const starts = lineStarts("ab\n\ncd\n");
  expect([0, 1, 2, 3, 4, 5, 6, 7].map((offset) => lineOf(starts, offset))).toEqual([1, 1, 1, 2, 3, 3, 3, 4]);
});

test("columns count from 1, and an offset beyond the text is its end", () => {
  const source = sourceText("ab\ncd");
  expect(positionIn(source, 4)).toEqual({ line: 2, column: 2 });
  expect(positionIn(source, 99)).toEqual({ line: 2, column: 3 });
  expect(positionIn(source, -1)).toEqual({ line: 1, column: 1 });
});

test("a line ends before its line break, whichever it is", () => {
  const source = sourceText("ab\r\ncd\n\nef");
  const said = [1, 2, 3, 4].map((line) => {
    const { from, to } = lineStretch(source, line);
    return source.text.slice(from, to);
  });
  expect(said).toEqual(["ab", "cd", "", "ef"]);
});

test("a line's number is one more than the line breaks before it", () => {
  fc.assert(
    fc.property(fc.array(fc.constantFrom("a", "\n", "\r\n", "é", "\u{1F9F5}")), fc.nat(60), (signs, offset) => {
      const text = signs.join("");
      const at = Math.min(offset, text.length);
      expect(positionIn(sourceText(text), at).line).toBe(text.slice(0, at).split("\n").length);
    }),
  );
});
