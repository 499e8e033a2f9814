// Every change of the text that a finding offers mends what it says it mends. The findings are those of the test pages.
import { describe, expect, test } from "vitest";
import type { Diagnostic, Fix } from "../../grammar/diagnostic.ts";
import { worked } from "../pages/worked-page.ts";
import { pageRecipes } from "./recipe-texts.ts";

const applied = ({ where, text: replacement }: Fix, text: string): string =>
  text.slice(0, where.from) + replacement + text.slice(where.to);

const alike = ({ code, message }: Diagnostic): string => `${code}: ${message}`;

const offered = pageRecipes.flatMap(({ name, text, page, each }) =>
  worked(text, page, each)
    .findings.filter(
      ({ fix, where }) => fix !== undefined && fix.where.file === where.file && where.file === "page.chalk",
    )
    .map((finding) => ({
      name: `${name} line ${finding.where.line}: ${finding.fix!.title}`,
      text,
      page,
      each,
      finding,
    })),
);

test("there are many of them, of many kinds", () => {
  expect(offered.length).toBeGreaterThan(80);
  expect(new Set(offered.map(({ finding }) => finding.code)).size).toBeGreaterThan(12);
});

describe.each(offered)("$name", ({ text, page, each, finding }) => {
  test("leaves one finding of its kind fewer", () => {
    const count = (recipe: string): number =>
      worked(recipe, page, each).findings.filter((other) => alike(other) === alike(finding)).length;
    expect(count(applied(finding.fix!, text))).toBe(count(text) - 1);
  });

  test("changes only its own line", () => {
    const lines = text.split("\n");
    const after = applied(finding.fix!, text).split("\n");
    const { line } = finding.where;
    expect(after.slice(0, line - 1)).toEqual(lines.slice(0, line - 1));
    expect(after.slice(after.length - lines.length + line)).toEqual(lines.slice(line));
  });
});
