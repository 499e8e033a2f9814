// Names given anew, and files that get another name. What a rename must not do is change a garment.
import { expect, test } from "vitest";
import { meant } from "../../../editor/assist/naming/meant.ts";
import { recipesAround } from "../../../editor/assist/naming/recipes.ts";
import { renamable, rename } from "../../../editor/assist/rename.ts";
import { renamedFile, renamedFiles } from "../../../editor/assist/renamed-file.ts";
import { isSameGarment } from "../../../editor/assist/same-garment.ts";
import { edited } from "../../../editor/assist/text-edit.ts";
import type { Source } from "../../../kernel/sources.ts";
import { chalkline, recipeSources } from "../../worked-recipe.ts";
import { marked, recipeFiles, recipeText, worked } from "./marked.ts";
import { markedAmong, square } from "./named.ts";

/** The recipe with the name at the mark given anew, without its first line; or why that is refused. */
const renamed = (recipe: string, name: string): string => {
  const { worked, offset } = marked(recipe);
  const done = rename(worked, offset, name);
  if ("refused" in done) return done.refused;
  return edited(worked.source.text, done.edits).replace("chalkline 1\n", "");
};

test("a name is given anew where it is given and wherever it is used", () => {
  const text = "let wi|de = 4 cm\nlet wider = wide + 1 cm # wide\ncheck wide < wider\n";
  expect(renamed(text, "broad")).toBe("let broad = 4 cm\nlet wider = broad + 1 cm # wide\ncheck broad < wider\n");
});

test("a name in one piece leaves that of another alone", () => {
  const two = (hem: string): string =>
    `piece one {\n${square}  mark ${hem} as hem\n}\npiece two {\n${square}  mark hem as hem\n}\nseam one.hem with two.hem\n`;
  const after = renamed(two("he|m"), "low-edge");
  expect(after.match(/low-edge/g)).toHaveLength(4);
  expect(after).toContain("seam one.low-edge with two.hem");
  expect(after).toContain("  line low-edge = D to C");
  // The word behind as is the role, which has no other name.
  expect(after).toContain("  mark low-edge as hem");
});

test("both branches of an if give the edge its new name", () => {
  const text =
    "param wide = 4 cm\npiece a {\n  point P = (0 cm, 0 cm)\n  if wide > 2 cm {\n    line top = P to P right wide\n  } else {\n    line t|op = P to P right 2 cm\n  }\n}\n";
  // Neither outlives its block, for there is no outline: each is a name of its own.
  expect(renamed(text, "upper").match(/upper/g)).toHaveLength(1);
  expect(renamed(text.replace("  }\n}\n", "  }\n  mark top as seam\n}\n"), "upper").match(/upper/g)).toHaveLength(3);
});

test("a parameter takes the words of the calls with it, and a step its calls", () => {
  const step = `step longer (edge lo|w) {\n  extend-hem low by 1 cm\n}\npiece panel {\n${square}  longer low hem\n}\n`;
  expect(renamed(step, "lower-edge")).toContain("  longer lower-edge hem\n");
  expect(renamed(step, "lower-edge")).toContain("  extend-hem lower-edge by 1 cm\n");
  const call = step.replace("lo|w", "low").replace("  longer", "  long|er");
  expect(renamed(call, "let-down")).toContain("step let-down (edge low) {");
  expect(renamed(call, "spread-from")).toBe("There is already a step called spread-from.");
});

