// A short run of the harness, always the same one, and every recipe that ever went wrong. The long run is `npm run fuzz`.
import { afterAll, describe, expect, test } from "vitest";
import { allTargets } from "./all-targets.ts";
import { corpus } from "./corpus.ts";
import { faultInWords, faultOf, faultsOn } from "./faults.ts";
import { recipesToTry } from "./recipes-to-try.ts";
import { plainRecipe, seedRecipes } from "./seed-recipes.ts";

const targets = allTargets();
const kept = corpus();
/** Faults that are known and not mended yet; the corpus has a recipe for each. */
const open = new Set(kept.flatMap((each) => [...each.open]));

afterAll(async () => {
  for (const target of targets) await target.end?.();
});

const faultsIn = async (subjects: Parameters<typeof faultsOn>[1]): Promise<string[]> =>
  (await faultsOn(targets, subjects, new Set(open))).map(faultInWords);

test("sound recipes pass", async () => {
  expect(seedRecipes.length).toBeGreaterThan(20);
  expect(await faultsIn(seedRecipes.slice(0, 3).map((from) => ({ text: from.text, from })))).toEqual([]);
});

test("recipes that are spoiled, mixed and made of single words pass", async () => {
  expect(await faultsIn(recipesToTry(recipesTried, 20))).toEqual([]);
});

// As many as take some seconds.
const recipesTried = 40;

describe("the corpus", () => {
  test("says of every recipe what went wrong", () => {
    expect(kept.length).toBeGreaterThan(20);
    for (const { file, text, open } of kept) {
      expect(text, file).toMatch(/^# (?:went wrong|guards): .{10}/);
      for (const key of open) expect(targets.map(({ name }) => name)).toContain(key.split(": ")[0]);
    }
  });

  for (const { file, story, open, text } of kept) {
    test(`${file}: ${story}`, async () => {
      for (const target of targets) {
        if (open.has(`${target.name}: it does not end`)) continue;
        const fault = await faultOf(target, { text, from: plainRecipe });
        if (fault && open.has(fault.key)) continue;
        expect(fault && faultInWords(fault)).toBeUndefined();
      }
    });
    if (open.size > 0) test.skip(`${file}, not mended yet: ${[...open].join("; ")}`, () => {});
  }
});
