// chalkline measure: tables and JSON, and the values that may be given from outside.
import { beforeAll, describe, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

const measured = (recipe: string, args: readonly string[] = [], more: readonly (readonly [string, string])[] = []) => {
  const { code, out, err } = chalkline(workroom(["panel.chalk", recipe], ...more), [
    "measure",
    "panel.chalk",
    "--json",
    ...args,
  ]);
  return { code, err, report: out === "" ? undefined : JSON.parse(out) };
};

describe("--json", () => {
  test("has the fields that were promised, in mm and degrees at full precision", () => {
    const { report, code } = measured(`${panel}let slant = 30 deg\nlet half = 1 / 3\n`);
    expect(code).toBe(0);
    expect(Object.keys(report)).toEqual(["schema", "recipe", "values", "pieces", "seams", "checks", "steps"]);
    expect(report.schema).toBe(1);
    expect(report.recipe).toEqual({ title: "Usher's apron panel", file: "panel.chalk" });
    expect(report.values).toMatchObject({
      flare: { kind: "length", value: 200 },
      "waist-girth": { kind: "length", value: 700 },
      quarter: { kind: "length", value: 175 },
      half: { kind: "number", value: 1 / 3 },
    });
    expect(report.values.slant.value).toBeCloseTo(30, 10);
  });

  test("measures a rectangle as a rectangle", () => {
    const [plain] = measured(panel).report.pieces;
    // 300 x 1000 mm.
    expect(plain).toMatchObject({
      name: "panel",
      from: null,
      area: 300_000,
      perimeter: 2600,
      width: 300,
      height: 1000,
    });
    expect(plain.edges[2]).toEqual({
      name: "hem",
      role: "hem",
      length: 300,
      cutLength: 300,
      start: [0, 1000],
      end: [300, 1000],
    });
    expect(plain.edges.map(({ name }: { name: string }) => name)).toEqual(["waist", "side", "hem", "center"]);
    expect(plain.places).toEqual({ A: [0, 0], B: [300, 0], C: [300, 1000], D: [0, 1000] });
    expect(plain.notches).toEqual([{ edge: "side", at: 200, point: [300, 200], double: false }]);
  });

  test("the opened rectangle has the hem of the language's worked example, and its wedge more cloth", () => {
    const [, wide] = measured(panel).report.pieces;
    expect(wide.from).toBe("panel");
    const hem = wide.edges.find(({ name }: { name: string }) => name === "hem");
    // 300 mm and an arc of radius 1000 whose chord is 200: 300 + 2000 asin(0.1) = 500.335.
    expect(hem.length).toBeCloseTo(300 + 2000 * Math.asin(0.1), 6);
  });

  test("every check is there with its verdict, passes too, and every step in words", () => {
    const { report } = measured(panel);
    const kept = report.checks.filter(({ check }: { check: string }) => check === "kept-length");
    expect(kept.map(({ on, verdict }: { on: string; verdict: string }) => [on, verdict])).toEqual([
      ["wide.side", "pass"],
      ["wide.center", "pass"],
    ]);
    expect(Object.keys(kept[0])).toEqual(
      expect.arrayContaining(["check", "on", "verdict", "found", "wanted", "line", "message"]),
    );
    const spread = report.steps.find(({ step }: { step: string }) => step === "spread-from");
    expect(spread).toMatchObject({ line: 22, piece: "wide" });
    expect(spread.words).toMatch(/^opened 20 cm at the hem/);
    expect(report.steps[0]).toEqual({ line: 8, piece: "panel", step: "point", words: "point A = (0, 0)" });
  });

  test("seams have both lengths, the difference and a verdict", () => {
    const { report, code } = measured(
      `${panel}seam panel.side with wide.center\nseam wide.hem with panel.hem ease 10 cm\n`,
    );
    expect(report.seams[0]).toEqual({
      first: ["panel.side"],
      second: ["wide.center"],
      ease: 0,
      firstLength: 1000,
      secondLength: expect.closeTo(1000, 6),
      difference: expect.closeTo(0, 6),
      verdict: expect.stringMatching(/^(pass|warning|error)$/),
    });
    // 500.335 against 300 with 100 of ease does not fit.
    expect(report.seams[1].verdict).toBe("error");
    expect(code).toBe(1);
  });

  test("a piece that is not closed has no extent, and its finding goes to the other stream", () => {
    const { report, err, code } = measured("chalkline 1\npiece scrap {\n  point A = (0, 0)\n}\n");
    expect(report.pieces[0]).toMatchObject({ area: null, perimeter: null, cutting: null, edges: [] });
    expect(err).toContain("error outline-closed");
    expect(code).toBe(1);
  });
});

test("the tables hold an altered piece against the one it was copied from", () => {
  const { out } = chalkline(workroom(["panel.chalk", panel]), ["measure", "panel.chalk"]);
  const wide = out.slice(out.indexOf("\nwide"));
  expect(wide).toMatch(/^\nwide {2}from panel\n/);
  expect(wide).toMatch(/ {2}side +seam +100 cm +100 cm += {2,}kept\n/);
  // 500.335 mm against 300.
  expect(wide).toMatch(/ {2}hem +hem +50\.03 cm +30 cm +\+20\.03 cm\n/);
  expect(out).toMatch(/ {2}22 {2}wide {2}spread-from {2}opened 20 cm at the hem/);
});

test("inches are shown to a sixteenth, under one another", () => {
  const recipe = panel.replace("units cm", "units in").replaceAll(/(\d+) cm/g, "$1 in");
  const { out } = chalkline(workroom(["panel.chalk", recipe]), ["measure", "panel.chalk", "--set", "flare=4 5/8 in"]);
  expect(out).toMatch(/ {2}flare {2}4 5\/8 in {2}0 in to 40 in {2}opening at the hem\n/);
});

describe("--set", () => {
  test("gives params and measures another value, in the language's own numbers", () => {
    const { report } = measured(panel, ["--set", "flare=1 1/2in", "--set", "waist-girth = 80 cm"]);
    expect(report.values).toMatchObject({
      flare: { kind: "length", value: expect.closeTo(38.1, 9) },
      "waist-girth": { kind: "length", value: 800 },
      quarter: { kind: "length", value: 200 },
    });
  });

  test.each([
    ["flre=5cm", "--set flre=5cm: the recipe has no param or measure called flre. Did you mean flare?"],
    [
      "flare=5",
      "--set flare=5: flare is a length, and this is a plain number. Write --set flare=5cm, if cm are meant.",
    ],
    ["flare=wide", '--set flare=wide: "wide" is not a number with a unit such as 12cm.'],
    [
      "flare=5cm } piece x {",
      '--set flare=5cm } piece x {: "5cm } piece x {" is not a number with a unit such as 12cm.',
    ],
    ["quarter=5cm", "--set quarter=5cm: the recipe has no param or measure called quarter."],
  ])("refuses %s", (setting, message) => {
    expect(measured(panel, ["--set", setting])).toEqual({ code: 2, err: `error: ${message}\n`, report: undefined });
  });

  test("a value outside its range is a finding", () => {
    const { code, err } = measured(panel, ["--set", "flare=41cm"]);
    expect(err).toContain("flare is 41 cm, outside 0 cm to 40 cm.");
    expect(code).toBe(1);
  });
});

describe("--body", () => {
  const waistFrom = (content: string, ...args: string[]) =>
    measured(panel, ["--body", "body", ...args], [["body", content]]);
  const tables = [
    ["JSON", '{ "waist-girth": "81 cm" }'],
    ["a row a body", "name,waist-girth (cm)\nUsher 1,81\n"],
    ["a unit in the cell", "name,waist-girth\nUsher 1,81 cm\n"],
    ["two columns", "measure,value\nwaist-girth,81 cm\n"],
    ["two columns without headings", '"waist-girth","81 cm"\r\n'],
    ["two columns with the unit above", "measure,value (cm)\nwaist-girth,81\n"],
    ["semicolons and decimal commas", "name;waist-girth (cm)\nUsher 1;81,0\n"],
    ["tabs", "name\twaist-girth (cm)\nUsher 1\t81\n"],
  ] as const;

  test.each(tables)("reads %s", (_, content) => {
    expect(waistFrom(content).report.values["waist-girth"]).toEqual({ kind: "length", value: 810 });
  });

  test("inch fractions and other units than cm", () => {
    // 31 1/2 in = 800.1 mm.
    expect(waistFrom("name,waist-girth (in)\nUsher 1,31 1/2\n").report.values["waist-girth"].value).toBeCloseTo(
      800.1,
      9,
    );
  });

  test("--person picks the row, --set wins over the body", () => {
    const table = "name,waist-girth (cm)\nUsher 1,81\nUsher 2,90\n";
    expect(waistFrom(table, "--person", "Usher 2").report.values["waist-girth"].value).toBe(900);
    expect(
      waistFrom(table, "--person", "Usher 2", "--set", "waist-girth=66cm").report.values["waist-girth"].value,
    ).toBe(660);
    expect(waistFrom(table).err).toBe("error: body holds 2 bodies; pick one with --person NAME: Usher 1, Usher 2.\n");
    expect(waistFrom(table, "--person", "Usher 3").err).toContain("body holds no body called Usher 3.");
  });

  test("an unknown measure is named, with the near one, and the rest is used", () => {
    const { code, err, report } = waistFrom('{ "waist-grith": "81 cm" }');
    expect(err).toContain("note: The recipe asks for no measure called waist-grith. Did you mean waist-girth?\n");
    expect(report.values["waist-girth"].value).toBe(700);
    expect(code).toBe(0);
  });

  test.each([
    [
      "a number without a unit in JSON",
      '{ "waist-girth": 81 }',
      'body: waist-girth is 81 without a unit; write "81 cm" in quotes.',
    ],
    ["broken JSON", '{ "waist-girth": ', "body begins like JSON, but is not well formed."],
    [
      "a cell that is no number",
      "name,hip,waist-girth (cm)\nUsher 1,,81\nUsher 2,,wide\n",
      'body, row 3, column waist-girth: this is "wide", which is not a number with a unit such as 92 cm.',
    ],
    [
      "a cell without a unit",
      "name,waist-girth\nUsher 2,81\n",
      "body, row 2, column waist-girth: this is 81 without a unit; write 81 cm, or (cm) behind the heading.",
    ],
    [
      "a unit that is none",
      "name,waist-girth (ells)\nUsher 2,81\n",
      'body, row 2, column waist-girth: this is 81 in "ells", which is no unit of length.',
    ],
    [
      "a row with too many cells",
      "name,waist-girth (cm)\nUsher 2,81,82\n",
      "body, row 2: there are 3 values, and only 2 columns.",
    ],
    [
      "a bad row of two columns",
      "waist-girth,81 cm\nhip-girth\n",
      "body, row 2: two values are wanted here, a measure and its amount, and there is 1.",
    ],
    ["an angle", '{ "waist-girth": "81 deg" }', "--body waist-girth: waist-girth is a length, and this is an angle."],
    [
      "a design choice",
      '{ "flare": "8 cm" }',
      "flare is a design choice of the recipe and no body measure; give it with --set.",
    ],
    ["a quote without an end", 'name,"waist', "body: row 1: a quote is opened and never closed."],
    ["nothing", "\n", "body is empty."],
  ])("refuses %s", (_, content, message) => {
    const person = content.includes("Usher 1") ? ["--person", "Usher 2"] : [];
    expect(waistFrom(content, ...person)).toEqual({ code: 2, err: `error: ${message}\n`, report: undefined });
  });

  test("a body that cannot be read", () => {
    expect(measured(panel, ["--body", "none.csv"])).toMatchObject({
      code: 2,
      err: "error: There is no file none.csv.\n",
    });
  });
});

test("--size drafts for a size of the table, and names the sizes there are", () => {
  const graded = `${panel}size S { waist-girth = 64 cm }\nsize M { waist-girth = 70 cm }\nbase size M\n`;
  expect(measured(graded, ["--size", "S"]).report.values["waist-girth"].value).toBe(640);
  expect(measured(graded, ["--size", "XXL"])).toMatchObject({
    code: 2,
    err: "error: --size XXL: the recipe has no such size. It has S, M.\n",
  });
  expect(measured(panel, ["--size", "S"]).err).toBe("error: --size S: the recipe has no size table.\n");
});
