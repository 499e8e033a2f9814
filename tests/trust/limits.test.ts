// Every limit of grammar/limits.ts from both sides: a recipe that goes as far as it may is worked, and one that goes one further is
// told so, under the limit's code and at the very words that go too far. A limit that stands in the table and has no case here fails.
import { describe, expect, test } from "vitest";
import { limits } from "../../grammar/limits.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { straight } from "../../kernel/geometry/path.ts";
import { papers } from "../../kernel/paper/papers.ts";
import { printOn } from "../../kernel/paper/print.ts";
import type { Sources } from "../../kernel/sources.ts";
import { told as codes, drafted, filesNamed, parse, timed, work } from "../language/told.ts";

const times = (count: number, text: string): string => text.repeat(count);
const lines = (count: number, line: (index: number) => string): string =>
  Array.from({ length: count }, (_, index) => line(index + 1)).join("\n");
const inPiece = (text: string): string => `chalkline 1\npiece a {\n${text}\n}`;

/** A recipe that goes so far, and what stands at the spot that goes too far: its first letters suffice. */
interface Reach {
  /** The recipe that goes just as far as it may. */
  readonly within: string;
  readonly past: string;
  readonly code: string;
  /** The line, and how the text at the finding begins. */
  readonly at: readonly [line: number, text: string];
  readonly sources?: Sources;
}

const bent = (name: string, count: number): string =>
  `line ${name} = (0, 0) to (1 m, 0)${count === 1 ? "" : ` through ${Array.from({ length: count - 1 }, (_, index) => `(${index + 1} mm, 1 mm)`).join(", ")}`}`;

const triangle =
  "line t = (0, 0) to (1 m, 0)\nline s = (1 m, 0) to (1 m, 1 m)\nline u = (1 m, 1 m) to (0, 0)\noutline t, s, u";

const chained = (depth: number): Sources =>
  filesNamed(
    Object.fromEntries(
      Array.from({ length: depth }, (_, index) => [
        `${index + 1}.chalk`,
        index + 1 < depth ? `chalkline 1\nuse "${index + 2}.chalk" as next` : "chalkline 1",
      ]),
    ),
  );

