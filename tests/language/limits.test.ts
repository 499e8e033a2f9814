// Every limit of section 7 of the language: what is just within it is worked, and one more is a plain error.
import { describe, expect, test } from "vitest";
import { limits } from "../../grammar/limits.ts";
import { drafted, filesNamed, parse, told, work } from "./told.ts";

const times = (count: number, text: string): string => text.repeat(count);
const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index + 1)).join("\n");
const inPiece = (text: string): string => `chalkline 1\npiece a {\n${text}\n}`;

test("a file of 1 MiB is read, and one byte more is not", () => {
  const head = "chalkline 1\nlet a = 3 cm\n#";
  const full = head + times(limits.fileBytes - head.length, "x");
  expect(told(full)).toEqual([]);
  expect(told(`${full}x`)).toEqual(["1 file-too-large"]);
  // A letter beyond ASCII takes two bytes.
  expect(told(`${full.slice(0, -2)}é`)).toEqual([]);
  expect(told(`${full.slice(0, -1)}é`)).toEqual(["1 file-too-large"]);
});

describe("nesting", () => {
  test("64 brackets are read, 65 are not", () => {
    const nested = (depth: number): string => `chalkline 1\nlet a = ${times(depth, "(")}1 cm${times(depth, ")")}`;
    expect(told(nested(limits.nesting))).toEqual([]);
    expect(told(nested(limits.nesting + 1))).toEqual(["2 nesting-too-deep"]);
  });

  test("64 minus signs in a row are read, 65 are not", () => {
    const negated = (depth: number): string => `chalkline 1\nlet a = ${times(depth, "- ")}1 cm`;
    expect(told(negated(limits.nesting))).toEqual([]);
    expect(told(negated(limits.nesting + 1))).toEqual(["2 nesting-too-deep"]);
  });

  test("64 blocks are worked, 65 are not", () => {
    const blocks = (depth: number): string =>
      `chalkline 1\n${times(depth, "if 1 = 1 {\n")}let a = b\n${times(depth, "}\n")}`;
    expect(told(blocks(limits.nesting))).toEqual([`${limits.nesting + 2} name-unknown`]);
    expect(told(blocks(limits.nesting + 1))).toEqual([`${limits.nesting + 2} nesting-too-deep`]);
  });

  test("an if has 64 branches at most", () => {
    const branches = (count: number): string =>
      `chalkline 1\nif 1 = 2 { }\n${times(count - 2, "else if 1 = 2 { }\n")}else {\nlet a = b\n}`;
    expect(told(branches(limits.nesting))).toEqual([`${limits.nesting + 2} name-unknown`]);
    expect(told(branches(limits.nesting + 1))).toEqual([`${limits.nesting + 2} nesting-too-deep`]);
  });

  test("steps of the recipe's own may call one another as deep as lines may stand in one another", () => {
    const chain = (depth: number): string =>
      `chalkline 1\nstep s1 () { drill (0, 0) }\n${lines(depth - 1, (index) => `step s${index + 1} () { s${index} }`)}\npiece a { s${depth} }`;
    // The piece, the calls and the drill at the bottom stand in one another.
    expect(told(chain(limits.linesInLines - 2))).toEqual([]);
    expect(told(chain(limits.linesInLines - 1))).toEqual(["2 limit-depth"]);
    expect(told(chain(5000))).toHaveLength(1);
  });
});

describe("uses", () => {
  const empty = "chalkline 1";

  test("100 files, not 101", () => {
    const using = (count: number): string => `chalkline 1\n${lines(count, (index) => `use "a.chalk" as a${index}`)}`;
    const sources = filesNamed({ "a.chalk": empty });
    expect(told(using(limits.usedFiles), { sources })).toEqual([]);
    expect(told(using(limits.usedFiles + 1), { sources })).toEqual([`${limits.usedFiles + 2} limit-uses`]);
  });

  test("16 deep, not 17", () => {
    const chain = (depth: number): Record<string, string> =>
      Object.fromEntries(
        Array.from({ length: depth }, (_, index) => [
          `${index + 1}.chalk`,
          index + 1 < depth ? `chalkline 1\nuse "${index + 2}.chalk" as next` : empty,
        ]),
      );
    const opened = 'chalkline 1\nuse "1.chalk" as next\nlet a = 3 cm';
    expect(told(opened, { sources: filesNamed(chain(limits.useDepth)) })).toEqual([]);
    const tooDeep = drafted(opened, { sources: filesNamed(chain(limits.useDepth + 1)) });
    expect(tooDeep.findings.map(({ code, where }) => [code, where.file])).toEqual([["limit-use-depth", "16.chalk"]]);
    expect(tooDeep.values.has("a")).toBe(true);
  });

  test("a limit that a used recipe reaches is told where it is used, and ends the work", () => {
    const sources = filesNamed({
      "a.chalk": `chalkline 1\nrepeat 200 as i { repeat 200 as j { let k = 1 } }`,
    });
    const { findings, values } = drafted('chalkline 1\nlet a = 3 cm\nuse "a.chalk" as used\nlet b = 3 cm', { sources });
    expect(findings.map(({ code, where }) => [code, where.file, where.line])).toEqual([
      ["limit-steps", "test.chalk", 3],
    ]);
    expect([...values.keys()]).toEqual(["a"]);
  });
});

