// Where names were given. The rules are those of language.md, sections 2 and 4; the lines were counted by hand.
import { expect, test } from "vitest";
import { definition } from "../../../editor/assist/definition.ts";
import { marked, recipeFiles, recipeText, worked } from "./marked.ts";
import { markedAmong, square, told } from "./named.ts";

/** The words that gave the name at the mark, with their lines. */
const given = (recipe: string): string[] => {
  const { worked, offset } = marked(recipe);
  return definition(worked, offset).map((place) =>
    place.file === "test.chalk"
      ? told(worked.source.text, place)
      : `${place.file} ${told(recipeText(place.file), place)}`,
  );
};

test("an edge, a place and a value were given where their line names them", () => {
  // chalkline 1 is line 1, the piece's line 2, and the square stands in lines 3 to 11.
  expect(given(`piece panel {\n${square}  mark h|em as hem\n}\n`)).toEqual(["9 hem"]);
  expect(given(`piece panel {\n${square}  drill B| left 2 cm down 2 cm\n}\n`)).toEqual(["4 B"]);
  expect(given("let wide = 4 cm\nlet wider = wid|e + 1 cm\n")).toEqual(["2 wide"]);
  expect(given("measure bust-girth = 92 cm\nparam ease = 4 cm\nlet half = (bust-girth + |ease) / 2\n")).toEqual([
    "3 ease",
  ]);
});

test("a path is followed part by part, into a used recipe", () => {
  const use = 'use "blocks/straight-coat.chalk" as straight\n';
  const block = "blocks/straight-coat.chalk";
  const lineWith = (text: string): number =>
    recipeText(block)
      .split("\n")
      .findIndex((line) => line.startsWith(text)) + 1;
  expect(given(`${use}let long = length(str|aight.back.hem)\n`)).toEqual(["2 straight"]);
  expect(given(`${use}let long = length(straight.ba|ck.hem)\n`)).toEqual([`${block} ${lineWith("piece back")} back`]);
  expect(given(`${use}let long = length(straight.back.he|m)\n`)).toEqual([`${block} ${lineWith("  line hem")} hem`]);
  expect(given(`${use}let wide = straight.wr|ap\n`)).toEqual([`${block} ${lineWith("param wrap")} wrap`]);
  expect(given('use "blocks/straight-coat.chalk" as straight { wr|ap = 4 cm }\n')).toEqual([
    `${block} ${lineWith("param wrap")} wrap`,
  ]);
});

test("the path of a use leads to that file", () => {
  const { worked, offset } = marked('use "blocks/straight|-coat.chalk" as straight\n');
  expect(definition(worked, offset)).toMatchObject([{ file: "blocks/straight-coat.chalk", from: 0, to: 0, line: 1 }]);
  expect(given('use "blocks/no-|such.chalk" as nothing\n')).toEqual([]);
});

test("a copied piece has its edges from the piece that drew them", () => {
  const pieces = `piece panel {\n${square}}\npiece wide = panel {\n  mark ce|nter as fold\n}\n`;
  expect(given(pieces)).toEqual(["10 center"]);
  expect(given(`piece panel {\n${square}}\npiece wide = panel {\n}\nlet long = length(wide.h|em)\n`)).toEqual([
    "9 hem",
  ]);
});

test("a piece's own names come first, and pieces do not know one another's", () => {
  const two = `piece left {\n${square}}\npiece right {\n${square}  mark he|m as hem\n}\n`;
  expect(given(two)).toEqual(["20 hem"]);
  expect(
    given(
      "let top = 4 cm\npiece a {\n  point P = (0 cm, 0 cm)\n  line top = P to P right 4 cm\n  drill t|op.start\n}\n",
    ),
  ).toEqual(["5 top"]);
  // Above the line that names it in the piece, the name is still the one outside.
  expect(given("let top = 4 cm\npiece a {\n  point P = (to|p, 0 cm)\n  line top = P to P right 4 cm\n}\n")).toEqual([
    "2 top",
  ]);
});

test("what an if draws stays inside, but for the edges of the outline", () => {
  const branches = (mark: string): string =>
    `param wide = 4 cm\npiece a {\n  point P = (0 cm, 0 cm)\n  if wide > 2 cm {\n    line top = P to P right wide\n  } else {\n    line top = P to P right 2 cm\n  }\n  mark ${mark} as seam\n}\n`;
  expect(given(branches("to|p"))).toEqual(["6 top", "8 top"]);
  expect(given("if 1 > 0 {\n  let inside = 4 cm\n}\nlet out = ins|ide\n")).toEqual([]);
});

