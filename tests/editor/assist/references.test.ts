// Where names are given and used, in one recipe and across `use`. Which words have to be found was read off the recipes by eye.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { references } from "../../../editor/assist/references.ts";
import type { Source } from "../../../kernel/sources.ts";
import { marked, recipeFiles, recipeText, worked } from "./marked.ts";
import { markedAmong, square, told } from "./named.ts";

/** The words found for the mark, the giving one with a star. */
const found = (recipe: string): string[] => {
  const { worked, offset } = marked(recipe);
  return references(worked, offset).map(
    (each) => `${each.file === "test.chalk" ? told(worked.source.text, each) : each.file}${each.isGiven ? "*" : ""}`,
  );
};

test("a value is found where it is given and where it is used, from either place", () => {
  const recipe = (a: string, b: string): string => `let ${a} = 4 cm\nlet wider = ${b} + 1 cm\ncheck wide < wider\n`;
  const all = ["2 wide*", "3 wide", "4 wide"];
  expect(found(recipe("wi|de", "wide"))).toEqual(all);
  expect(found(recipe("wide", "|wide"))).toEqual(all);
});

test("a name of one piece is not that of another", () => {
  const two = `piece one {\n${square}  mark he|m as hem\n}\npiece two {\n${square}  mark hem as hem\n}\nseam one.hem with two.hem\n`;
  expect(found(two)).toEqual(["9 hem*", "11 hem", "12 hem", "26 hem"]);
});

test("a copy goes on using the names of its source", () => {
  const copied = `piece panel {\n${square}}\npiece wide = panel {\n  mark hem as hem\n}\ncheck length(wide.h|em) = length(panel.hem)\n`;
  expect(found(copied)).toEqual(["9 hem*", "11 hem", "14 hem", "16 hem", "16 hem"]);
});

test("the counts and values of two blocks are two, whatever they are called", () => {
  const twice = `piece a {\n  repeat 2 as n {\n    let far = |n * 1 cm\n    drill (far, 0 cm)\n  }\n  repeat 3 as n {\n    let far = n * 2 cm\n    drill (far, 2 cm)\n  }\n}\n`;
  expect(found(twice)).toEqual(["3 n*", "4 n"]);
  expect(found(twice.replace("|", "").replace("2 cm)", "2 cm)").replace("drill (far, 0", "drill (f|ar, 0"))).toEqual([
    "4 far*",
    "5 far",
  ]);
});

test("a parameter is found at its step's calls, as the word it is there", () => {
  const step = `step longer (edge low, length by-much = 1 cm) {\n  extend-hem lo|w by by-much\n}\npiece panel {\n${square}  longer low hem\n  longer low hem by-much 2 cm\n}\n`;
  expect(found(step)).toEqual(["2 low*", "3 low", "15 low", "16 low"]);
  expect(found(step.replace("lo|w", "low").replace("step longer", "step lon|ger"))).toEqual([
    "2 longer*",
    "15 longer",
    "16 longer",
  ]);
});

test("one body serves all: a measure is found in the recipes that are used, under their own declarations", () => {
  const block: Source = {
    file: "block.chalk",
    text: "chalkline 1\nmeasure hip-girth = 96 cm\nlet half = hip-girth / 2\n",
  };
  const { worked, offset } = markedAmong('measure hip-|girth = 96 cm\nuse "block.chalk" as block\n', [block]);
  expect(references(worked, offset).map(({ file, line }) => `${file} ${line}`)).toEqual([
    "test.chalk 2",
    "block.chalk 2",
    "block.chalk 3",
  ]);
});

test("what a block gives is found in every recipe that uses it", () => {
  const text = "piece panel {\n  point A = (0 cm, 0 cm)\n  line h|em = A to A right 4 cm\n}\n";
  const others: Source[] = [
    { file: "one.chalk", text: 'chalkline 1\nuse "test.chalk" as t\npiece a = t.panel {\n  mark hem as hem\n}\n' },
    { file: "two.chalk", text: 'chalkline 1\nuse "one.chalk" as one\ncheck length(one.t.panel.hem) = 4 cm\n' },
    { file: "three.chalk", text: "chalkline 1\nlet hem = 4 cm\n" },
  ];
  const { worked, offset } = markedAmong(text, others);
  expect(references(worked, offset, others).map(({ file, line }) => `${file} ${line}`)).toEqual([
    "test.chalk 4",
    "one.chalk 4",
    "two.chalk 3",
  ]);
});

test("in the workroom's recipes, names of the straight coat are found in the swing coat", () => {
  const text = readFileSync(new URL("../../../recipes/blocks/straight-coat.chalk", import.meta.url), "utf8");
  const block = worked(text, "blocks/straight-coat.chalk");
  const others = recipeFiles
    .filter((file) => file !== "blocks/straight-coat.chalk")
    .map((file) => ({ file, text: recipeText(file) }));
  const at = text.indexOf("piece back") + "piece ".length;
  const swing = references(block, at, others).filter(({ file }) => file === "lobby-coat-swing.chalk");
  const swingText = recipeText("lobby-coat-swing.chalk");
  // `piece back = straight.back` and `check length(back.hem) > length(straight.back.hem) + flare`
  expect(swing.map((each) => swingText.slice(each.from - "straight.".length, each.to))).toEqual([
    "straight.back",
    "straight.back",
  ]);
});

test("nothing throws anywhere, in whole recipes and in broken ones", { timeout: 60_000 }, () => {
  for (const file of ["uneven-jacket.chalk", "blocks/two-piece-sleeve.chalk"]) {
    const whole = recipeText(file);
    for (const text of [whole, whole.replace(/[{}]/g, ""), whole.slice(0, whole.length * 0.6)]) {
      const read = worked(text, file);
      for (let offset = 0; offset <= text.length; offset += 7)
        for (const { from, to } of references(read, offset)) expect(to).toBeGreaterThan(from);
    }
  }
});
