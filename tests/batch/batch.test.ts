// chalkline batch: a garment for every row of a table, bad rows named, safe in a spreadsheet, the same whatever the workers.
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";
import { batch, batchArgs, rowsOf, sash, table, ushers } from "./batch-runs.ts";

beforeAll(build);

const room = (bodies: string, recipe = sash): string => workroom(["sash.chalk", recipe], ["ushers.csv", bodies]);

test("a row of measures for each body, in the order of the table", () => {
  const folder = room("name,waist-girth (cm)\nIda,70\nBruno,84.5\nMaud,33 in\n");
  const { code, out, err } = batch(folder);
  expect(err).toMatch(/^3 rows in [\d.]+ s, [\d.]+ a second\n$/);
  expect(code).toBe(0);
  expect(out).toContain("sash.chalk: 3 rows of the table, into out");
  expect(rowsOf(table(folder, "measures.csv"))).toEqual([
    [
      ...["row", "name", "verdict", "errors", "warnings"],
      ...["waist-girth (cm)", "depth (cm)", "half (cm)", "sash width (cm)", "sash height (cm)"],
      ...["sash.upper (cm)", "sash.side (cm)", "sash.lower (cm)", "sash.center (cm)", "also measured"],
    ],
    // Half the waist: 70 / 2, 84.5 / 2, and 33 in = 83.82 cm, halved; 12 cm wide (plain sums).
    ["2", "Ida", "clean", "0", "0", "70", "12", "35", "35", "12", "35", "12", "35", "12", ""],
    ["3", "Bruno", "clean", "0", "0", "84.5", "12", "42.25", "42.25", "12", "42.25", "12", "42.25", "12", ""],
    ["4", "Maud", "clean", "0", "0", "83.82", "12", "41.91", "41.91", "12", "41.91", "12", "41.91", "12", ""],
  ]);
  expect(table(folder, "findings.csv")).toBe("row,name,severity,code,file,line,message,hint\r\n");
});

test("bad rows are named by row and column, in both tables and in the summary, and the others go on", () => {
  const folder = room(
    [
      "name,waist-girth (cm)",
      "Ida,70",
      "Bruno,ninety",
      "Maud,70,80",
      "Olga,20 deg",
      "Nils,",
      "Ada,112",
      'Gil,"70',
      "Uwe,71",
      "",
    ].join("\n"),
  );
  const { code, out } = batch(folder);
  expect(code).toBe(1);
  const verdicts = rowsOf(table(folder, "measures.csv")).map(([row, name, verdict]) => [row, name, verdict]);
  expect(verdicts.slice(1)).toEqual([
    ["2", "Ida", "clean"],
    ["3", "Bruno", "not worked"],
    ["4", "Maud", "not worked"],
    ["5", "Olga", "not worked"],
    ["6", "Nils", "warnings"],
    // 112 / 2 = 56, which is more than 52.
    ["7", "Ada", "errors"],
    ["8", "", "not worked"],
    ["9", "Uwe", "clean"],
  ]);
  const findings = table(folder, "findings.csv");
  const sentences = [
    'ushers.csv, row 3, column waist-girth: this is "ninety", which is not a number with a unit such as 92 cm.',
    "ushers.csv, row 4: there are 3 values, and only 2 columns.",
    "ushers.csv, row 5, column waist-girth: the recipe asks for a length, and this is an angle.",
    "ushers.csv, row 8: a quote is opened and never closed.",
  ];
  for (const sentence of sentences) {
    expect(findings).toContain(sentence.replaceAll('"', '""'));
    // The summary breaks its lines.
    expect(out.replace(/\n {4}/g, " ")).toContain(sentence);
  }
  expect(findings).toContain("row 6, column waist-girth: nothing stands here, so 70 cm is taken");
  expect(findings).toMatch(/^7,Ada,error,/m);
  expect(out).toMatch(/clean +2\n +with warnings +1\n +with errors +1\n +not worked +4\n/);
});