const reaches: Partial<Record<keyof typeof limits, Reach>> = {
  fileBytes: {
    within: `chalkline 1\n#${times(limits.fileBytes - 13, "x")}`,
    past: `chalkline 1\n#${times(limits.fileBytes - 12, "x")}`,
    code: "file-too-large",
    at: [1, ""],
  },
  nesting: {
    within: `chalkline 1\nlet a = ${times(limits.nesting, "(")}1${times(limits.nesting, ")")}`,
    past: `chalkline 1\nlet a = ${times(limits.nesting + 1, "(")}1${times(limits.nesting + 1, ")")}`,
    code: "nesting-too-deep",
    at: [2, "("],
  },
  wordLetters: {
    within: `chalkline 1\nlet ${times(limits.wordLetters, "a")} = 1`,
    past: `chalkline 1\nlet ${times(limits.wordLetters + 1, "b")} = 1`,
    code: "word-too-long",
    at: [2, "bbb"],
  },
  textLetters: {
    within: inPiece(`label "${times(limits.textLetters, "c")}"`),
    past: inPiece(`label "${times(limits.textLetters + 1, "d")}"`),
    code: "text-too-long",
    at: [3, '"ddd'],
  },
  statementWords: {
    // `let a = min(` and `)` are six words and signs, 1,997 numbers with their commas 3,993, and a minus is one more.
    within: `chalkline 1\nlet a = min(${times(1996, "1, ")}-1)`,
    past: `chalkline 1\nlet a = min(${times(1996, "1, ")}- -1)`,
    code: "line-too-long",
    at: [2, ")"],
  },
  valueSigns: {
    within: `chalkline 1\nlet a = 1${times(limits.valueSigns, " + 1")}`,
    past: `chalkline 1\nlet a = 1${times(limits.valueSigns, " + 1")} / 1`,
    code: "value-too-long",
    at: [2, "/"],
  },
  usedFiles: {
    within: `chalkline 1\n${lines(limits.usedFiles, (index) => `use "1.chalk" as a${index}`)}`,
    past: `chalkline 1\n${lines(limits.usedFiles + 1, (index) => `use "1.chalk" as a${index}`)}`,
    code: "limit-uses",
    at: [limits.usedFiles + 2, '"1.chalk"'],
    sources: chained(1),
  },
  linesInLines: {
    within: `chalkline 1\nstep s1 () { let a = 1 }\n${lines(limits.linesInLines - 2, (index) => `step s${index + 1} () { s${index} }`)}\ns${limits.linesInLines - 1}`,
    past: `chalkline 1\nstep s1 () { let a = 1 }\n${lines(limits.linesInLines - 1, (index) => `step s${index + 1} () { s${index} }`)}\ns${limits.linesInLines}`,
    code: "limit-depth",
    at: [2, "let"],
  },
  steps: {
    within: `chalkline 1\n${lines(limits.steps - 1, () => "if 1 = 2 { }")}`,
    past: `chalkline 1\n${lines(limits.steps, () => "if 1 = 2 { }")}`,
    code: "limit-steps",
    at: [limits.steps + 1, "if"],
  },
  rounds: {
    within: `chalkline 1\nrepeat ${limits.rounds} as i { let k = i }`,
    past: `chalkline 1\nrepeat ${limits.rounds + 1} as i { let k = i }`,
    code: "limit-rounds",
    at: [2, String(limits.rounds + 1)],
  },
  pieces: {
    within: `chalkline 1\n${lines(limits.pieces, (index) => `piece p${index} { }`)}`,
    past: `chalkline 1\n${lines(limits.pieces + 1, (index) => `piece p${index} { }`)}`,
    code: "limit-pieces",
    at: [limits.pieces + 2, "piece"],
  },
  recorded: {
    // After n places the record holds 1 + 2 + … + n names: 2827 * 2828 / 2 = 3,997,378, and 2,828 more are too many.
    within: inPiece(lines(2827, (index) => `point p${index} = (0, 0)`)),
    past: inPiece(lines(2828, (index) => `point p${index} = (0, 0)`)),
    code: "limit-record",
    at: [2830, "point"],
  },
  curveSpans: {
    within: `chalkline 1\n${lines(100, (index) => `piece p${index} {\nrepeat 4 as i { ${bent("a", 250)} }\n}`)}`,
    past: `chalkline 1\n${lines(100, (index) => `piece p${index} {\nrepeat 4 as i { ${bent("a", 250)} }\n}`)}\npiece last {\n${bent("a", 1)}\n}`,
    code: "limit-spans",
    at: [303, "line a"],
  },
  pieceSpans: {
    within: inPiece(`${bent("a", 400)}\n${bent("b", 400)}\n${bent("c", 200)}`),
    past: inPiece(`${bent("a", 400)}\n${bent("b", 400)}\n${bent("c", 201)}`),
    code: "limit-piece",
    at: [5, "line c"],
  },
  marks: {
    within: inPiece(
      `repeat 200 as i { drill (0, 0) }\nrepeat 200 as i { label "a" }\nrepeat 100 as i { drill (0, 0) }`,
    ),
    past: inPiece(
      `repeat 200 as i { drill (0, 0) }\nrepeat 200 as i { label "a" }\nrepeat 100 as i { drill (0, 0) }\nlabel "b"`,
    ),
    code: "limit-marks",
    at: [6, 'label "b"'],
  },
  coordinate: {
    within: inPiece("point a = (100 m, -100 m)"),
    past: inPiece("point b = (100.001 m, 0)"),
    code: "limit-table",
    at: [3, "point b"],
  },
  length: {
    within: inPiece(`${triangle}\nextend-hem s by 99 m`),
    past: inPiece(`${triangle}\nextend-hem s by 200.001 m`),
    code: "limit-length",
    at: [7, "200.001 m"],
  },
  allowance: {
    within: inPiece(`${triangle}\nallow s by 1 m`),
    past: inPiece(`${triangle}\nallow s by 1.001 m`),
    code: "limit-allowance",
    at: [7, "allow s"],
  },
  solveDepth: {
    within: inPiece("solve a from 1 to 9 until a = 3 {\nsolve b from 1 to 9 until b = 3 {\nlet c = 1\n}\n}"),
    past: inPiece(
      "solve a from 1 to 9 until a = 3 {\nsolve b from 1 to 9 until b = 3 {\nsolve c from 1 to 9 until c = 3 {\nlet d = 1\n}\n}\n}",
    ),
    code: "limit-solve",
    at: [5, "solve"],
  },
};