test("what is no name, is kept by the language, or is taken is refused with a reason", () => {
  const text = `let wide = 4 cm\nlet bro|ad = wide\npiece panel {\n${square}  mark hem as hem\n}\n`;
  for (const name of ["", "4wide", "two words", "a--b", "-a", "a.b", "wide # no", "a-", '"a"'])
    expect(renamed(text, name)).toBe(
      "A name is letters and digits, with single hyphens inside, and begins with a letter.",
    );
  expect(renamed(text, "toward")).toBe("toward is a place word and cannot be a name.");
  expect(renamed(text, "piece")).toBe("piece is a word that starts a statement and cannot be a name.");
  expect(renamed(text, "wide")).toBe("wide already names something here, since line 2.");
  const edge = text.replace("bro|ad", "broad").replace("mark hem", "mark h|em");
  expect(renamed(edge, "side")).toBe("side already names something here, since line 10.");
  expect(renamed(edge, "A")).toBe("A already names something here, since line 5.");
  expect(renamed("let wide = 4 c|m\n", "broad")).toBe("cm is not a name that a line of these recipes gives.");
  expect(renamed("let wide = 4 cm\n|\n", "broad")).toBe("No name stands here.");
  expect(renamed("let wide = length(not-|there)\n", "broad")).toBe(
    "not-there is not a name that a line of these recipes gives.",
  );
});

test("a name that would come between another and its use is refused", () => {
  // Inside the piece wide would become the place, and the value outside would be hidden.
  const text = "let wide = 4 cm\npiece a {\n  point |P = (0 cm, 0 cm)\n  line top = P to P right wide\n}\n";
  expect(renamed(text, "wide")).toContain("wide already names something here, since line 2.");
  const below = "piece a {\n  point |P = (0 cm, 0 cm)\n  line top = P to P right 4 cm\n  point wide = P down 4 cm\n}\n";
  expect(renamed(below, "wide")).toContain("wide already names something here, since line 5.");
});

test("names that a step makes out of an edge's go along", () => {
  // fold-back-facing calls the ends of the facing after the edges they lie on.
  const text = `piece panel {\n${square}  mark center as opening\n  fold-back-facing facing = center by 5 cm\n  allow facing-hem, h|em by 1 cm\n}\n`;
  expect(renamed(text, "low-edge")).toContain("  allow facing-low-edge, low-edge by 1 cm\n");
  expect(renamed(text.replace("h|em", "hem").replace("g facing", "g fac|ing"), "turn-in")).toContain(
    "  allow turn-in-hem, hem by 1 cm\n",
  );
});

test("a name of a used recipe is given anew there, here, and in all others that use it", () => {
  const block: Source = { file: "block.chalk", text: `chalkline 1\npiece panel {\n${square}}\n` };
  const other: Source = {
    file: "other.chalk",
    text: 'chalkline 1\nuse "block.chalk" as it\ncheck length(it.panel.hem) = 20 cm\n',
  };
  const { worked, offset } = markedAmong(
    'use "block.chalk" as block\npiece a = block.panel {\n  mark he|m as hem\n}\n',
    [block, other],
  );
  const done = rename(worked, offset, "low-edge", [block, other]);
  if ("refused" in done) throw new Error(done.refused);
  const after = ({ file, text }: Source): string =>
    edited(
      text,
      done.edits.filter((edit) => edit.file === file),
    );
  expect(after(worked.source)).toContain("  mark low-edge as hem");
  expect(after(block)).toContain("  line low-edge = D to C");
  expect(after(block)).toContain("outline top, side, low-edge, center");
  expect(after(other)).toContain("it.panel.low-edge");
});

test("the name at the cursor is told before it is given anew", () => {
  const { worked, offset } = marked("let wi|de = 4 cm\n");
  expect(renamable(worked, offset)).toEqual({ from: offset - 2, to: offset + 2, name: "wide" });
  expect(renamable(worked, 0)).toEqual({ refused: expect.any(String) });
});