test("20,000 steps are worked, not one more, and what is there so far stays", () => {
  const recipe = (count: number): string =>
    `chalkline 1\n${lines(count - 1, (index) => `let a${index} = ${index} mm`)}`;
  expect(told(recipe(limits.steps))).toEqual([]);
  const { findings, values } = drafted(recipe(limits.steps + 1));
  expect(findings.map(({ code, where }) => [code, where.line])).toEqual([["limit-steps", limits.steps + 1]]);
  expect(values.size).toBe(limits.steps - 1);
});

test("rounds of repeat, trials of solve, and lines that cannot be read count as steps too", () => {
  expect(told(inPiece("repeat 200 as i { repeat 200 as j { let k = 1 } }"))).toEqual(["3 limit-steps"]);
  expect(told(inPiece("repeat 200 as i {\nrepeat 200 as j { drill }\n}"))).toContain("4 value-missing");
  expect(told(inPiece("repeat 200 as i { repeat 200 as j {\ndrill (\n} }"))).toContain("4 bracket-open");
  const solving =
    "solve h from 1 cm to 9 cm until h = x(spot) {\nrepeat 200 as i { repeat 5 as j { let k = 1 } }\npoint spot = (pi * 1 cm, 0)\n}";
  expect(told(inPiece(solving))).toEqual(["4 limit-steps"]);
});

test("the record holds pieces of 4,000,000 names in all, and is not asked for more", () => {
  // After n places the record holds 1 + 2 + … + n names, and four drill holes weigh as much as one.
  const places = (count: number): string => inPiece(lines(count, (index) => `point p${index} = (0, 0)`));
  const most = 2827;
  expect((most * (most + 1)) / 2).toBeLessThan(limits.recorded);
  expect(((most + 1) * (most + 2)) / 2).toBeGreaterThan(limits.recorded);
  expect(told(places(most))).toEqual([]);
  expect(told(places(most + 1))).toEqual([`${most + 3} limit-record`]);
});

test("500 pieces are made, not 501", () => {
  const recipe = (count: number): string => `chalkline 1\n${lines(count, (index) => `piece p${index} { }`)}`;
  expect(told(recipe(limits.pieces))).toEqual([]);
  const { findings, garment } = drafted(recipe(limits.pieces + 1));
  expect(findings.map(({ code, where }) => [code, where.line])).toEqual([["limit-pieces", limits.pieces + 2]]);
  expect(garment.pieces.size).toBe(limits.pieces);
});

test("100,000 lines and curves are drawn, not one more", () => {
  // 499 bends make 500 lines; two such edges in each of 100 pieces.
  const bends = Array.from({ length: 499 }, (_, index) => `(${index % 2},${index + 1} mm)`)
    .join(", ")
    .replaceAll("(1,", "(1 mm,");
  const piece = (name: string, edges: number, more = ""): string =>
    `piece ${name} {\nrepeat ${edges} as i { line a = (0, 0) to (1 m, 0) through ${bends} }\n${more}\n}`;
  const pieces = `chalkline 1\n${lines(99, (index) => piece(`p${index}`, 2))}`;
  const one = "line b = (0, 0) to (1 m, 0)";
  expect(told(`${pieces}\n${piece("a", 2)}`)).toEqual([]);
  expect(told(`${pieces}\n${piece("a", 1)}\n${piece("b", 1, one)}`)).toEqual([`${1 + 99 * 4 + 4 + 3} limit-spans`]);
  // What a copy shares with its source is there once.
  expect(told(`${pieces}\n${piece("a", 1)}\npiece c = a { }\npiece d = c { ${one} }`)).toEqual([]);
});

