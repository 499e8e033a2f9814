// Every step and every check, every statement and every function: declared once, in a file of its name, documented, with
// examples that are what they say. What is missing is said here, so that adding one leaves no question open.
import { existsSync, readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Form, Slot } from "../grammar/phrase.ts";
import { statements } from "../grammar/statements.ts";
import { functions, takesHowMany } from "../kernel/functions.ts";
import { kernel } from "../kernel/kernel.ts";
import { vocabulary } from "../kernel/vocabulary.ts";

const { work } = kernel(vocabulary);
const { steps, checks } = vocabulary;

const there = (path: string): boolean => existsSync(new URL(`../${path}`, import.meta.url));

const findingsIn = (text: string): string[] => {
  const { findings, untold } = work({ file: "example.chalk", text });
  expect(untold).toBe(0);
  return findings.map(({ code, where, message }) => `${code} in line ${where.line}: ${message}`);
};

/** One sentence: it begins like one, ends like one, and there is no second. */
const isSentence = (text: string): boolean => /^[A-Z`][^\n]*[.]$/.test(text) && !/[.!?] [A-Z]/.test(text);

const slotsOf = ({ naming, operand, count, clauses, text }: Form): Slot[] =>
  [naming?.slot, operand, count, ...clauses.flatMap(({ slot }) => [slot, slot?.suffix?.slot]), text].filter(
    (slot) => slot !== undefined,
  );

const words = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;

describe.each(steps.map((step) => ({ ...step })))("the step $name", (step) => {
  test("has a kebab-case name, and a file of that name", () => {
    expect(step.name).toMatch(words);
    expect(there(`kernel/steps/${step.name}.ts`), `kernel/steps/${step.name}.ts is not there`).toBe(true);
  });

  test("has a summary of one sentence, and says since when it is there", () => {
    expect(isSentence(step.summary), step.summary).toBe(true);
    expect(step.since).toMatch(/^\d+\.\d+$/);
  });

  test("has an example that uses it and comes out clean", () => {
    expect(step.example.startsWith("chalkline 1\n")).toBe(true);
    expect(step.example.split("\n").some((line) => line.trim().split(/\s/)[0] === step.name)).toBe(true);
    expect(findingsIn(step.example)).toEqual([]);
  });

  test("has a page of its own among the tests", () => {
    expect(there(`tests/pages/steps/${step.name}.md`), `tests/pages/steps/${step.name}.md is not there`).toBe(true);
  });

  test("has a note for every slot, and every form begins with its name", () => {
    for (const phrase of step.phrases) {
      expect(phrase.verb).toBe(step.name);
      for (const { name, note, wanted } of slotsOf(phrase)) {
        expect(note.trim(), `the slot ${name} has no note`).not.toBe("");
        expect(wanted, `the slot ${name}`).toMatch(/^(?:toward )?(?:an?|the) /);
      }
      const names = slotsOf(phrase).map(({ name }) => name);
      expect(new Set(names).size, `two slots of ${step.name} share a name`).toBe(names.length);
    }
  });
});

describe.each(checks.map((check) => ({ ...check })))("the check $name", (check) => {
  test("has a kebab-case name, and a file of that name", () => {
    expect(check.name).toMatch(words);
    expect(there(`kernel/checks/${check.name}.ts`), `kernel/checks/${check.name}.ts is not there`).toBe(true);
  });

  test("has a title of one sentence, and says why it matters", () => {
    expect(isSentence(check.title), check.title).toBe(true);
    expect(check.why).toMatch(/^[A-Z][\s\S]*[.]$/);
    expect(check.since).toMatch(/^\d+\.\d+$/);
  });

  test("passes a recipe that is clean altogether", () => {
    expect(findingsIn(check.passes)).toEqual([]);
  });

  test("finds something in the recipe that fails, and nothing else is found there", () => {
    const codes = work({ file: "example.chalk", text: check.fails }).findings.map(({ code }) => code);
    expect(codes.length).toBeGreaterThan(0);
    expect([...new Set(codes)]).toEqual([check.name]);
  });
});

test("names are given once", () => {
  const names = [...steps.map(({ name }) => name), ...statements.map(({ verb }) => verb)];
  expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  const checkNames = checks.map(({ name }) => name);
  expect(checkNames.filter((name, index) => checkNames.indexOf(name) !== index)).toEqual([]);
});

test("every file of a step or check is in the vocabulary", () => {
  const files = (folder: string): string[] =>
    readdirSync(new URL(`../kernel/${folder}/`, import.meta.url))
      .map((file) => file.replace(/\.ts$/, ""))
      .sort();
  expect(files("steps")).toEqual(steps.map(({ name }) => name).sort());
  expect(files("checks")).toEqual(checks.map(({ name }) => name).sort());
});

test("every page of a step is about a step", () => {
  const pages = readdirSync(new URL("pages/steps/", import.meta.url)).map((file) => file.replace(/\.md$/, ""));
  expect(pages.filter((page) => !steps.some(({ name }) => name === page))).toEqual([]);
});

describe.each(statements.map((statement) => ({ ...statement })))("the statement $verb", (statement) => {
  test("has a summary of one sentence, and a note for every slot", () => {
    expect(isSentence(statement.summary), statement.summary).toBe(true);
    for (const { name, note } of slotsOf(statement)) expect(note, `the slot ${name} has no note`).not.toBe("");
  });

  test("has a page of its own among the tests", () => {
    // Two words of one thing share a page.
    const page = { base: "size", else: "if" }[statement.verb as string] ?? statement.verb;
    expect(there(`tests/pages/statements/${page}.md`), `tests/pages/statements/${page}.md is not there`).toBe(true);
  });
});

describe("functions", () => {
  /** Calls of each that are worked, by its name; A and B are places, ab and bc edges, panel the piece. */
  const calls: Readonly<Record<string, string>> = {
    length: "length(panel.ab)",
    "cut-length": "cut-length(panel.ab)",
    distance: "distance(panel.A, panel.B)",
    angle: "angle(panel.A, panel.B, panel.C)",
    area: "area(panel)",
    min: "min(1, 2, 3)",
    max: "max(1 cm, 2 cm)",
    abs: "abs(-1)",
    sqrt: "sqrt(4)",
    sin: "sin(30 deg)",
    cos: "cos(30 deg)",
    tan: "tan(30 deg)",
    asin: "asin(0.5)",
    acos: "acos(0.5)",
    atan: "atan(0.5)",
    clamp: "clamp(2, 1, 3)",
    round: "round(2.4, 1)",
    x: "x(panel.A)",
    y: "y(panel.A)",
    meet: "meet(panel.ab, panel.bc)",
    foot: "foot(panel.C, panel.ab)",
    compass: "compass(panel.A, 3 cm, panel.C, 4 cm, left)",
    middle: "middle(panel.A, panel.B)",
    mirrored: "mirrored(panel.C, panel.ab)",
    corner: "corner(panel.ab, panel.bc)",
    part: "part(panel.ab, panel.A, panel.B)",
    turned: "turned(panel.ab)",
  };
  const drawn = `chalkline 1
piece panel {
  point A = (0, 0)
  point B = (3 cm, 0)
  point C = (3 cm, 4 cm)
  line ab = A to B
  line bc = B to C
  line ca = C to A
  outline ab, bc, ca
}`;
  const codesOf = (call: string): string[] =>
    work({ file: "a.chalk", text: `${drawn}\nlet worth = ${call}` }).findings.map(({ code }) => code);

  test.each([...functions.values()].map((entry) => ({ ...entry })))("$name takes what its form says", (entry) => {
    expect(entry.form.startsWith(`${entry.name}(`)).toBe(true);
    expect(entry.summary.trim()).not.toBe("");
    const call = calls[entry.name];
    expect(call, `tests/declarations.test.ts has no call of ${entry.name}`).toBeDefined();
    expect(codesOf(call!)).toEqual([]);
    const given = call!.slice(call!.indexOf("(") + 1, -1).split(", ");
    const { least, most } = takesHowMany(entry);
    expect(given.length).toBeGreaterThanOrEqual(least);
    expect(given.length).toBeLessThanOrEqual(most);
    // As many values as the form shows, not one less, and not one more unless it ends with "…".
    const shown = entry.form.slice(entry.form.indexOf("(") + 1, -1).split(", ");
    expect(most).toBe(shown.at(-1) === "…" ? Number.POSITIVE_INFINITY : shown.length);
    expect(codesOf(`${entry.name}(${given.slice(0, least - 1).join(", ")})`)).toEqual(["value-count"]);
    if (most < Number.POSITIVE_INFINITY) {
      expect(codesOf(`${entry.name}(${[...given, ...given].slice(0, most + 1).join(", ")})`)).toEqual(["value-count"]);
    }
    // A text is what no function takes.
    expect(codesOf(`${entry.name}(${given.map(() => '"a"').join(", ")})`)).toEqual(["value-kind"]);
  });
});
