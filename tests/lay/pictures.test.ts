// The picture in the README: the cloth that the swing coat needs over its flare. The file is what is drawn now;
// CHALKLINE_UPDATE=1 rewrites it.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { overValues } from "../../editor/terminal/lay-over.ts";
import { packersHere } from "../../editor/terminal/packers.ts";
import { overDrawing } from "../../kernel/cloth/lay/over-drawing.ts";
import { pointsOf } from "../../kernel/cloth/lay/over-values.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import { type Varied, variedOf } from "../../kernel/cloth/lay/varied.ts";
import { svg } from "../../kernel/export/svg.ts";
import { workedRecipe } from "../worked-recipe.ts";

const file = fileURLToPath(new URL("../../recipes/pictures/flare-against-cloth.svg", import.meta.url));
const recipe = "lobby-coat-swing.chalk";

const coats = await (async () => {
  const varied = variedOf(workedRecipe(recipe), "flare", {}) as Varied;
  const workWith = (value: number) =>
    workedRecipe(recipe, { params: new Map([["flare", { kind: "length", value } as const]]) });
  const asked = { spread: "flat", selvedge: 10, tilt: 0, effort: "quick", seed: 1 } as const;
  const rungs = rungsOf(varied.least, varied.most, 20, 0);
  return overValues(varied, 20, rungs, asked, workWith, packersHere());
})();

const picture = svg(overDrawing(coats, "shell", "gabardine", "cm"));

if (process.env.CHALKLINE_UPDATE) writeFileSync(file, picture);

test("the picture of flare against cloth is up to date (npm run test:update)", () => {
  expect(readFileSync(file, "utf8")).toBe(picture);
});

test("no coat takes less than its pieces cover, and a fuller one covers more", () => {
  const points = pointsOf(coats, "shell", "cm");
  expect(points.map(({ value }) => value)).toEqual([0, 20, 40, 60, 80, 100, 120, 140, 160, 180, 200]);
  const areas = points.map(({ cloth }) => cloth!.area);
  expect([...areas].sort((a, b) => a - b)).toEqual(areas);
  for (const { cloth } of points) {
    // 150 cm less the two selvedges.
    expect(cloth!.length).toBeGreaterThan(cloth!.area / 1480);
    // Trade handbook, lay rules: 60 to 85 % of the cloth is used.
    expect(cloth!.efficiency).toBeGreaterThan(0.6);
    expect(cloth!.efficiency).toBeLessThan(0.85);
  }
});
