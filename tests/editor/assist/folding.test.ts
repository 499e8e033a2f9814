// What can be folded away.
import { expect, test } from "vitest";
import { folding } from "../../../editor/assist/folding.ts";
import { worked } from "./marked.ts";

const folds = (text: string): string[] =>
  folding(worked(text)).map(({ fromLine, toLine, kind }) => `${kind} ${fromLine}-${toLine}`);

test("blocks fold up to their closing brace, within one another too", () => {
  expect(folds("chalkline 1\npiece p {\n  if 1 = 1 {\n    point A = (0 cm, 0 cm)\n  }\n}\n")).toEqual([
    "block 2-5",
    "block 3-4",
  ]);
});

test("comments on lines of their own fold where several follow one another", () => {
  expect(folds("# one\n# two\n# three\nchalkline 1\n# alone\nunits cm # behind\n# alone too\n")).toEqual([
    "comments 1-3",
  ]);
});

test("a block that is not closed folds to the end, and one on a single line not at all", () => {
  expect(folds("chalkline 1\npiece p {\n  point A = (0 cm, 0 cm)\n\n")).toEqual(["block 2-3"]);
  expect(folds("chalkline 1\nsize M { a = 1 cm }\n")).toEqual([]);
});
