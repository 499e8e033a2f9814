// What is offered at the cursor, and what comes first. The mark | is the cursor.
import { expect, test } from "vitest";
import { functionGives } from "../../../editor/assist/completion/function-gives.ts";
import { parameterKinds } from "../../../editor/assist/completion/parameter-kinds.ts";
import { type Completion, completion } from "../../../editor/assist/completion.ts";
import { functions } from "../../../kernel/functions.ts";
import { workedText } from "../../worked-recipe.ts";
import { marked } from "./marked.ts";

const files = ["blocks/straight-coat.chalk", "blocks/raglan.chalk", "lobby-coat-swing.chalk", "test.chalk"];

const offered = (recipe: string, file?: string): Completion[] => {
  const { worked, offset } = marked(recipe, file);
  return completion(worked, offset, files);
};

const labels = (recipe: string, file?: string): string[] => offered(recipe, file).map(({ label }) => label);

const lining = `recipe "Ushers' lining"
units cm
measure bust-girth = 92 cm from 70 cm to 160 cm "Round the bust"
param flare = 9 cm from 0 cm to 20 cm "opening at the hem"
fabric shell "gabardine" width 150 cm
`;

const panel = `${lining}piece panel {
  point A = (0 cm, 0 cm)
  point B = A right 20 cm
  point C = B down 30 cm
  point D = A down 30 cm
  line top = A to B
  line right-side = B to C
  line hem = C to D
  line left-side = D to A
`;

const outlined = `${panel}  outline top, right-side, hem, left-side
`;

test("an empty recipe begins with the version of the language", () => {
  const { worked } = marked("|");
  const empty = { ...worked, source: { file: "new.chalk", text: "" } };
  expect(completion(empty, 0).map(({ insert }) => insert)).toContain("chalkline 1");
});

test("a line outside of pieces begins with what a recipe says next", () => {
  expect(labels("|").slice(0, 3)).toEqual(["recipe", "units", "use"]);
  expect(labels(`${lining}|`)).not.toContain("recipe");
  expect(labels(`${lining}|`)).not.toContain("point");
  const behind = labels(`${outlined}}\n|`);
  expect(behind[0]).toBe("piece");
  expect(behind.indexOf("seam")).toBeLessThan(behind.indexOf("measure"));
});

test("a line in a piece drafts until the outline stands, and alters from then on", () => {
  const drafting = labels(`${panel}  |\n}`);
  expect(drafting.slice(0, 3)).toEqual(["point", "line", "curve"]);
  const altering = labels(`${outlined}  |\n}`);
  expect(altering.indexOf("spread-from")).toBeLessThan(altering.indexOf("point"));
  for (const list of [drafting, altering]) {
    expect(list).toContain("let");
    expect(list).not.toContain("measure");
    expect(list).not.toContain("cut");
  }
});

test("a solve block holds drafting steps only", () => {
  const inside = labels(`${panel}  solve h from 1 cm to 9 cm until h = 2 cm {\n    |\n  }\n}`);
  expect(inside).toContain("line");
  expect(inside).toContain("let");
  expect(inside).not.toContain("check");
});

test("else stands behind an if", () => {
  expect(labels(`${panel}  if flare > 1 cm {\n  }\n  |\n}`)).toContain("else");
  expect(labels(`${panel}  |\n}`)).not.toContain("else");
});

test("a step is written with holes for what it needs, and with its page of the manual", () => {
  const step = offered(`${outlined}  |\n}`).find(({ label }) => label === "spread-from")!;
  expect(step.isSnippet).toBe(true);
  // biome-ignore lint/suspicious/noTemplateCurlyInString: the holes of a snippet.
  expect(step.insert).toBe("spread-from ${1:place} to ${2:edge-or-place} by ${3:length-or-angle}");
  expect(step.documentation).toContain("### spread-from");
});

test("a step of the recipe's own is offered below its declaration", () => {
  const own = "step trimmed (edge bottom, length amount = 5 cm) {\n}\n";
  expect(labels(`${lining}${own}piece x {\n  |\n}`)).toContain("trimmed");
  expect(labels(`${lining}|\n${own}`)).not.toContain("trimmed");
  expect(labels(`${lining}${own}piece x {\n  trimmed |\n}`).slice(0, 2)).toEqual(["bottom", "amount"]);
});

test("a slot for an edge wants edges of the piece first, in the order of its outline", () => {
  expect(labels(`${outlined}  spread-from A to |\n}`).slice(0, 4)).toEqual(["top", "right-side", "hem", "left-side"]);
});

test("a slot for a place wants places first", () => {
  expect(new Set(labels(`${outlined}  notch |\n}`).slice(0, 4))).toEqual(new Set(["A", "B", "C", "D"]));
});

test("names from lines further down are not offered", () => {
  const list = labels(
    `${lining}piece panel {\n  point A = (0 cm, 0 cm)\n  line a = A to |\n  point B = A right 20 cm\n}`,
  );
  expect(list).toContain("A");
  expect(list).not.toContain("B");
});

test("a slot for a length wants lengths, and no edges", () => {
  const list = labels(`${outlined}  extend-hem hem by |\n}`);
  expect(list[0]).toBe("flare");
  expect(list).toContain("bust-girth");
  expect(list).toContain("length");
  expect(list).not.toContain("top");
});

test("behind a number stand its units, those of the recipe first", () => {
  expect(labels(`${outlined}  extend-hem hem by 3 |\n}`)[0]).toBe("cm");
  expect(labels("units in\nparam a = 3 |")[0]).toBe("in");
  expect(labels("fabric shell weight 260 |")[0]).toBe("gsm");
  expect(labels(`${panel}  point E = A bearing 30 |\n}`)[0]).toBe("deg");
  expect(labels(`${outlined}  notch top at 50% |\n}`)).not.toContain("cm");
});