/** Findings at length: code, line, and the text that they point to. */
const told = (text: string, sources?: Sources): [string, number, string][] =>
  drafted(text, sources ? { sources } : {}).findings.map(({ code, where }) => [
    code,
    where.line,
    where.file === "test.chalk" ? text.slice(where.from, where.to) : where.file,
  ]);

describe.each(Object.entries(reaches))("%s", (_, { within, past, code, at: [line, begins], sources }) => {
  test("as far as it may go, a recipe is worked without a word", () => {
    expect(told(within, sources)).toEqual([]);
  });

  test(`one further it is told, once, as ${code}, at the words that go too far`, () => {
    const all = told(past, sources);
    expect(all.map(([each, where]) => [each, where])).toEqual([[code, line]]);
    expect(all[0]![2].slice(0, begins.length)).toBe(begins);
  });
});

test("fileBytes: a letter beyond ASCII takes two", () => {
  const full = `chalkline 1\n#${times(limits.fileBytes - 13, "x")}`;
  expect(codes(`${full.slice(0, -2)}é`)).toEqual([]);
  expect(codes(`${full.slice(0, -1)}é`)).toEqual(["1 file-too-large"]);
});

describe("nesting", () => {
  test("64 minus signs in a row are read, 65 are not", () => {
    const negated = (depth: number): string => `chalkline 1\nlet a = ${times(depth, "- ")}1 cm`;
    expect(codes(negated(limits.nesting))).toEqual([]);
    expect(codes(negated(limits.nesting + 1))).toEqual(["2 nesting-too-deep"]);
  });

  test("64 blocks are worked, 65 are not", () => {
    const blocks = (depth: number): string =>
      `chalkline 1\n${times(depth, "if 1 = 1 {\n")}let a = b\n${times(depth, "}\n")}`;
    expect(codes(blocks(limits.nesting))).toEqual([`${limits.nesting + 2} name-unknown`]);
    expect(codes(blocks(limits.nesting + 1))).toEqual([`${limits.nesting + 2} nesting-too-deep`]);
  });

  test("an if has 64 branches at most", () => {
    const branches = (count: number): string =>
      `chalkline 1\nif 1 = 2 { }\n${times(count - 2, "else if 1 = 2 { }\n")}else {\nlet a = b\n}`;
    expect(codes(branches(limits.nesting))).toEqual([`${limits.nesting + 2} name-unknown`]);
    expect(codes(branches(limits.nesting + 1))).toEqual([`${limits.nesting + 2} nesting-too-deep`]);
  });
});

test("linesInLines: the piece, the calls of the recipe's own steps and what the last does stand in one another", () => {
  const chain = (depth: number): string =>
    `chalkline 1\nstep s1 () { drill (0, 0) }\n${lines(depth - 1, (index) => `step s${index + 1} () { s${index} }`)}\npiece a { s${depth} }`;
  expect(codes(chain(limits.linesInLines - 2))).toEqual([]);
  expect(codes(chain(limits.linesInLines - 1))).toEqual(["2 limit-depth"]);
  expect(codes(chain(5000))).toHaveLength(1);
});

test("useDepth: 16 recipes use one another, and the one that uses a seventeenth is told where; the others are worked", () => {
  const opened = 'chalkline 1\nuse "1.chalk" as next\nlet a = 3 cm';
  const tooDeep = chained(limits.useDepth + 1);
  expect(told(opened, chained(limits.useDepth))).toEqual([]);
  expect(told(opened, tooDeep)).toEqual([["limit-use-depth", 2, `${limits.useDepth}.chalk`]]);
  expect(drafted(opened, { sources: tooDeep }).values.has("a")).toBe(true);
});

