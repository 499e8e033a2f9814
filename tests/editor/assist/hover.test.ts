// What is said of the word under the cursor. The mark | is the cursor.
import { expect, test } from "vitest";
import { hover } from "../../../editor/assist/hover.ts";
import { marked } from "./marked.ts";

const said = (recipe: string): string | undefined => {
  const { worked, offset } = marked(recipe);
  return hover(worked, offset)?.markdown;
};

const panel = (lines: string, head = ""): string => `units cm
${head}piece panel {
  point A = (0 cm, 0 cm)
  point B = A right 30 cm
  point C = B down 40 cm
  point D = A down 40 cm
  line top = A to B
  line right-side = B to C
  line hem = C to D
  line left-side = D to A
  outline top, right-side, hem, left-side
${lines}
}`;

test("an edge measures what it measures once the line is worked", () => {
  // A right angle of 30 and 40 has a hypotenuse of 50.
  expect(said(panel("  line across = A| to C")))?.toContain("place, (0 cm, 0 cm)");
  expect(said(panel("  line acr|oss = A to C"))).toContain("`across`: edge of `panel`, 50 cm");
});

test("an edge that a line alters tells what it was before", () => {
  const text = said(panel("  extend-hem hem by 6 cm\n  mark right-|side as seam"));
  expect(text).toContain("46 cm");
  expect(said(panel("  spread-from top at 50% to he|m by 5 cm"))).toContain("(30 cm before this line)");
});

test("an edge with a dart is told as sewn and as cut", () => {
  const text = said(panel("  dart small = top at 50% width 3 cm to (15 cm, 12 cm)\n  keep to|p"));
  // 30 cm less the 3 cm of the dart; the mouth is cut with a peak, so that it meets the edge once folded.
  expect(text).toMatch(/27 cm as sewn, 30\.\d+ cm as cut/);
});

test("lengths are told in the recipe's units", () => {
  // An inch is 25.4 mm by the international yard and pound agreement of 1959.
  expect(
    said(panel("  line across = B to (30 cm, 25.4 cm)\n  mark ac|ross as seam").replace("units cm", "units in")),
  ).toContain("10 in");
});

test("a param tells its value, its range and its note, and a measure its ISO meaning", () => {
  const param = 'param flare = 9 cm from 0 cm to 20 cm "opening of each slash"\nlet a = fla|re * 2';
  expect(said(param)).toContain("param, 9 cm, 0 cm to 20 cm, from line 2");
  expect(said(param)).toContain("opening of each slash");
  // ISO 8559-1:2017 clause 5.3.10, as its public listing has it: handbook, section 1.2.
  expect(said("measure waist-g|irth = 72 cm")).toContain("ISO 8559-1 clause 5.3.10");
});

test("a value in a block is told as it was at its line", () => {
  const lines = "  let before = length(hem)\n  spread-from top at 50% to hem by 5 cm\n  point E = A right bef|ore";
  expect(said(panel(lines))).toContain("value, 30 cm");
});

test("the value that a solve found is told", () => {
  // 12 cm down from A: the only way for the line to be 12 cm long.
  const lines =
    "  solve low from 1 cm to 30 cm until length(down-line) = 12 cm {\n    line down-line = A to A down low\n  }\n  point E = A down l|ow";
  expect(said(panel(lines))).toContain("12 cm");
});

test("a verb tells what its line did, and then its page of the manual", () => {
  const text = said(panel("  extend-h|em hem by 6 cm"))!;
  expect(text).toContain("This line: lengthened 6 cm at the hem");
  expect(text.indexOf("This line")).toBeLessThan(text.indexOf("### extend-hem"));
});

test("statements, functions, clause words and checks have their entries", () => {
  expect(said("un|its cm")).toContain("never how numbers are read");
  expect(said("let a = sq|rt(2)")).toContain("Gives the square root");
  expect(said(panel("  extend-hem hem b|y 6 cm"))).toContain("a length");
  expect(said(`${panel("")}\naccept hem-sq|uare on panel because "x"`)).toContain("### hem-square");
});

test("a length is told in other units", () => {
  // 2.54 cm are one inch.
  expect(said("units cm\nparam a = 2.|54 cm")).toBe("2.54 cm = 1 in = 25.4 mm");
});

test("a part of another piece is followed through its dots", () => {
  expect(said(`${panel("")}\ncheck length(panel.he|m) > 1 cm`)).toContain("`panel.hem`: edge, 30 cm");
});

test("nothing that people wrote becomes a link, HTML or a picture", () => {
  const note = "[a](http://x.y) <b>b</b> ![c](d) www.evil.com a@b.c `e` *f*";
  const text = said(`param flare = 9 cm from 0 cm to 20 cm "${note}"\nlet a = fl|are`)!;
  expect(text).not.toMatch(/(?<!\\)[[\]*`]a|<b>|http:\/\/|www\.evil|a@b/);
  expect(text).toContain("\\[a\\]");
});

test("there is nothing to say of a comment, of nothing, and of names that nobody gives", () => {
  expect(said("units cm # un|its")).toBeUndefined();
  expect(said("units cm\n\n|\n")).toBeUndefined();
  expect(said("let a = unheard-|of")).toBeUndefined();
});