test("behind a value stand the clause words that are not written yet, the needed ones first", () => {
  expect(labels(`${outlined}  spread-from A |\n}`).slice(0, 4)).toEqual(["to", "by", "along", "moving"]);
  const behind = labels(`${outlined}  spread-from A to hem |\n}`);
  expect(behind).not.toContain("to");
  expect(behind[0]).toBe("by");
});

test("a line that is broken in its middle is told what is missing there", () => {
  expect(labels(`${outlined}  spread-from | to hem by 4 cm\n}`)).toContain("A");
  expect(labels(`${outlined}  spread-from A to hem by | along\n}`)[0]).toBe("flare");
});

test("a choice wants its words and nothing else", () => {
  expect(labels(`${outlined}  mark hem as |\n}`)).toEqual(["seam", "hem", "fold", "opening"]);
  expect(labels("units |")).toEqual(["in", "cm", "mm"]);
});

test("a direction wants directions first", () => {
  expect(labels(`${panel}  curve c = A to C leaving |\n}`).slice(0, 4).sort()).toEqual(["down", "left", "right", "up"]);
});

const coat = 'use "blocks/straight-coat.chalk" as straight\n';

test("behind a dot stand the parts of what stands before it", () => {
  expect(labels(`${coat}piece back = straight.|`).slice(0, 3)).toEqual(["back", "front", "sleeve"]);
  expect(labels(`${coat}let a = length(straight.back.|)`).slice(0, 3)).toEqual(["center", "neck", "shoulder"]);
  expect(labels(`${panel}  point E = top.|\n}`)).toEqual(["start", "end"]);
});

test("a seam wants edges of pieces, those first that are not sewn yet", () => {
  const pieces = `${coat}piece back = straight.back {\n}\npiece front = straight.front {\n}\n`;
  const list = labels(`${pieces}seam front.side with back.side\nseam front.shoulder with |`);
  expect(list.indexOf("back.shoulder")).toBeLessThan(list.indexOf("back.side"));
  expect(list.indexOf("back.shoulder")).toBeLessThan(list.indexOf("front.shoulder"));
});

test("accept wants the name of a check, and tells its page", () => {
  const [first] = offered(`${outlined}}\naccept | on panel because "x"`);
  expect(first?.kind).toBe("check");
  expect(first?.documentation).toContain("Passes:");
});

test("use wants a file, as it is written from this recipe's folder", () => {
  expect(labels('use "|')).toEqual(["lobby-coat-swing.chalk", "blocks/raglan.chalk", "blocks/straight-coat.chalk"]);
  expect(labels('use "|"', "blocks/loose.chalk")).toContain("straight-coat.chalk");
  expect(labels('use "|"', "blocks/loose.chalk")).toContain("../lobby-coat-swing.chalk");
  const [first] = offered('use "blo|" as x');
  expect(first?.insert.endsWith('"')).toBe(false);
});

test("a use block wants params of the recipe that is used, with their values and ranges", () => {
  const [first] = offered(`use "blocks/straight-coat.chalk" as straight { | }`);
  expect(first?.label).toBe("coat-length");
  expect(first?.detail).toMatch(/^\d.* cm, .* cm to .* cm$/);
  expect(labels('use "blocks/straight-coat.chalk" as straight { coat-length = 90 cm, | }')).not.toContain(
    "coat-length",
  );
});

test("a measure wants the names of ISO 8559-1", () => {
  const bust = offered("measure |").find(({ label }) => label === "bust-girth");
  // ISO 8559-1:2017 clause 5.3.4, as its public listing has it: handbook, section 1.2.
  expect(bust?.detail).toContain("5.3.4");
  expect(labels("measure bust-girth = 92 cm\nmeasure |")).not.toContain("bust-girth");
});

test("a name that lines below use is offered where one is to be given", () => {
  const list = labels("piece panel {\n  point |\n  line a = A to B\n}");
  expect(list.slice(0, 2)).toEqual(["A", "B"]);
});

test("nothing is offered in a comment, in a text, or in a number", () => {
  expect(labels("units cm  # in |")).toEqual([]);
  expect(labels('recipe "a |"')).toEqual([]);
  expect(labels("param a = 1|2 cm")).toEqual([]);
});

test("what is chosen takes the place of the word under the cursor", () => {
  const { worked, offset } = marked(`${outlined}  extend-hem he|m by 3 cm\n}`);
  const hem = completion(worked, offset).find(({ label }) => label === "hem")!;
  expect(worked.source.text.slice(hem.from, hem.to)).toBe("hem");
});

test("every function of the language says what it gives", () => {
  expect([...functionGives.keys()]).toEqual([...functions.keys()]);
});

test("every kind of parameter that is offered is one", () => {
  for (const { label } of parameterKinds) {
    const { findings } = workedText(`chalkline 1\nstep s (${label} a) {\n}`);
    expect(findings.map(({ message }) => message)).toEqual([]);
  }
});

test("where the rest of the line stands already, only the word is written anew", () => {
  const step = offered(`${outlined}  spread-f|rom A to hem by 3 cm\n}`).find(({ label }) => label === "spread-from")!;
  expect([step.insert, step.isSnippet]).toEqual(["spread-from", false]);
  const call = offered("let a = sq|rt(2)").find(({ label }) => label === "sqrt")!;
  expect(call.insert).toBe("sqrt");
});