describe("steps", () => {
  test("a limit that a used recipe reaches is told where it is used, and ends the work", () => {
    const sources = filesNamed({ "a.chalk": "chalkline 1\nrepeat 200 as i { repeat 200 as j { let k = 1 } }" });
    const { findings, values } = drafted('chalkline 1\nlet a = 3 cm\nuse "a.chalk" as used\nlet b = 3 cm', {
      sources,
    });
    expect(findings.map(({ code, where }) => [code, where.file, where.line])).toEqual([
      ["limit-steps", "test.chalk", 3],
    ]);
    expect([...values.keys()]).toEqual(["a"]);
  });

  test("what is there when they come to an end stays", () => {
    const recipe = (count: number): string =>
      `chalkline 1\n${lines(count - 1, (index) => `let a${index} = ${index} mm`)}`;
    expect(codes(recipe(limits.steps))).toEqual([]);
    const { findings, values } = drafted(recipe(limits.steps + 1));
    expect(findings.map(({ code, where }) => [code, where.line])).toEqual([["limit-steps", limits.steps + 1]]);
    expect(values.size).toBe(limits.steps - 1);
  });

  test("rounds of repeat, trials of solve, and lines that cannot be read count too", () => {
    expect(codes(inPiece("repeat 200 as i { repeat 200 as j { let k = 1 } }"))).toEqual(["3 limit-steps"]);
    expect(codes(inPiece("repeat 200 as i {\nrepeat 200 as j { drill }\n}"))).toContain("4 value-missing");
    expect(codes(inPiece("repeat 200 as i { repeat 200 as j {\ndrill (\n} }"))).toContain("4 bracket-open");
    const solving =
      "solve h from 1 cm to 9 cm until h = x(spot) {\nrepeat 200 as i { repeat 5 as j { let k = 1 } }\npoint spot = (pi * 1 cm, 0)\n}";
    expect(codes(inPiece(solving))).toEqual(["4 limit-steps"]);
  });
});

test("pieces: the five hundred that were made stay", () => {
  expect(drafted(reaches.pieces!.past).garment.pieces.size).toBe(limits.pieces);
});

test("recorded: so many places are the last that it holds", () => {
  expect((2827 * 2828) / 2).toBeLessThan(limits.recorded);
  expect((2828 * 2829) / 2).toBeGreaterThan(limits.recorded);
});

test("curveSpans: what a copy shares with its source is there once", () => {
  const piece = (name: string, edges: number, more = ""): string =>
    `piece ${name} {\nrepeat ${edges} as i { ${bent("a", 250)} }\n${more}\n}`;
  const pieces = `chalkline 1\n${lines(99, (index) => piece(`p${index}`, 4))}\n${piece("a", 2)}`;
  const one = "line b = (0, 0) to (1 m, 0)";
  expect(codes(`${pieces}\npiece c = a { }\npiece d = c { ${one} }`)).toEqual([]);
  // Drawn anew they are 100,000, and the line is one more.
  expect(codes(`${pieces}\n${piece("c", 2, one)}`)).toEqual([`${1 + 99 * 4 + 4 + 3} limit-spans`]);
});

test("statementWords: the verb counts, and a comma between every two names", () => {
  const outline = (count: number): string => inPiece(`outline ${Array.from({ length: count }, () => "a").join(", ")}`);
  expect(codes(outline(limits.statementWords / 2))).toEqual(["3 edge-wanted"]);
  expect(codes(outline(limits.statementWords / 2 + 1))).toEqual(["3 line-too-long"]);
});

test("valueSigns: place words count like operators, and each value of a list for itself", () => {
  const sum = (count: number): string => `chalkline 1\nlet a = 1 mm${times(count, " + 1 mm")}`;
  const walk = (count: number): string => inPiece(`point a = (0, 0)${times(count, " right 1 mm")}`);
  for (const recipe of [sum, walk]) {
    expect(codes(recipe(limits.valueSigns))).toEqual([]);
    expect(codes(recipe(limits.valueSigns + 1))).toEqual([expect.stringContaining("value-too-long")]);
  }
  const list = Array.from({ length: 9 }, (_, index) => `(0, ${index + 1} mm)${times(100, " right 1 mm")}`).join(", ");
  expect(codes(inPiece(`line a = (0, 0) to (1 m, 0) through ${list}`))).toEqual([]);
});

test("coordinate: downward too, for marks, and for the handles of a curve as for its ends", () => {
  expect(codes(inPiece("point a = (0, -100.001 m)"))).toEqual(["3 limit-table"]);
  for (const mark of ["drill (0, 101 m)", 'label "far" at (101 m, 0)', "grain (0, 0) to (0, 101 m)"])
    expect(codes(inPiece(`line t = (0, 0) to (1 m, 0)\n${mark}`))).toEqual(["4 limit-table"]);
  expect(codes(inPiece("curve a = (0, 0) to (1 cm, 0) handles (101 m, 0), (0, 0)"))).toEqual(["3 limit-table"]);
});

