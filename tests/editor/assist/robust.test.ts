// No answer fails on any text: at every place of recipes, whole and broken.
import { expect, test } from "vitest";
import { completion } from "../../../editor/assist/completion.ts";
import { findings } from "../../../editor/assist/findings.ts";
import { folding } from "../../../editor/assist/folding.ts";
import { formatting } from "../../../editor/assist/formatting.ts";
import { hover } from "../../../editor/assist/hover.ts";
import { inlayValues } from "../../../editor/assist/inlay-values.ts";
import { semanticTokens } from "../../../editor/assist/semantic-tokens.ts";
import { signatureHelp } from "../../../editor/assist/signature-help.ts";
import { symbols } from "../../../editor/assist/symbols.ts";
import type { WorkedText } from "../../../editor/assist/worked-text.ts";
import { recipeText, worked } from "./marked.ts";

const atPlace = (recipe: WorkedText, offset: number): void => {
  const { length } = recipe.source.text;
  const offered = completion(recipe, offset, ["blocks/raglan.chalk"]);
  const isInPlace = offered.every(
    ({ from, to, insert }) => from <= offset && offset <= to && to <= length && insert !== "",
  );
  const over = hover(recipe, offset);
  const isOver = !over || (over.from <= offset && offset <= over.to && over.markdown !== "");
  const help = signatureHelp(recipe, offset);
  const isHelped = !help || help.signatures[help.active] !== undefined;
  if (!isInPlace || !isOver || !isHelped) expect.fail(`at ${offset} of ${recipe.source.text}`);
};

const isWithin = (stretches: readonly { from: number; to: number }[], text: string): boolean =>
  stretches.every(({ from, to }) => 0 <= from && from <= to && to <= text.length);

const ofWhole = (recipe: WorkedText): void => {
  const { text } = recipe.source;
  expect(isWithin([...findings(recipe), ...semanticTokens(recipe), ...symbols(recipe)], text)).toBe(true);
  expect(folding(recipe).every(({ fromLine, toLine }) => fromLine < toLine)).toBe(true);
  expect(inlayValues(recipe, 1, 10_000).every(({ at }) => at <= text.length)).toBe(true);
  expect(formatting(recipe)).toBeDefined();
};

const whole = ["lobby-coat-swing.chalk", "uneven-jacket.chalk", "blocks/set-in-sleeve.chalk", "a-line-skirt.chalk"];

test.each(whole)("at every place of %s", { timeout: 120_000 }, (file) => {
  const recipe = worked(recipeText(file), file);
  ofWhole(recipe);
  for (let offset = 0; offset <= recipe.source.text.length; offset += 1) atPlace(recipe, offset);
});

test.each(whole.slice(1, 3))("with every line of %s cut in half", { timeout: 120_000 }, (file) => {
  const lines = recipeText(file).split("\n");
  lines.forEach((line, index) => {
    const half = line.slice(0, Math.ceil(line.length / 2));
    const before = [...lines.slice(0, index), half].join("\n");
    const recipe = worked([before, ...lines.slice(index + 1)].join("\n"), file);
    ofWhole(recipe);
    for (let offset = before.length - half.length; offset <= before.length + 1; offset += 3)
      atPlace(recipe, Math.min(offset, recipe.source.text.length));
    // The same with nothing behind it, as it is typed.
    const typed = worked(before, file);
    ofWhole(typed);
    atPlace(typed, before.length);
  });
});

const odd = [
  "",
  "\n\n",
  "{",
  "}",
  "{ { } ( ) }",
  '"',
  "chalkline",
  "chalkline 1\npiece {",
  "chalkline 1\nelse",
  "chalkline 1\nelse if",
  "chalkline 1\n} else {",
  "chalkline 1\nstep (",
  "chalkline 1\nstep s (edge a, length b = 3 cm * ( {",
  "chalkline 1\nuse",
  'chalkline 1\nuse "" as',
  'chalkline 1\nuse "../../x" as y { a = , }',
  "chalkline 1\nsize M { a = {",
  "chalkline 1\nrepeat 3 as i { repeat i as j {",
  "chalkline 1\nlet a = length(length(((",
  "chalkline 1\nlet a = a.b.c. .",
  "chalkline 1\nlet __proto__ = 1\nlet constructor = 2\nlet toString = toString",
  "chalkline 1\npiece constructor { point toString = (0 cm, 0 cm)\n line a = toString.hasOwnProperty",
  "chalkline 2\npiece p { }",
  "\u0000\u202e\ud800 chalkline",
  "chalkline 1\r\npiece p {\r\n  point A = (0 cm, 0 cm)\r\n}\r\n",
  `chalkline 1\n${"piece p { ".repeat(70)}`,
  `chalkline 1\npiece p {\n${Array.from({ length: 300 }, (_, index) => `  let a${index + 1} = a${index} + a${index}`).join("\n")}`,
];

test("odd texts, at every place", () => {
  for (const text of odd) {
    const recipe = worked(text);
    ofWhole(recipe);
    const step = text.length > 1000 ? 97 : 1;
    for (let offset = 0; offset <= text.length; offset += step) atPlace(recipe, offset);
  }
});