test("no name is a formula in a spreadsheet (OWASP, CSV injection)", () => {
  const folder = room('name,waist-girth (cm)\n"=HYPERLINK(""http://x"")",70\n+1,70\n@SUM(A1),seventy\n');
  batch(folder);
  const names = table(folder, "measures.csv").split("\r\n").slice(1, -1);
  expect(names[0]).toMatch(/^2,"'=HYPERLINK\(""http:\/\/x""\)",clean,/);
  expect(names[1]).toMatch(/^3,'\+1,clean,/);
  expect(table(folder, "findings.csv")).toMatch(/^4,'@SUM\(A1\),error,/m);
});

test("one worker and two give the same bytes, and so does any other way to deal out the rows", () => {
  const folder = room(ushers(700));
  batch(folder, "--workers", "1");
  const [measures, findings] = [table(folder, "measures.csv"), table(folder, "findings.csv")];
  batch(folder, "--workers", "2", "--anew");
  expect(table(folder, "measures.csv")).toBe(measures);
  expect(table(folder, "findings.csv")).toBe(findings);
  const rows = rowsOf(measures).slice(1);
  expect(rows.map(([row]) => Number(row))).toEqual(Array.from({ length: 700 }, (_, index) => index + 2));
});

test("drawings are those of chalkline draw for the same body, in a folder for each row", () => {
  const folder = room("name,waist-girth (cm)\nIda,70\n../../Ida & Co,84\n");
  expect(batch(folder, "--as", "svg,dxf,pdf", "--paper", "a1").code).toBe(0);
  expect(readdirSync(join(folder, "out/drawings"))).toEqual(["000002-Ida", "000003-Ida-Co"]);
  const names = ["cutting-room.dxf", "sash.svg", "sheet-a1.pdf", "sheet.svg"];
  expect(readdirSync(join(folder, "out/drawings/000002-Ida")).sort()).toEqual(names);
  const args = ["--body", "ushers.csv", "--person", "Ida", "--as", "svg,dxf,pdf", "--paper", "a1"];
  chalkline(folder, ["draw", "sash.chalk", "--out", "drawn", ...args]);
  for (const name of names)
    expect(readFileSync(join(folder, "out/drawings/000002-Ida", name))).toEqual(
      readFileSync(join(folder, "drawn", name)),
    );
});

test("--set holds for all, a missing column is said, and a design choice is no column", () => {
  const folder = room("name,height\nIda,170 cm\n");
  const none = batch(folder);
  expect([none.code, none.err]).toEqual([
    2,
    "error: ushers.csv has no column for any measure that the recipe asks for: waist-girth.\n",
  ]);
  const two = sash.replace("param depth", 'measure height = 168 cm from 100 cm to 220 cm "Height"\nparam depth');
  writeFileSync(join(folder, "sash.chalk"), two);
  const { err } = batch(folder, "--set", "depth=10cm");
  expect(err).toContain("note: ushers.csv has no column waist-girth: 70 cm is taken for every body.");
  expect(table(folder, "measures.csv").split("\r\n")[1]).toMatch(/^2,Ida,clean,0,0,70,170,10,35,35,10,/);
  writeFileSync(join(folder, "ushers.csv"), "name,waist-girth (cm),depth (cm)\nIda,70,9\n");
  const choice = batch(folder, "--anew");
  expect(choice.code).toBe(2);
  expect(choice.err).toContain("depth is a design choice of the recipe and no body measure; give it with --set.");
});

test("a misspelt heading stops a batch before anybody is drafted to the recipe's own measure", () => {
  const recipe = sash.replace(
    "param depth",
    'measure hip-girth = 90 cm from 60 cm to 160 cm "Round the hip"\nparam depth',
  );
  const folder = room("name,waist-girth (cm),hip-grith (cm)\nIda,70,95\n", recipe);
  const { code, err } = batch(folder);
  expect(code).toBe(2);
  expect(err).toContain("ushers.csv has a column hip-grith, and the recipe asks for no such measure.");
  expect(err).toContain("Did you mean hip-girth?");
  expect(existsSync(join(folder, "out"))).toBe(false);
});

test("a recipe whose lines fail is told once, and nothing is drafted", () => {
  const folder = room(ushers(50), sash.replace("point C = B down depth", "point C = B down dept"));
  const { code, err } = batch(folder);
  expect(code).toBe(1);
  expect(err.match(/dept/g)!.length).toBeLessThan(6);
  expect(err).toContain("so nothing was drafted.");
  expect(existsSync(join(folder, "out"))).toBe(false);
});

test.each([
  [["--workers", "0"], "--workers takes a whole number from 1 to 256, and this is 0."],
  [["--workers", "2.5"], "--workers takes a whole number from 1 to 256, and this is 2.5."],
  [["--as", "svf"], "There is no format svf."],
  [["--as", "svg", "--paper", "a4"], "--paper is what a PDF is laid out on"],
  [["--set", "dept=9cm"], "the recipe has no param or measure called dept."],
])("%j is refused in a sentence", (args, sentence) => {
  const { code, err } = batch(room(ushers(3)), ...args);
  expect(code).toBe(2);
  expect(err).toContain(sentence);
});

test.each([
  ["", "ushers.csv: the table is empty."],
  ["name,waist-girth (cm)\n\n", "ushers.csv has a row of headings, and no body below it."],
  ["waist-girth\n70 cm\n", "ushers.csv has to begin with a row of headings: name, then one measure a column"],
  ["name,waist-girth,waist-girth\nIda,1,2\n", "ushers.csv has two columns waist-girth."],
  ["name,waist-girth\nIda,70 cm\nBru\u0000no,80 cm\n", "ushers.csv: behind row 1 it holds bytes that no text has."],
])("a table that is none is refused as a whole: %j", (bodies, sentence) => {
  const { code, err } = batch(room(bodies));
  expect([code, err.includes(sentence)]).toEqual([2, true]);
});

test("what is changed is not mixed with what was done", () => {
  const folder = room(ushers(30));
  expect(batch(folder).code).toBe(0);
  const again = batch(folder);
  expect(again.code).toBe(0);
  expect(again.err).toContain("All of it was done before.");
  expect(again.out).toContain("30 rows of the table");
  const before = table(folder, "measures.csv");
  const refused = (...args: string[]): string => {
    const { code, err } = batch(folder, ...args);
    expect(code).toBe(2);
    expect(table(folder, "measures.csv")).toBe(before);
    return err;
  };
  expect(refused("--set", "depth=9cm")).toContain("it was begun with other options.");
  expect(refused("--as", "svg")).toContain("it was begun with other options.");
  writeFileSync(join(folder, "sash.chalk"), sash.replace("12 cm", "13 cm"));
  expect(refused()).toContain("the recipe, or one that it uses, has been changed since.");
  writeFileSync(join(folder, "sash.chalk"), sash);
  writeFileSync(join(folder, "ushers.csv"), ushers(31));
  expect(refused()).toContain("the table of bodies is another one, or has been changed since.");
  expect(batch(folder, "--anew").code).toBe(0);
  expect(table(folder, "measures.csv").split("\r\n")).toHaveLength(31 + 2);
});

test("--anew takes the drawings of the batch before away, and nothing of anybody else's", () => {
  const folder = room(ushers(2));
  batch(folder, "--as", "svg");
  mkdirSync(join(folder, "out/drawings/photos"));
  writeFileSync(join(folder, "ushers.csv"), ushers(1));
  expect(batch(folder, "--as", "dxf", "--anew").code).toBe(0);
  expect(readdirSync(join(folder, "out/drawings"))).toEqual(["000002-Usher-1", "photos"]);
  expect(readdirSync(join(folder, "out/drawings/000002-Usher-1"))).toEqual(["cutting-room.dxf"]);
});

test("what only some bodies have stands in the last column, and what they lack is left empty", () => {
  const inTwo = `  if half < 40 cm {
    outline upper, side, lower, center
  } else {
    line inner = A to A right 20 cm
    line outer = A right 20 cm to B
    outline inner, outer, side, lower, center
  }`;
  const folder = room(
    "name,waist-girth (cm)\nIda,70\nBruno,90\n",
    sash.replace("  outline upper, side, lower, center", inTwo),
  );
  expect(batch(folder).code).toBe(0);
  // Half of 90 cm is 45 cm: 20 and 25.
  expect(table(folder, "measures.csv").split("\r\n").slice(1, 3)).toEqual([
    "2,Ida,clean,0,0,70,12,35,35,12,35,12,35,12,",
    "3,Bruno,clean,0,0,90,12,45,45,12,,12,45,12,sash.inner (cm) 20; sash.outer (cm) 25",
  ]);
});

test("a folder that cannot be written into is refused", () => {
  const folder = room(ushers(3));
  const { code, err } = chalkline(folder, batchArgs().with(5, "sash.chalk/out"));
  expect(code).toBe(2);
  expect(err).toMatch(/^error: sash\.chalk\/out .*cannot be written/);
});