test("length: at 200 m it is the table that ends, and a longer one is told where it stands in full", () => {
  expect(codes(inPiece(`${triangle}\nextend-hem s by 200 m`))).toEqual(["7 limit-table"]);
  expect(told(reaches.length!.past)).toEqual([["limit-length", 7, "200.001 m"]]);
});

test("allowance: on a piece that a line of the garment makes too", () => {
  const gores = (seams: string): string => `chalkline 1\ngore panel = 60 cm hem 120 cm deep 60 cm in 6 seams ${seams}`;
  expect(codes(gores("1 cm"))).toEqual([]);
  expect(codes(gores("101 cm"))).toEqual(["2 limit-allowance"]);
});

test("effort: 2,000,000 values are reckoned, and not one more", () => {
  // A sum of n ones is n values and n - 1 sums; a repeat reckons its count, and all of its block in each round. So these cost
  // 1 + 50 (1 + 200 * 199) = 1,990,051 and 1 + 49 * 199 = 9,752, the version
  // one, and 196 are left for the last: 97 ones, and another with its minus.
  const sum = (count: number): string => Array.from({ length: count }, () => "1").join(" + ");
  const recipe = (last: string): string =>
    `chalkline 1\nrepeat 50 as i { repeat 200 as j { let k = ${sum(100)} } }\nrepeat 49 as i { let k = ${sum(100)} }\nlet last = ${last}`;
  expect(limits.effort).toBe(1_990_051 + 9_752 + 1 + 196);
  expect(told(recipe(`${sum(97)} + -1`))).toEqual([]);
  expect(told(recipe(sum(99)))).toEqual([["limit-effort", 4, "1"]]);
});

test("effort: an outline costs the square of its lines and curves, whenever it is altered", () => {
  // A square of 4 x 125 lines: 250,000 for the outline, and as much for each alteration.
  const side = (name: string, from: string, to: string, places: readonly string[]): string =>
    `line ${name} = ${from} to ${to} through ${places.join(", ")}`;
  const row = (at: (mm: number) => string): string[] => Array.from({ length: 124 }, (_, index) => at((index + 1) * 2));
  const square = [
    side(
      "top",
      "(0, 0)",
      "(250 mm, 0)",
      row((mm) => `(${mm} mm, 0)`),
    ),
    side(
      "right-side",
      "(250 mm, 0)",
      "(250 mm, 250 mm)",
      row((mm) => `(250 mm, ${mm} mm)`),
    ),
    side(
      "hem",
      "(250 mm, 250 mm)",
      "(0, 250 mm)",
      row((mm) => `(${250 - mm} mm, 250 mm)`),
    ),
    side(
      "left-side",
      "(0, 250 mm)",
      "(0, 0)",
      row((mm) => `(0, ${250 - mm} mm)`),
    ),
    "outline top, right-side, hem, left-side",
  ].join("\n");
  const altered = (count: number): string => inPiece(`${square}\n${lines(count, () => "extend-hem hem by 1 mm")}`);
  expect(told(altered(6))).toEqual([]);
  expect(told(altered(7))).toEqual([["limit-effort", 14, "extend-hem hem by 1 mm"]]);
});

test("halvings: a solve comes to an end, whatever it solves", () => {
  // Ten thirds are met by no number of halvings; after 60 nothing is left between the two limits that a number could tell.
  const solved = (from: string, until: string): string[] =>
    told(inPiece(`solve h from ${from} to 9 until ${until} {\nlet k = 1\n}\npoint a = (h * 1 cm, 0)`)).map(
      ([code]) => code,
    );
  expect(solved("1", "h * 3 = 10")).toEqual([]);
  // It jumps past the value without ever taking it: not found after the last halving.
  expect(solved("1", "round(h, 1) = 2.5")).toEqual(["solve-rest"]);
});

