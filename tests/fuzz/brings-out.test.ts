// Every code of grammar and kernel is brought out by a small recipe, at every step and statement where one was found that does; and
// whatever is wrong with a recipe, what reads, works, tidies, draws, measures and mends it holds all the same.
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { formats } from "../../kernel/export/formats.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import { type BringsOut, bringsOut } from "./brings-out.ts";
import { faultInWords, faultOf } from "./faults.ts";
import { plainRecipe } from "./seed-recipes.ts";
import { exporting } from "./targets/exporting.ts";
import { measuring } from "./targets/measuring.ts";
import { reading } from "./targets/reading.ts";
import { checking, explaining } from "./targets/reporting.ts";
import { mending } from "./targets/rewriting.ts";
import { tidying } from "./targets/tidying.ts";
import { working } from "./targets/working.ts";
import { carding } from "./targets/written-sheets.ts";
import { workedOnce } from "./worked-once.ts";

/** The manual shows for every check a recipe that fails it. */
const failing: readonly BringsOut[] = vocabulary.checks.map(({ name, fails }) => ({
  file: "the manual's checks",
  code: name,
  text: fails,
}));

const kept = bringsOut();
const all = [...kept, ...failing];

// Those that cost little; the dear ones get what went wrong in them (corpus/), and spoiled recipes.
const targets = [reading, tidying, working, exporting(formats[0]!), measuring, checking, explaining, carding, mending];

describe.each([...new Set(all.map(({ file }) => file))])("%s", (file) => {
  test.each(all.filter((each) => each.file === file))("$code", async ({ code, text }: BringsOut) => {
    const { findings } = workedOnce(text);
    expect(findings.map((each) => each.code)).toContain(code);
    for (const target of targets) {
      const fault = await faultOf(target, { text, from: plainRecipe });
      expect(fault && faultInWords(fault)).toBeUndefined();
    }
  });
});

test("there are many, and a file says what it is for", () => {
  expect(kept.length).toBeGreaterThan(600);
  for (const file of new Set(kept.map((each) => each.file)))
    expect(readFileSync(new URL(`brings-out/${file}`, import.meta.url), "utf8")).toMatch(/^# guards: .{10}/);
});

/** The codes that sources of a folder give to findings: a text behind the word that makes one. */
const codesIn = (folder: URL): Map<string, string> => {
  const found = new Map<string, string>();
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (!file.endsWith(".ts")) continue;
    const source = readFileSync(new URL(file, folder), "utf8");
    const makers = /(?:\bnew (?:Problem|LimitReached|RecipeRefused)|\breport|\bfault)\(\s*"([a-z]+(?:-[a-z]+)+)"/g;
    for (const [, code] of source.matchAll(makers)) found.set(code!, file);
  }
  return found;
};

test("no code of grammar and kernel is without one", () => {
  const codes = new Map([
    ...codesIn(new URL("../../grammar/", import.meta.url)),
    ...codesIn(new URL("../../kernel/", import.meta.url)),
    ...vocabulary.checks.map(({ name }) => [name, "a check"] as const),
  ]);
  expect(codes.size).toBeGreaterThan(250);
  const here = new Set(all.map(({ code }) => code));
  const missing = [...codes].filter(([code]) => !here.has(code) && !elsewhere.has(code));
  expect(missing).toEqual([]);
  // And none is said to be elsewhere that is here.
  expect([...elsewhere.keys()].filter((code) => here.has(code) || !codes.has(code))).toEqual([]);
});

/** Codes that no recipe of a few lines brings out, and where they are tried. */
const elsewhere: ReadonlyMap<string, string> = new Map([
  ["file-too-large", "tests/trust/limits.test.ts, a file of 1 MiB"],
  ["line-too-long", "tests/trust/limits.test.ts"],
  ["value-too-long", "tests/trust/limits.test.ts"],
  ["text-too-long", "tests/trust/limits.test.ts"],
  ["word-too-long", "tests/trust/limits.test.ts"],
  ["limit-steps", "corpus/loops-in-loops.chalk"],
  ["limit-depth", "tests/trust/limits.test.ts"],
  ["limit-pieces", "tests/trust/limits.test.ts"],
  ["limit-effort", "tests/trust/limits.test.ts"],
  ["limit-record", "tests/trust/limits.test.ts"],
  ["limit-spans", "tests/trust/limits.test.ts"],
  ["limit-piece", "tests/trust/limits.test.ts"],
  ["limit-marks", "tests/trust/limits.test.ts"],
  ["limit-uses", "tests/trust/limits.test.ts, a hundred files"],
  ["limit-use-depth", "tests/trust/limits.test.ts, seventeen files"],
  ["use-cycle", "tests/pages/statements/use.md, two files"],
  ["measure-differs", "tests/pages/statements/use.md, two files"],
  ["plugin-failed", "it takes a step of one's own"],
  ["raglan-taken", "tests/pages/steps/raglan-sleeve.md, three pieces"],
  ["wear-loose", "tests/pages/steps/wear.md, two pieces"],
  ["waist-off-center", "tests/alterations/fit.test.ts, a whole back"],
  ["dart-off-edge", "tests/drawing/double-ended-dart.test.ts, a whole front"],
  // What stands behind another finding that comes first wherever it was looked for: they guard against what nobody thought of.
  ["outline-torn", "a step that leaves an outline open says so itself"],
  ["armhole-level", "no-armhole comes first"],
  ["join-name", "what both pieces have is numbered"],
  ["split-name", "split-misses comes first"],
  ["slash-too-short", "target-on-hinge-edge comes first"],
  ["slashes-cross", "slash-on-outline comes first"],
]);
