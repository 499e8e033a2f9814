// stress: a recipe that holds for everybody passes, and one that does not is brought down to the values it fails with.
import { describe, expect, test } from "vitest";
import { stress } from "../../kernel/stress/stress.ts";
import { type StressPlan, trialsFor } from "../../kernel/stress/trials.ts";
import { length } from "../../kernel/value.ts";
import { chalkline, recipeSources } from "../worked-recipe.ts";

const plan = (more: Partial<StressPlan> = {}): StressPlan => ({ tries: 40, seed: 1, bodies: [], ...more });
const stressed = (text: string, more: Partial<StressPlan> = {}) =>
  stress(chalkline, { file: "test.chalk", text }, { sources: recipeSources }, plan(more));

const panel = (check: string): string => `chalkline 1
recipe "Panel"
units cm
measure hip-girth = 96 cm from 70 cm to 170 cm "Hip"
param flare = 4 cm from 0 cm to 20 cm "at the hem"
param longer = 2 cm from 0 cm to 10 cm "at the hem"
piece panel {
  line waist = (0, 0) to (hip-girth / 4, 0)
  line side = (hip-girth / 4, 0) to (hip-girth / 4 + flare, 60 cm + longer)
  line hem = (0, 60 cm + longer) to (hip-girth / 4 + flare, 60 cm + longer)
  line center = (0, 0) to (0, 60 cm + longer)
  outline waist, side, hem, center
}
${check}
`;

describe("a recipe that holds", () => {
  test("passes with its defaults, every corner and every sample", () => {
    // 1 with the defaults, 4 corners of two params, 40 samples.
    expect(stressed(panel("check flare >= 0 cm"))).toEqual({ tried: 45, passed: 45, outOfRange: 0, failures: [] });
  });

  test("is tried in every size too", () => {
    const sized = panel("size S { hip-girth = 88 cm }\nsize L { hip-girth = 104 cm }\ncheck flare >= 0 cm");
    expect(stressed(sized).tried).toBe(47);
  });
});

describe("a recipe that fails somewhere", () => {
  test("is brought down to the one value that it takes, as near to its default as it still fails", () => {
    const { failures } = stressed(panel("check flare < 12 cm"));
    expect(failures).toHaveLength(1);
    const [failure] = failures;
    expect(failure).toMatchObject({ check: "check", on: "flare < 12 cm", line: 14, origin: "a corner of the ranges" });
    expect([...failure!.values.keys()]).toEqual(["flare"]);
    // Six halvings of 4 to 20 cm leave 2.5 mm of doubt.
    expect(failure!.values.get("flare")!.value).toBeGreaterThanOrEqual(120);
    expect(failure!.values.get("flare")!.value).toBeLessThanOrEqual(122.5);
  });

  test("keeps both values where it takes both", () => {
    const { failures } = stressed(panel("check flare + longer < 25 cm"));
    expect([...failures[0]!.values.keys()].sort()).toEqual(["flare", "longer"]);
  });

  test("says how often", () => {
    const { tried, passed, failures } = stressed(panel("check flare < 12 cm"));
    expect(failures[0]!.times).toBe(tried - passed);
  });
});

describe("bodies", () => {
  const bodies = [
    { name: "usher 1", measures: new Map([["hip-girth", length(1000)]]) },
    { name: "usher 2", measures: new Map([["hip-girth", length(1900)]]) },
    {
      name: "usher 3",
      measures: new Map([
        ["hip-girth", length(1200)],
        ["head-girth", length(560)],
      ]),
    },
  ];

  test("out of the stated range are counted, and fail nothing", () => {
    const report = stressed(panel("check flare >= 0 cm"), { bodies, tries: 0 });
    expect(report).toMatchObject({ tried: 8, passed: 7, outOfRange: 1, failures: [] });
  });

  test("are named in a failure", () => {
    const report = stressed(panel("check hip-girth < 110 cm"), { bodies, tries: 0 });
    expect(report.failures[0]).toMatchObject({ origin: "usher 3", times: 1 });
  });
});

test("the same seed gives the same trials, another seed another sample", () => {
  const evaluated = chalkline.work({ file: "test.chalk", text: panel("") });
  const sample = (seed: number) => trialsFor(evaluated, plan({ seed })).slice(5);
  expect(sample(1)).toEqual(sample(1));
  expect(sample(2)).not.toEqual(sample(1));
});

test("the coat block holds for its sizes, its corners and sampled bodies", () => {
  const text = 'chalkline 1\nuse "blocks/straight-coat.chalk" as straight\n';
  expect(stressed(text, { tries: 60 }).failures).toEqual([]);
});