test("a statement has 4,000 words and signs, not one more", () => {
  const outline = (count: number): string => inPiece(`outline ${Array.from({ length: count }, () => "a").join(", ")}`);
  // The verb, and a comma between every two names.
  expect(told(outline(limits.statementWords / 2))).toEqual(["3 edge-wanted"]);
  expect(told(outline(limits.statementWords / 2 + 1))).toEqual(["3 line-too-long"]);
});

test("a value has 500 operators and place words, not one more", () => {
  const sum = (count: number): string => `chalkline 1\nlet a = 1 mm${times(count, " + 1 mm")}`;
  const walk = (count: number): string => inPiece(`point a = (0, 0)${times(count, " right 1 mm")}`);
  for (const recipe of [sum, walk]) {
    expect(told(recipe(limits.valueSigns))).toEqual([]);
    expect(told(recipe(limits.valueSigns + 1))).toEqual([expect.stringContaining("value-too-long")]);
  }
  // Values of a list count each for itself.
  const list = Array.from({ length: 9 }, (_, index) => `(0, ${index + 1} mm)${times(100, " right 1 mm")}`).join(", ");
  expect(told(inPiece(`line a = (0, 0) to (1 m, 0) through ${list}`))).toEqual([]);
});

test("a point lies within 100 m of the middle of the table", () => {
  expect(told(inPiece("point a = (100 m, -100 m)"))).toEqual([]);
  expect(told(inPiece("point a = (100.001 m, 0)"))).toEqual(["3 limit-table"]);
  expect(told(inPiece("point a = (0, -100.001 m)"))).toEqual(["3 limit-table"]);
  // So do marks, which are drawn like it.
  for (const mark of ["drill (0, 101 m)", 'label "far" at (101 m, 0)', "grain (0, 0) to (0, 101 m)"])
    expect(told(inPiece(`line t = (0, 0) to (1 m, 0)\n${mark}`))).toEqual(["4 limit-table"]);
  // The handles of a curve count as well as its ends.
  expect(told(inPiece("curve a = (0, 0) to (1 cm, 0) handles (101 m, 0), (0, 0)"))).toEqual(["3 limit-table"]);
});

const triangle = [
  "line t = (0, 0) to (1 m, 0)",
  "line s = (1 m, 0) to (1 m, 1 m)",
  "line u = (1 m, 1 m) to (0, 0)",
  "outline t, s, u",
].join("\n");

test("a step takes lengths up to 200 m, and a longer one is told where it stands", () => {
  // At 200 m it is the table that ends.
  expect(told(inPiece(`${triangle}\nextend-hem s by 200 m`))).toEqual(["7 limit-table"]);
  const text = inPiece(`${triangle}\nextend-hem s by 200.001 m`);
  expect(told(text)).toEqual(["7 limit-length"]);
  const { where } = work({ file: "test.chalk", text }).findings[0]!;
  expect(text.slice(where.from, where.to)).toBe("200.001 m");
});

test("an allowance is at most a meter wide, on a piece that a line of the garment makes too", () => {
  expect(told(inPiece(`${triangle}\nallow t by 1 m`))).toEqual([]);
  expect(told(inPiece(`${triangle}\nallow t by 1.001 m`))).toEqual(["7 limit-allowance"]);
  const gores = (seams: string): string => `chalkline 1\ngore panel = 60 cm hem 120 cm deep 60 cm in 6 seams ${seams}`;
  expect(told(gores("1 cm"))).toEqual([]);
  expect(told(gores("101 cm"))).toEqual(["2 limit-allowance"]);
});

test("200 findings are told, and the others counted", () => {
  const { findings, untold } = work({ file: "test.chalk", text: `chalkline 1\n${lines(350, () => "wobble")}` });
  expect(findings).toHaveLength(limits.findings);
  expect(untold).toBe(150);
  const worked = work({ file: "test.chalk", text: `chalkline 1\n${lines(350, (index) => `let a${index} = b`)}` });
  expect(worked.findings).toHaveLength(limits.findings);
  expect(worked.untold).toBe(150);
  expect(parse({ file: "test.chalk", text: lines(350, () => "?") }).untold).toBe(150);
});

test("no number that is not finite comes out of a recipe that is worked to its end", () => {
  const { values, findings } = drafted(`chalkline 1
let big = ${times(300, "9")}
let huge = big * 1 m
let area = huge * huge
let none = 0 * huge
let gone = huge / area
let tan = tan(90 deg)
let root = sqrt(area)
let far = round(huge, 1 mm)
let near = 1 mm / ${times(300, "9")} / ${times(300, "9")}`);
  expect(findings.length).toBeGreaterThan(0);
  for (const [name, { value }] of values) {
    if ("value" in value) expect(Number.isFinite(value.value), name).toBe(true);
  }
});
