// What every declaration of a step or check owes: its own file, a sentence, a clean example, a page, notes on its slots.
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Part, Slot } from "../grammar/phrase.ts";
import { statements } from "../grammar/statements.ts";
import { functions } from "../kernel/functions.ts";
import { vocabulary } from "../kernel/vocabulary.ts";
import { chalkline } from "./worked-recipe.ts";

const here = (path: string): string => fileURLToPath(new URL(`../${path}`, import.meta.url));

/** `spread-from` as the name of what its file exports: spreadFrom. */
const camel = (name: string): string => name.replace(/-(.)/g, (_, letter: string) => letter.toUpperCase());

const isOneSentence = (text: string): boolean => /^[A-Z][^\n]*\.$/.test(text) && !/\. [A-Z]/.test(text);

const slotsIn = (parts: readonly Part[]): Slot[] =>
  parts.flatMap((part) => (part.kind === "slot" ? [part.slot] : part.kind === "optional" ? slotsIn(part.parts) : []));

const findingsOf = (text: string): string[] =>
  chalkline.work({ file: "example.chalk", text }).findings.map(({ code, where }) => `${where.line} ${code}`);

describe.each(vocabulary.steps.map((step) => [step.name, step] as const))("the step %s", (name, step) => {
  test("stands in a file of its own name, which exports it", () => {
    const file = here(`kernel/steps/${name}.ts`);
    expect(existsSync(file)).toBe(true);
    expect(readFileSync(file, "utf8")).toMatch(new RegExp(`export const ${camel(name)}(?:Step)? = `));
  });

  test("says in one sentence what it does", () => {
    expect(isOneSentence(step.summary)).toBe(true);
  });

  test("says of every slot what stands in it", () => {
    const slots = step.phrases.flatMap(({ parts }) => slotsIn(parts));
    expect(slots.length).toBeGreaterThan(0);
    expect(slots.filter(({ note }) => note.trim() === "").map(({ name: slot }) => slot)).toEqual([]);
  });

  test("has phrases that begin with its name", () => {
    expect(new Set(step.phrases.map(({ verb }) => verb))).toEqual(new Set([name]));
  });

  test("has an example that uses it and comes out clean", () => {
    expect(step.example).toMatch(new RegExp(`^\\s*${name}\\b`, "m"));
    expect(findingsOf(step.example)).toEqual([]);
  });

  test("has a page", () => {
    expect(existsSync(here(`tests/pages/steps/${name}.md`))).toBe(true);
  });
});

describe.each(vocabulary.checks.map((check) => [check.name, check] as const))("the check %s", (name, check) => {
  test("stands in a file of its own name, which exports it", () => {
    const file = here(`kernel/checks/${name}.ts`);
    expect(existsSync(file)).toBe(true);
    expect(readFileSync(file, "utf8")).toContain(`export const ${camel(name)} = `);
  });

  test("says what is true of a good garment, and why", () => {
    expect(check.title).toMatch(/^[A-Z].*\.$/);
    expect(check.why).toMatch(/^[A-Z][\s\S]*\.$/);
  });

  test("has a recipe that passes", () => {
    expect(findingsOf(check.passes)).toEqual([]);
  });

  test("has a recipe that fails with exactly its finding", () => {
    const { findings } = chalkline.work({ file: "example.chalk", text: check.fails });
    expect(findings.map(({ code }) => code)).toEqual([name]);
  });
});

test("no two steps, statements or functions share a name", () => {
  const names = [...vocabulary.steps.map(({ name }) => name), ...statements.map(({ verb }) => verb)];
  expect(names.filter((name, index) => names.indexOf(name) < index)).toEqual([]);
  expect([...functions.values()].every(({ form, name }) => form.startsWith(`${name}(`))).toBe(true);
});