describe("findings", () => {
  test("200 are told, one more is counted", () => {
    const text = (count: number): string => `chalkline 1\n${lines(count, (index) => `let a${index} = b${index}`)}`;
    const [full, more] = [drafted(text(limits.findings)), drafted(text(limits.findings + 1))];
    expect([full.findings.length, full.untold]).toEqual([limits.findings, 0]);
    expect([more.findings.length, more.untold]).toEqual([limits.findings, 1]);
  });

  test("those of lines that nobody can read are counted like those of the work", () => {
    const unread = work({ file: "test.chalk", text: `chalkline 1\n${lines(350, () => "wobble")}` });
    expect([unread.findings.length, unread.untold]).toEqual([limits.findings, 150]);
    const worked = work({ file: "test.chalk", text: `chalkline 1\n${lines(350, (index) => `let a${index} = b`)}` });
    expect([worked.findings.length, worked.untold]).toEqual([limits.findings, 150]);
    expect(parse({ file: "test.chalk", text: lines(350, () => "?") }).untold).toBe(150);
  });

  test("what a loop comes to a hundred times is told once, with how often", () => {
    const text = 'chalkline 1\nrepeat 100 as i {\ncheck 1 > 2 because "that would be odd"\n}';
    const { findings, untold } = drafted(text);
    expect(findings.map(({ code, times: often }) => [code, often])).toEqual([["check", 100]]);
    expect(untold).toBe(0);
  });

  test("what comes up once has no count, and two amounts are two findings", () => {
    const text = "chalkline 1\nrepeat 2 as i {\ncheck i * 1 cm > 5 cm\n}";
    expect(drafted(text).findings.map(({ times: often }) => often)).toEqual([undefined, undefined]);
  });
});

test("pages: 500 are put together, and a piece that takes more is named instead", () => {
  const a4 = papers.find(({ name }) => name === "a4")!;
  // A page carries 180 by 267 mm of the pattern: 210 by 297 mm less 10 mm at every side, less 10 mm to lap.
  const printed = (height: number): ReturnType<typeof printOn> => {
    const path = [
      ...straight({ x: 0, y: 0 }, { x: 1800, y: 0 }),
      ...straight({ x: 1800, y: 0 }, { x: 1800, y: height }),
      ...straight({ x: 1800, y: height }, { x: 0, y: 0 }),
    ];
    const group = { of: "piece", name: "a", words: "a", strokes: [{ kind: "cutting-line", path }], texts: [] } as const;
    const drawing: Drawing = {
      title: "a",
      words: "a",
      paper: { left: 0, top: 0, right: 1800, bottom: height },
      groups: [group],
    };
    return printOn(a4, { pieces: new Map([["a", drawing]]), sheet: { ...drawing, groups: [] }, column: [] });
  };
  const page = 267;
  expect("tooLarge" in printed((limits.pages / 10) * page - 1)).toBe(false);
  const past = printed((limits.pages / 10 + 1) * page + 1);
  expect("tooLarge" in past && past.tooLarge.map(({ name }) => name)).toEqual(["a"]);
});

test("every limit has a case", () => {
  const others = ["useDepth", "effort", "halvings", "findings", "pages"];
  expect([...Object.keys(reaches), ...others].sort()).toEqual(Object.keys(limits).sort());
});

test("no number that is not finite reaches a drawing", () => {
  const huge = times(300, "9");
  const places = [
    `(${huge} * 1 m, 0)`,
    `(${huge} * ${huge} * 1 m, 0)`,
    `(0, sqrt(${huge} * ${huge}) * 1 cm)`,
    "(tan(90 deg) * 1 m, 0)",
    "(1 cm / (1 / 3 - 1 / 3), 0)",
    `(0, 0) bearing ${huge} deg for 1 cm`,
    `(0, 0) toward (1 cm, 0) (${huge} * 1 mm)`,
    "(acos(2) / 1 rad * 1 cm, 0)",
  ];
  for (const at of places) {
    const { garment, findings } = drafted(inPiece(`point a = (0, 0)\npoint b = ${at}\nline c = a to b`));
    const piece = garment.pieces.get("a")!;
    const points = [
      ...[...piece.places.values()].map(({ point }) => point),
      ...[...piece.edges.values()].flatMap(({ path }) => path.flatMap(({ start, end }) => [start, end])),
    ];
    for (const { x, y } of points) expect([Number.isFinite(x), Number.isFinite(y)], at).toEqual([true, true]);
    if (piece.places.has("b"))
      expect(Math.abs(piece.places.get("b")!.point.x), at).toBeLessThanOrEqual(limits.coordinate);
    else expect(findings.length, at).toBeGreaterThan(0);
  }
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

test("a limit ends in time: each of the cases above is told within two seconds of computing", { retry: 2 }, () => {
  for (const [name, { past, sources }] of Object.entries(reaches)) {
    const took = timed(() => work({ file: "test.chalk", text: past }, sources ? { sources } : {}));
    expect(took, name).toBeLessThan(2000);
  }
});
