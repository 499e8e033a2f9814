// One body, several recipes: what reaches a used recipe, what it hands on, and from where its own uses are read.
import { describe, expect, test } from "vitest";
import type { Sources } from "../../kernel/sources.ts";
import { drafted, filesNamed, told, work } from "./told.ts";

const block = `chalkline 1
measure hip-girth = 96 cm from 60 cm to 160 cm
param long = 60 cm from 10 cm to 100 cm
size tall { hip-girth = 98 cm }
piece panel {
  line top = (0, 0) to (hip-girth / 4, 0)
  line side = top.end to top.end down long
}`;
const mm = (value: number) => ({ kind: "length" as const, value });
const lengthOf = (outcome: ReturnType<typeof drafted>, name: string): number => {
  const value = outcome.values.get(name)?.value;
  return value?.kind === "length" ? value.value : Number.NaN;
};

describe("the body", () => {
  const text = 'chalkline 1\nuse "block.chalk" as block\nlet wide = length(block.panel.top)';
  const sources = filesNamed({ "block.chalk": block });

  test("has the defaults of the used recipe where nobody else says", () => {
    expect(lengthOf(drafted(text, { sources }), "wide")).toBeCloseTo(240, 9);
  });

  test("given from outside wins over every default", () => {
    const measures = new Map([["hip-girth", mm(1000)]]);
    expect(lengthOf(drafted(text, { sources, measures }), "wide")).toBeCloseTo(250, 9);
    const own = `chalkline 1\nmeasure hip-girth = 104 cm\n${text.slice(12)}`;
    expect(lengthOf(drafted(own, { sources }), "wide")).toBeCloseTo(260, 9);
    expect(lengthOf(drafted(own, { sources, measures }), "wide")).toBeCloseTo(250, 9);
  });

  test("of a size is taken from the table of the used recipe too", () => {
    expect(lengthOf(drafted(text, { sources, size: "tall" }), "wide")).toBeCloseTo(245, 9);
    const own = `${text}\nmeasure bust-girth = 90 cm\nsize tall { hip-girth = 102 cm, bust-girth = 94 cm }`;
    expect(lengthOf(drafted(own, { sources, size: "tall" }), "wide")).toBeCloseTo(255, 9);
  });

  test("out of the range that a recipe is made for is told where the range stands", () => {
    const measures = new Map([["hip-girth", mm(1700)]]);
    const { findings } = drafted(text, { sources, measures });
    expect(findings.map(({ code, where }) => [code, where.file, where.line])).toEqual([
      ["value-out-of-range", "block.chalk", 2],
    ]);
  });
});

describe("params", () => {
  const sources = filesNamed({
    "block.chalk": block,
    "between.chalk": 'chalkline 1\nparam long = 20 cm\nuse "block.chalk" as block { long = long * 2 }',
  });

  test("belong to their own recipe: the same file with other values, and one of the same name between", () => {
    const outcome = drafted(
      `chalkline 1
param long = 33 cm
use "block.chalk" as one
use "block.chalk" as other { long = 50 cm }
use "between.chalk" as between
let a = length(one.panel.side)
let b = length(other.panel.side)
let c = length(between.block.panel.side)
let d = between.block.long + long`,
      { sources, params: new Map([["long", mm(500)]]) },
    );
    expect(outcome.findings).toEqual([]);
    expect(["a", "b", "c", "d"].map((name) => lengthOf(outcome, name))).toEqual([600, 500, 400, 900]);
  });

  test("given to the recipe that is opened are held to their range and kind", () => {
    const text = "chalkline 1\nparam long = 60 cm from 10 cm to 100 cm";
    expect(told(text, { params: new Map([["long", mm(2000)]]) })).toEqual(["2 value-out-of-range"]);
    expect(told(text, { params: new Map([["long", { kind: "angle", value: 1 }]]) })).toEqual(["2 dimension"]);
  });
});

test("cuts and seams do not carry over, fabrics and checks do", () => {
  const sources = filesNamed({
    "made.chalk": `chalkline 1
fabric shell "drill" width 150 cm
piece a {
  line e1 = (0, 0) to (10 cm, 0)
  line e2 = (10 cm, 0) to (0, 0) through (10 cm, 10 cm), (0, 10 cm)
  outline e1, e2
  grain (1 cm, 1 cm) to (1 cm, 9 cm)
  allow e1, e2 by 1 cm
}
seam a.e1 with a.e1
cut a 2 from shell
check length(a.e1) > 20 cm`,
  });
  const { garment, findings, fabrics } = {
    fabrics: 0,
    ...work({ file: "test.chalk", text: 'chalkline 1\nuse "made.chalk" as made' }, { sources }),
  };
  expect(fabrics).toBe(0);
  expect([garment.pieces.size, garment.seams.length, garment.cuts.length]).toEqual([0, 0, 0]);
  expect([...garment.fabrics.keys()]).toEqual(["shell"]);
  expect(findings.map(({ code, where }) => [code, where.file, where.line])).toEqual([["check", "made.chalk", 12]]);
});

test("a path is read from the recipe that it stands in, and one file has one name", () => {
  const asked: string[] = [];
  const sources: Sources = {
    read: (path, from) => {
      asked.push(`${path} from ${from}`);
      const file = path.replace("../", "");
      const text = file === "inner.chalk" ? block : 'chalkline 1\nuse "../inner.chalk" as inner';
      return { file, text };
    },
  };
  expect(
    told('chalkline 1\nuse "deep/outer.chalk" as outer\nlet a = length(outer.inner.panel.top)', { sources }),
  ).toEqual([]);
  expect(asked).toEqual(["deep/outer.chalk from test.chalk", "../inner.chalk from deep/outer.chalk"]);
});

test("a cycle is found however the paths are written", () => {
  const sources: Sources = { read: () => ({ file: "test.chalk", text: "" }) };
  expect(told('chalkline 1\nuse "./deep/../test.chalk" as itself', { sources })).toEqual(["2 use-cycle"]);
});
