// A short run of the harness, always the same one, and everything that ever went wrong. The long run is `npm run fuzz`.
import { afterAll, describe, expect, test } from "vitest";
import { allTargets } from "./all-targets.ts";
import { corpus } from "./corpus.ts";
import { faultInWords, faultOf, faultsOn } from "./faults.ts";
import { textsToTry } from "./recipes-to-try.ts";
import { plainRecipe, seedRecipes } from "./seed-recipes.ts";
import { takes } from "./target.ts";

const targets = allTargets();
const kept = corpus();
/** Faults that are known and not mended yet; the corpus has a recipe for each. */
const open = new Set(kept.flatMap((each) => [...each.open]));

afterAll(async () => {
  for (const target of targets) await target.end?.();
});

// Every target in turn takes seconds, and many times that where others work too.
const onABusyMachine = 240_000;

const faultsIn = async (subjects: Parameters<typeof faultsOn>[1]): Promise<string[]> =>
  (await faultsOn(targets, subjects, new Set(open))).map(faultInWords);

test("sound recipes pass", { timeout: onABusyMachine }, async () => {
  expect(seedRecipes.length).toBeGreaterThan(20);
  expect(await faultsIn(seedRecipes.slice(0, 3).map((from) => ({ text: from.text, from })))).toEqual([]);
});

test("recipes that are spoiled, mixed and made of single words pass, and so do spoiled drawings", {
  timeout: onABusyMachine,
}, async () => {
  expect(await faultsIn(textsToTry(textsTried, 20))).toEqual([]);
});

// As many as take some seconds.
const textsTried = 20;

describe("the corpus", () => {
  test("says of everything what went wrong or what it guards", () => {
    expect(kept.length).toBeGreaterThan(20);
    for (const { file, story, open } of kept) {
      expect(story.length, file).toBeGreaterThan("went wrong: ".length + 10);
      for (const key of open) expect(targets.map(({ name }) => name)).toContain(key.split(": ")[0]);
    }
  });

  for (const { file, kind, story, open, text } of kept) {
    test(`${file}: ${story}`, async () => {
      const subject = { text, kind, from: plainRecipe };
      for (const target of targets) {
        if (!takes(target, subject)) continue;
        if (open.has(`${target.name}: it does not end`)) continue;
        const fault = await faultOf(target, subject);
        if (fault && open.has(fault.key)) continue;
        expect(fault && faultInWords(fault)).toBeUndefined();
      }
    });
    if (open.size > 0) test.skip(`${file}, not mended yet: ${[...open].join("; ")}`, () => {});
  }
});
