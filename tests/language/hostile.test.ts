// Recipes that are made to hang or to crash the program: they end soon, in a plain error, with no more findings than are told.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { limits } from "../../grammar/limits.ts";
import { drafted, filesNamed, parse, timed, work } from "./told.ts";

const times = (count: number, text: string): string => text.repeat(count);

/** Works a recipe within a time, in milliseconds, and says which limits it met. */
const limitsMet = (text: string, files: Readonly<Record<string, string>> = {}, within = 1000): string[] => {
  let codes: string[] = [];
  const took = timed(() => {
    const { findings } = drafted(text, { sources: filesNamed(files) });
    codes = findings.map(({ code }) => code).filter((code) => code.startsWith("limit-") || code === "nesting-too-deep");
  });
  expect(took).toBeLessThan(within);
  return [...new Set(codes)];
};

// Another job on the machine may slow one try down, not three.
const tries = { retry: 2 };

describe("what doubles at every level stops at a limit within a second", tries, () => {
  test("steps of the recipe's own", () => {
    const steps = Array.from({ length: 40 }, (_, index) => `step s${index + 1} () {\ns${index}\ns${index}\n}`).join(
      "\n",
    );
    expect(limitsMet(`chalkline 1\nstep s0 () { let a = 1 }\n${steps}\ns40`)).toEqual(["limit-steps"]);
  });

  test("repeats", () => {
    for (let depth = 3; depth <= 30; depth += 9) {
      const open = Array.from({ length: depth }, (_, index) => `repeat 200 as i${index} {`).join("\n");
      expect(limitsMet(`chalkline 1\n${open}\nlet a = 1\n${times(depth, "}\n")}`)).toEqual(["limit-steps"]);
      expect(limitsMet(`chalkline 1\n${open}\n${times(depth, "}\n")}`)).toEqual(["limit-steps"]);
    }
  });

  test("repeats around lines that cannot be read", () => {
    const broken = times(100, "wobble\n");
    expect(limitsMet(`chalkline 1\nrepeat 200 as i {\nrepeat 200 as j {\n${broken}}\n}`)).toEqual(["limit-steps"]);
  });

  test("uses", () => {
    const files = Object.fromEntries(
      Array.from({ length: 15 }, (_, index) => [
        `${index}.chalk`,
        `chalkline 1\n${Array.from({ length: 10 }, (__, use) => `use "${index + 1}.chalk" as a${use}`).join("\n")}`,
      ]),
    );
    const met = limitsMet('chalkline 1\nuse "0.chalk" as a', { ...files, "15.chalk": "chalkline 1" });
    expect(met).toEqual(["limit-uses"]);
  });

  test("solves", () => {
    const inner = "solve v from 1 cm to 9 cm until v = 3.3 cm { repeat 100 as i { let a = 1 } }";
    expect(limitsMet(`chalkline 1\npiece p {\nsolve u from 1 cm to 9 cm until u = 3.3 cm {\n${inner}\n}\n}`)).toEqual([
      "limit-steps",
    ]);
  });

  test("a failing call of steps that call one another thousands of times over", () => {
    const steps = Array.from({ length: 400 }, (_, index) => `step s${index + 1} () {\ns${index}\ns${index}\n}`).join(
      "\n",
    );
    expect(limitsMet(`chalkline 1\nstep s0 () { let a = 1 }\n${steps}\ns400 wrong`)).toEqual([]);
  });
});

describe("a mebibyte of anything is told within two seconds", tries, () => {
  const letters = "abcdefghijklmnopqrstuvwxyzABCÄß袖 \t\n0123456789.,+-*/()={}<>\"'#\\_%;:!?&|~^@$\u202e\u200b\u0000";
  const filled = (unit: string): string =>
    `chalkline 1\n${unit.repeat(Math.floor((limits.fileBytes - 12) / unit.length))}`;
  const some = (alphabet: readonly string[]): string => {
    const [text] = fc.sample(fc.array(fc.constantFrom(...alphabet), { minLength: 20_000, maxLength: 20_000 }), {
      numRuns: 1,
      seed: 1,
    });
    return text!.join("").slice(0, 400_000);
  };
  const words = [
    "let ",
    "piece ",
    "point ",
    "line ",
    "= ",
    "3 cm ",
    "to ",
    "(",
    ")",
    "{",
    "}",
    "\n",
    ", ",
    "+ ",
    "a",
    "if ",
    "else ",
    '"x" ',
    "# c\n",
  ];

  test.each([
    ["lines of one word", "ab\n"],
    ["steps nobody knows", "pont = b\n"],
    ["names nobody knows", "let a=b\n"],
    ["strange signs", "?"],
    ["lines of strange signs", "?\n"],
    ["open brackets on every line", "let a = (\n"],
    ["blocks in blocks", "a{"],
    ["piece in piece", "piece a {\n"],
    ["blocks that were not opened", "piece a\n}\n"],
    ["closed braces", "}"],
    ["open brackets", "("],
    ["texts", '"a'],
    ["backslashes in a text", "\\"],
    ["branches", "else if 1=1 {}\n"],
    ["ifs without a block", "if 1=1\n"],
    ["commas", "b,\n"],
    ["minus signs", "-"],
    ["hyphens", "a-"],
    ["figures", "1"],
    ["mixed numbers", "1 1"],
    ["steps of its own", "step a () {}\n"],
    ["uses", 'use "a" as a {\n'],
    ["comments", "#\n"],
    ["blanks", " "],
    ["blank lines", "\n"],
    ["marks nobody sees", "\u202e"],
    ["signs anywhere", some([...letters])],
    ["words anywhere", some(words)],
  ])("%s", (_, unit) => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for.
    const text = filled(unit).slice(0, limits.fileBytes / (/[^\u0000-\u007f]/.test(unit) ? 3 : 1));
    const took = timed(() => {
      const { findings } = work({ file: "test.chalk", text });
      expect(findings.length).toBeLessThanOrEqual(limits.findings);
    });
    expect(took).toBeLessThan(2000);
  });
});

describe("however deep it nests, nothing overflows", tries, () => {
  test.each([
    "(",
    "- ",
    "not ",
    "min(",
    "if 1 = 1 {\n",
    "piece a {\n",
    "{",
    "A toward ",
    "leaving along ",
    "let a = ",
    "A--",
    "a.",
    "else if 1 = 1 {}\n",
  ])("%s", (unit) => {
    for (const depth of [limits.nesting + 1, 10_000, 1_000_000]) {
      const text = `chalkline 1\nlet a = ${unit.repeat(Math.min(depth, Math.floor(1_000_000 / unit.length)))}`;
      const took = timed(() => expect(work({ file: "test.chalk", text }).findings.length).toBeGreaterThan(0));
      expect(took).toBeLessThan(2000);
    }
  });
});

test("reading takes time in proportion to the text", tries, () => {
  for (const unit of ["let a1 = (b2 + 3.5 cm) * 2 # c\n", '"a\\\\" ', "1 1/2 ", "a-b-c ", "\\", "   "]) {
    const short = Math.min(
      ...[1, 2, 3].map(() => timed(() => parse({ file: "a", text: unit.repeat(Math.floor(100_000 / unit.length)) }))),
    );
    const long = timed(() => parse({ file: "a", text: unit.repeat(Math.floor(1_000_000 / unit.length)) }));
    // Ten times as long; were it to grow with the square it would take a hundred times as long.
    expect(long).toBeLessThan(40 * Math.max(short, 5));
  }
});
