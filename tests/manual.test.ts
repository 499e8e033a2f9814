// The manual in recipes/ is what the declarations say and draw now; CHALKLINE_UPDATE=1 rewrites it.
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { svg } from "../kernel/export/svg.ts";
import { checkDrawing, stepDrawing } from "../kernel/manual/example-drawing.ts";
import { manual } from "../kernel/manual.ts";
import { vocabulary } from "../kernel/vocabulary.ts";
import { chalkline } from "./worked-recipe.ts";

const recipes = fileURLToPath(new URL("../recipes", import.meta.url));
const file = `${recipes}/MANUAL.md`;
const folder = `${recipes}/manual`;

const drawings = new Map([
  ...vocabulary.steps.map((step) => [`${step.name}.svg`, svg(stepDrawing(chalkline, step))] as const),
  ...vocabulary.checks.map((check) => [`${check.name}.svg`, svg(checkDrawing(chalkline, check))] as const),
]);

if (process.env.CHALKLINE_UPDATE) {
  writeFileSync(file, manual(vocabulary));
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  for (const [name, text] of drawings) writeFileSync(`${folder}/${name}`, text);
}

test("recipes/MANUAL.md is up to date (npm run manual)", () => {
  expect(readFileSync(file, "utf8")).toBe(manual(vocabulary));
});

test.each([...drawings])("recipes/manual/%s is up to date", (name, text) => {
  expect(existsSync(`${folder}/${name}`) && readFileSync(`${folder}/${name}`, "utf8")).toBe(text);
});

test("no drawing is left of a step or check that is gone", () => {
  expect(readdirSync(folder).sort()).toEqual([...drawings.keys()].sort());
});
