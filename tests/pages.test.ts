// Runs the test pages: each recipe on a page gives exactly the findings that are marked in it, and measures what the page
// says. CHALKLINE_UPDATE=1 rewrites the measured values; look at the difference before you believe it.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Diagnostic } from "../grammar/diagnostic.ts";
import { inOneLine, marksIn } from "./pages/marks.ts";
import { type Case, type Page, pageOf } from "./pages/page.ts";
import { asMark, measured, textOf, tidied, worked } from "./pages/worked-page.ts";

const folder = new URL("pages/", import.meta.url);
const names = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".md"))
  .sort();
const updates = process.env.CHALKLINE_UPDATE === "1";

describe.each(names)("%s", (name) => {
  const url = new URL(name, folder);
  const page = pageOf(readFileSync(url, "utf8"));
  page.cases.forEach((each, index) => {
    test(`${each.title} (line ${each.recipe.line})`, () => {
      if (updates && each.measured) writeMeasured(url, index);
      const now = updates ? pageOf(readFileSync(url, "utf8")) : page;
      isAsMarked(now, now.cases[index]!);
      if (each.measured) isAsMeasured(now, now.cases[index]!);
      if (each.tidied) expect(tidied(each.recipe.text)).toBe(`${each.tidied.text}\n`);
    });
  });
});

const isAsMarked = (page: Page, each: Case): void => {
  const text = textOf(page, each);
  const { findings, untold, uses } = worked(text, page, each);
  expect(untold).toBe(0);
  const texts = new Map([["page.chalk", text], ...[...page.files].map(([file, fence]) => [file, fence.text] as const)]);
  const used = new Set(["page.chalk", ...[...uses.values()].map(({ tree }) => tree.file)]);
  for (const [file, recipe] of texts) {
    if (!used.has(file)) continue;
    const marks = marksIn(recipe);
    const here = findings.filter(({ where }) => where.file === file);
    const found = here.map((finding) => inOneLine(asMark(finding, recipe)));
    expect(found.sort(), file).toEqual(marks.map(inOneLine).sort());
    for (const mark of marks) {
      const finding = here.find((one) => inOneLine(asMark(one, recipe)) === inOneLine(mark))!;
      for (const words of mark.words) expect(`${finding.message} ${finding.hint ?? ""}`).toContain(words);
      if (mark.fixed !== undefined) expect(lineFixed(finding, recipe)).toBe(mark.fixed);
    }
  }
};

const lineFixed = ({ fix, where }: Diagnostic, text: string): string | undefined => {
  if (!fix) return undefined;
  const fixed = text.slice(0, fix.where.from) + fix.text + text.slice(fix.where.to);
  return fixed.split("\n")[where.line - 1]?.trim();
};

/** A line of a `measured` block: what is measured, two spaces or more, and what it comes to. */
const lineOf = (line: string): { what: string; value: string } => {
  const gap = line.search(/ {2,}/);
  return gap < 0 ? { what: line.trim(), value: "" } : { what: line.slice(0, gap), value: line.slice(gap).trim() };
};

const isAsMeasured = (page: Page, each: Case): void => {
  const lines = each.measured!.text.split("\n").map(lineOf);
  const values = measured(
    lines.map(({ what }) => what),
    page,
    each,
  );
  expect(lines.map(({ what }, index) => `${what}  ${values[index]}`)).toEqual(
    lines.map(({ what, value }) => `${what}  ${value}`),
  );
};

const writeMeasured = (url: URL, index: number): void => {
  const markdown = readFileSync(url, "utf8");
  const page = pageOf(markdown);
  const each = page.cases[index]!;
  const whats = each.measured!.text.split("\n").map((line) => lineOf(line).what);
  const values = measured(whats, page, each);
  const width = Math.max(...whats.map(({ length }) => length));
  const lines = markdown.split("\n");
  lines.splice(
    each.measured!.line - 1,
    whats.length,
    ...whats.map((what, at) => `${what.padEnd(width)}  ${values[at]}`),
  );
  writeFileSync(url, lines.join("\n"));
};