test("every name of the workroom's recipes can be given anew, and each garment stays the same", {
  timeout: 120_000,
}, () => {
  let count = 0;
  for (const file of recipeFiles) {
    const recipe = worked(recipeText(file), file);
    const recipes = recipesAround(recipe);
    const seen = new Set<string>();
    for (const line of recipes.opened.written.lines) {
      for (const [at, { text, from }] of line.words.entries()) {
        if (seen.has(text) || meant(recipes, recipes.opened, line, at).length === 0) continue;
        seen.add(text);
        // A part of the names is enough: each is worked again.
        if (seen.size % 12 !== 0) continue;
        const done = rename(recipe, from, "quite-new");
        if ("refused" in done) throw new Error(`${file} ${text}: ${done.refused}`);
        const textOf = (name: string, was: string): string =>
          edited(
            was,
            done.edits.filter((edit) => edit.file === name),
          );
        const sources = {
          read(path: string, by: string) {
            const read = recipeSources.read(path, by);
            return "problem" in read ? read : { ...read, text: textOf(read.file, read.text) };
          },
        };
        const after = chalkline.work({ file, text: textOf(file, recipe.source.text) }, { sources });
        expect(isSameGarment(recipe.outcome, after), `${file} ${text}`).toBe(true);
        count += 1;
      }
    }
  }
  expect(count).toBeGreaterThan(50);
});

test("a garment that differs in one edge is not the same", () => {
  const before = worked(recipeText("lobby-coat-swing.chalk"), "lobby-coat-swing.chalk").outcome;
  const longer = recipeText("lobby-coat-swing.chalk").replace("longer = 6 cm", "longer = 6.01 cm");
  expect(isSameGarment(before, worked(longer, "lobby-coat-swing.chalk").outcome)).toBe(false);
  expect(isSameGarment(before, before)).toBe(true);
});

const uses = (...paths: string[]): string =>
  `chalkline 1\n${paths.map((path, index) => `use "${path}" as n${index}\n`).join("")}label "use"\n`;

/** The texts after a file has been moved, by the names they had before. */
const afterMove = (moves: readonly (readonly [string, string])[], texts: readonly Source[]): string[] => {
  const edits = renamedFiles(new Map(moves), texts);
  return texts.map(({ file, text }) =>
    edited(
      text,
      edits.filter((edit) => edit.file === file),
    ),
  );
};

test("a recipe that is moved is used from its new place", () => {
  const coat = { file: "coat.chalk", text: uses("blocks/body.chalk", "sleeve.chalk") };
  const body = { file: "blocks/body.chalk", text: uses("../sleeve.chalk") };
  expect(afterMove([["blocks/body.chalk", "blocks/old/torso.chalk"]], [coat, body])).toEqual([
    uses("blocks/old/torso.chalk", "sleeve.chalk"),
    uses("../../sleeve.chalk"),
  ]);
  expect(afterMove([["coat.chalk", "blocks/coat.chalk"]], [coat, body])).toEqual([
    uses("body.chalk", "../sleeve.chalk"),
    uses("../sleeve.chalk"),
  ]);
  expect(afterMove([["blocks/body.chalk", "basis/body.chalk"]], [coat, body])).toEqual([
    uses("basis/body.chalk", "sleeve.chalk"),
    uses("../sleeve.chalk"),
  ]);
});

test("a path that still leads there stays as it is written, and one that leads nowhere too", () => {
  const coat = { file: "coat.chalk", text: uses("./blocks/../sleeve.chalk", "../../beyond.chalk") };
  expect(renamedFile("blocks/body.chalk", "blocks/torso.chalk", [coat])).toEqual([]);
  const both = [
    { file: "a/x.chalk", text: uses("y.chalk") },
    { file: "a/y.chalk", text: uses() },
  ];
  // A folder gets another name: what lies in it side by side still does.
  expect(
    renamedFiles(
      new Map([
        ["a/x.chalk", "b/x.chalk"],
        ["a/y.chalk", "b/y.chalk"],
      ]),
      both,
    ),
  ).toEqual([]);
});

test("nothing throws anywhere, in whole recipes and in broken ones", { timeout: 60_000 }, () => {
  for (const file of ["bell-sleeve.chalk", "blocks/raglan.chalk"]) {
    const whole = recipeText(file);
    for (const text of [whole, whole.replace(/[{}]/g, ""), whole.slice(0, whole.length * 0.6)]) {
      const read = worked(text, file);
      for (let offset = 0; offset <= text.length; offset += 7) {
        const name = renamable(read, offset);
        const done = rename(read, offset, "quite-new");
        expect("refused" in name ? "refused" in done : true).toBe(true);
      }
    }
  }
});
