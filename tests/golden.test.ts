// Every recipe in recipes/ is tidy and clean, and measures and draws what its golden report and sheet say.
// CHALKLINE_UPDATE=1 rewrites them: look at both before you commit.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { tidy } from "../grammar/print.ts";
import { draw } from "../kernel/drawing/draw.ts";
import { svg } from "../kernel/export/svg.ts";
import { measuredReport } from "../kernel/report/measured-report.ts";
import { lettersOf } from "../kernel/report/said.ts";
import { chalkline, workedRecipe } from "./worked-recipe.ts";

const recipes = fileURLToPath(new URL("../recipes", import.meta.url));
const golden = fileURLToPath(new URL("golden", import.meta.url));
const files = readdirSync(recipes, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".chalk"))
  .sort();

const expectGolden = (recipe: string, name: string, text: string): void => {
  const file = join(golden, basename(recipe, ".chalk"), name);
  if (process.env.CHALKLINE_UPDATE) {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  expect(existsSync(file) ? readFileSync(file, "utf8") : "missing: npm run test:update").toBe(text);
};

describe.each(files)("%s", (file) => {
  const text = readFileSync(join(recipes, file), "utf8");
  const outcome = workedRecipe(file);

  test("has nothing to find", () => {
    expect(outcome.findings).toEqual([]);
    expect(outcome.garment.pieces.size + outcome.sizes.size).toBeGreaterThan(0);
  });

  test("is tidy", () => {
    const { tree, forms } = chalkline.parse({ file, text });
    expect(tidy(tree, forms)).toBe(text);
  });

  test("measures what its report says", () => {
    const report = measuredReport(outcome, 100).map(lettersOf).join("\n");
    expectGolden(file, "report.txt", `${report}\n`);
  });

  test("draws what its sheet shows", () => {
    expectGolden(file, "sheet.svg", svg(draw(outcome.garment).sheet));
  });
});
