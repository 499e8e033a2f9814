// Steps together: the manual's example of one, with a line of another at the end of its last piece. Each comes out without a
// finding, and goes through every target.
import { readFileSync } from "node:fs";
import { afterAll, expect, test } from "vitest";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { allTargets } from "./all-targets.ts";
import { faultInWords, faultOf } from "./faults.ts";
import { plainRecipe } from "./seed-recipes.ts";
import { takes } from "./target.ts";
import { workedOnce } from "./worked-once.ts";

const examples = new Map(vocabulary.steps.map(({ name, example }) => [name, example]));

/** STEP + LINE, a pair in each line; what begins with # is for people. */
const pairs = readFileSync(new URL("one-more-line.txt", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"));

const targets = allTargets();

afterAll(async () => {
  for (const target of targets) await target.end?.();
});

// Targets that take long, and those that hardly know what a recipe says, get one pair of so many, and not all of them the same.
const seldom = new Set(["knock", "rename"]);
const every = 16;

test("there are many, of most steps", () => {
  expect(pairs.length).toBeGreaterThan(200);
  expect(new Set(pairs.map((pair) => pair.split(" + ")[0])).size).toBeGreaterThan(55);
});

test.each(pairs.map((pair, index) => [pair, index] as const))("%s", async (pair, index) => {
  const [name = "", line = ""] = pair.split(" + ");
  const example = examples.get(name)!;
  const end = example.lastIndexOf("\n}");
  const text = `${example.slice(0, end)}\n  ${line}${example.slice(end)}`;
  const [before, outcome] = [workedOnce(example), workedOnce(text)];
  expect(outcome.findings).toEqual([]);
  expect(outcome.records.length).toBeGreaterThan(before.records.length);
  const subject = { text, from: plainRecipe };
  for (const [at, target] of targets.entries()) {
    const isSeldom = target.isDear === true || seldom.has(target.name);
    if (!takes(target, subject) || (isSeldom && (index + at) % every !== 0)) continue;
    const fault = await faultOf(target, subject);
    expect(fault && faultInWords(fault)).toBeUndefined();
  }
});