test("a step of the recipe's own knows its parameters, the names above it, and the piece it is called in", () => {
  const step = `let more = 1 cm\nstep longer (edge low, length by-much = mo|re) {\n  extend-hem low by by-much\n}\n`;
  expect(given(step)).toEqual(["2 more"]);
  const called = (body: string, call = "longer low hem"): string =>
    `step longer (edge low, length by-much = 1 cm) {\n  ${body}\n}\npiece panel {\n${square}  ${call}\n}\n`;
  expect(given(called("extend-hem lo|w by by-much"))).toEqual(["2 low"]);
  expect(given(called("extend-hem low by by-|much"))).toEqual(["2 by-much"]);
  expect(given(called("mark cen|ter as fold"))).toEqual(["13 center"]);
  expect(given(called("mark center as fold", "long|er low hem"))).toEqual(["2 longer"]);
  expect(given(called("mark center as fold", "longer lo|w hem"))).toEqual(["2 low"]);
  expect(given(called("mark center as fold", "longer low he|m"))).toEqual(["12 hem"]);
});

test("until of a solve knows what its block draws, and what is sought", () => {
  const solve = (until: string): string =>
    `piece a {\n  point P = (0 cm, 0 cm)\n  solve h from 1 cm to 9 cm until ${until} {\n    line rise = P to P up h\n  }\n  drill P up h\n}\n`;
  expect(given(solve("length(ri|se) = 4 cm"))).toEqual(["5 rise"]);
  expect(given(solve("|h = 4 cm"))).toEqual(["4 h"]);
  expect(given(solve("length(rise) = 4 cm").replace("up h\n}", "up h|\n}"))).toEqual(["4 h"]);
});

test("cloths, sizes and measures of the recipe", () => {
  expect(given('fabric shell "wool" width 150 cm\npiece a {\n}\ncut a 1 from she|ll\n')).toEqual(["2 shell"]);
  expect(given("measure hip-girth = 96 cm\nsize M { hip-gi|rth = 96 cm }\nbase size M\n")).toEqual(["2 hip-girth"]);
  expect(given("measure hip-girth = 96 cm\nsize M { hip-girth = 96 cm }\nbase size |M\n")).toEqual(["3 M"]);
});

test("a cloth of a used recipe carries over", () => {
  const cloth = { file: "cloth.chalk", text: 'chalkline 1\nfabric felt "felt" width 90 cm\n' };
  const { worked, offset } = markedAmong('use "cloth.chalk" as cloth\npiece a {\n}\ncut a 1 from fe|lt\n', [cloth]);
  expect(definition(worked, offset).map((place) => `${place.file} ${told(cloth.text, place)}`)).toEqual([
    "cloth.chalk 2 felt",
  ]);
});

test("an edge that a step named by itself comes from the line that drew it", () => {
  // fold-back-facing names the ends of the facing after the edges they lie on: facing-hem.
  const { worked, offset } = marked(
    `piece panel {\n${square}  mark center as opening\n  fold-back-facing facing = center by 5 cm\n  allow facing-he|m by 1 cm\n}\n`,
  );
  const [place] = definition(worked, offset);
  const { text } = worked.source;
  expect(place && text.slice(place.from, place.to)).toBe("fold-back-facing facing = center by 5 cm");
});

test("comments, texts, numbers and words that are no names lead nowhere", () => {
  expect(given("let wide = 4 cm # wi|de\nlet b = wide\n")).toEqual([]);
  expect(given("let wide = 4 c|m\n")).toEqual([]);
  expect(given('param wide = 4 cm "wi|de"\n')).toEqual([]);
  expect(given("let x = y|\n")).toEqual([]);
});

test("a recipe whose lines are broken still has its names", () => {
  expect(given(`piece panel {\n${square}  allow h|em by\n`)).toEqual(["9 hem"]);
  expect(given(`piece panel {\n${square}  allow side, hem| by (\n}\n}\n`)).toEqual(["9 hem"]);
});

test("nothing throws anywhere, in whole recipes and in broken ones", { timeout: 60_000 }, () => {
  for (const file of recipeFiles.filter((_, index) => index % 4 === 0)) {
    const whole = recipeText(file);
    const variants = [
      whole,
      whole.replace(/[{}]/g, ""),
      whole.slice(0, whole.length * 0.6),
      whole.replace(/ (?:by|to|=) /g, " "),
    ];
    for (const text of variants) {
      const read = worked(text, file);
      for (let offset = 0; offset <= text.length; offset += 7) {
        for (const { from, to } of definition(read, offset)) expect(from).toBeLessThanOrEqual(to);
      }
    }
  }
});
