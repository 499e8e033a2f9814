// What lines come out at, shown behind them.
import { expect, test } from "vitest";
import { inlayValues } from "../../../editor/assist/inlay-values.ts";
import { worked } from "./marked.ts";

const text = `chalkline 1
units cm
measure hip-girth = 96 cm
let quarter = hip-girth / 4
piece p {
  point A = (0 cm, 0 cm)
  line across = A to (30 cm, 40 cm)
  let half = length(across) / 2
  solve low from 1 cm to 30 cm until length(down-line) = 12 cm {
    line down-line = A to A down low
  }
}`;

const shown = (from: number, to: number, recipe = text): string[] =>
  inlayValues(worked(recipe), from, to).map(({ line, text: words }) => `${line}: ${words}`);

test("lengths of edges, values of names, and what a solve found", () => {
  // A right angle of 30 and 40 has a hypotenuse of 50; a line straight down is as long as it goes down.
  expect(shown(1, 99)).toEqual(["4: = 24 cm", "7: 50 cm", "8: = 25 cm", "9: = 12 cm", "10: 12 cm"]);
});

test("only the lines asked for", () => {
  expect(shown(7, 8)).toEqual(["7: 50 cm", "8: = 25 cm"]);
});

test("they stand behind the last word of their line, before a comment", () => {
  const recipe = "chalkline 1\nlet a = 2 cm * 3 # six\n";
  const [value] = inlayValues(worked(recipe), 1, 9);
  expect(recipe.slice(0, value!.at)).toBe("chalkline 1\nlet a = 2 cm * 3");
});

test("a step tells the edges that it made longer or shorter, by name", () => {
  const piece = `chalkline 1
units cm
piece p {
  line top = (0 cm, 0 cm) to (20 cm, 0 cm)
  line right-side = (20 cm, 0 cm) to (20 cm, 30 cm)
  line hem = (20 cm, 30 cm) to (0 cm, 30 cm)
  line left-side = (0 cm, 30 cm) to (0 cm, 0 cm)
  outline top, right-side, hem, left-side
  extend-hem hem by 5 cm
}`;
  expect(shown(8, 9, piece)).toEqual(["9: right-side 35 cm, left-side 35 cm"]);
});

test("a line that failed says nothing", () => {
  expect(shown(2, 2, "chalkline 1\nlet a = b + 1 cm\n")).toEqual([]);
});
