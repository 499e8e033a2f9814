// What can be done at the cursor: each change leaves the garment as it is, or mends what it is meant to mend.
import { expect, test } from "vitest";
import type { CodeAction } from "../../../editor/assist/actions/code-action.ts";
import { codeActions, tried } from "../../../editor/assist/code-actions.ts";
import { dials } from "../../../editor/assist/dials.ts";
import { isSameGarment } from "../../../editor/assist/same-garment.ts";
import { edited } from "../../../editor/assist/text-edit.ts";
import type { WorkedText } from "../../../editor/assist/worked-text.ts";
import { written } from "../../../editor/assist/written.ts";
import { marked, recipeFiles, recipeText, worked } from "./marked.ts";
import { square } from "./named.ts";

/** The text after an action, without its first line. */
const after = ({ source }: WorkedText, { edits }: CodeAction): string =>
  edited(source.text, edits).replace("chalkline 1\n", "");

/** What is offered at the mark under titles that begin so. */
const offered = (recipe: string, title: string): { text: string; action: CodeAction; worked: WorkedText }[] => {
  const { worked: read, offset } = marked(recipe);
  return codeActions(read, offset, offset)
    .filter((action) => action.title.startsWith(title))
    .map((action) => ({ text: after(read, action), action, worked: read }));
};

/** What becomes of the lines between two marks as a step. */
const asStep = (recipe: string): { text: string; action: CodeAction; worked: WorkedText } => {
  const text = `chalkline 1\n${recipe}`;
  const [from, to] = [text.indexOf("|"), text.lastIndexOf("|") - 1];
  const read = worked(text.replaceAll("|", ""));
  const [untried] = codeActions(read, from, to).filter(({ title }) => title.includes("step"));
  if (!untried) throw new Error("no step is offered");
  const action = tried(read, untried);
  return { text: after(read, action), action, worked: read };
};

test("a bare number gets the recipe's unit, or another", () => {
  const panel = `units in\npiece panel {\n${square}  extend-hem hem by |8\n}\n`;
  const found = offered(panel, "Write");
  expect(found.map(({ action }) => action.title)).toEqual(["Write 8 in", "Write 8 cm", "Write 8 mm"]);
  expect(found[1]!.text).toContain("  extend-hem hem by 8 cm\n");
  for (const { text } of found) expect(worked(`chalkline 1\n${text}`).outcome.diagnostics).toEqual([]);
});

test("a bare number along an edge may have been a percentage", () => {
  const panel = `units cm\npiece panel {\n${square}  notch side at |25\n}\n`;
  expect(offered(panel, "Write").map(({ action }) => action.title)).toEqual([
    "Write 25%",
    "Write 25 cm",
    "Write 25 mm",
    "Write 25 in",
  ]);
});

test("a finding that says what to write is mended", () => {
  const [found, more] = offered("let a = 4 cm\nlet b = 1 cm\ncheck a-|b > 0 cm\n", "Write");
  expect(found!.text).toContain("check a - b > 0 cm");
  expect(found!.action.code).toBe("name-unknown");
  expect(more).toBeUndefined();
});

test("clauses go into the order in which the step declares them, and no further", () => {
  // The manual: allow EDGE, … by LENGTH [corners …]
  const [found] = offered(`piece panel {\n${square}  al|low hem corners turned by 2.5 cm # wide\n}\n`, "Put");
  expect(found!.text).toContain("  allow hem by 2.5 cm corners turned # wide\n");
  expect(isSameGarment(found!.worked.outcome, worked(`chalkline 1\n${found!.text}`).outcome)).toBe(true);
  expect(offered(`piece panel {\n${square}  al|low hem by 2.5 cm corners turned\n}\n`, "Put")).toEqual([]);
  expect(offered(`piece panel {\n${square}  al|low hem corners turned by\n}\n`, "Put")).toEqual([]);
});

test("a finding is accepted below its piece, with a reason to write", () => {
  // Nothing says what becomes of the edges at the cutting line: allowance-said.
  const recipe = `fabric felt "felt" width 90 cm\npiece panel {\n${square}  gr|ain A to D\n}\ncut panel 1 from felt\n`;
  const { worked: read } = marked(recipe);
  const finding = read.outcome.findings[0]!;
  const found = codeActions(read, finding.where.from, finding.where.to).find(({ title }) =>
    title.startsWith("Accept"),
  )!;
  expect(found.code).toBe(finding.code);
  const text = after(read, found);
  expect(text).toContain(`}\naccept ${finding.code} on panel`);
  const now = worked(`chalkline 1\n${text}`);
  expect(now.outcome.findings.map(({ code }) => code)).not.toContain(finding.code);
  expect(now.outcome.findings.map(({ code }) => code)).not.toContain("accept-unused");
  expect(now.source.text.slice(found.select!.from, found.select!.to)).toBe("say why it is right here");
});

test("everything that a check finds in the workroom's pieces can be accepted", () => {
  // Without its grain, allowances and trued edges the coat has a lot to be said about.
  const text = recipeText("lobby-coat-swing.chalk").replace(/ {2}(?:true-seam|allow).*\n/g, "");
  const read = worked(text, "lobby-coat-swing.chalk");
  const own = read.outcome.judgements.filter(
    ({ verdict, where, check }) =>
      (verdict === "warning" || verdict === "error") && where.file === read.source.file && check !== "check",
  );
  expect(own.length).toBeGreaterThan(3);
  for (const { check, on, where } of own) {
    const action = codeActions(read, where.from, where.to).find(
      ({ title, code }) => code === check && title.includes(on.split(/ with | at |, /)[0]!),
    );
    const now = worked(edited(text, action!.edits), "lobby-coat-swing.chalk").outcome;
    const judged = now.judgements.find((each) => each.check === check && each.on === on);
    expect(judged?.verdict, `${check} on ${on}`).toBe("accepted");
  }
});

test("a number becomes a param with a range, and its name is what to write next", () => {
  const [found] = offered(
    `param flare = 4 cm from 0 cm to 8 cm\npiece panel {\n${square}  extend-hem hem by |2.5 cm\n}\n`,
    "Make 2.5 cm",
  );
  expect(found!.text.split("\n").slice(0, 2)).toEqual([
    "param flare = 4 cm from 0 cm to 8 cm",
    'param extend-hem-by = 2.5 cm from 0 cm to 5 cm "extend-hem by"',
  ]);
  expect(found!.text).toContain("  extend-hem hem by extend-hem-by\n");
  const { from, to } = found!.action.select!;
  expect(`chalkline 1\n${found!.text}`.slice(from, to)).toBe("extend-hem-by");
});

test("a number that is counted, or that declares something, stays a number", () => {
  expect(offered("param flare = |4 cm from 0 cm to 8 cm\n", "Make")).toEqual([]);
  expect(offered("measure hip-girth = |96 cm\nlet half = hip-girth / 2\n", "Make")).toEqual([]);
  expect(offered("measure hip-girth = 96 cm\nsize M { hip-girth = |96 cm }\n", "Make")).toEqual([]);
  expect(
    offered(`fabric felt "felt" width 90 cm\npiece panel {\n${square}}\ncut panel |2 from felt\n`, "Make"),
  ).toEqual([]);
  expect(offered("piece panel {\n  point A = (|0, 0 cm)\n}\n", "Make")).toEqual([]);
});

test("every number of the workroom's recipes that becomes a param leaves the garment as it is", {
  timeout: 120_000,
}, () => {
  let count = 0;
  for (const file of recipeFiles) {
    const read = worked(recipeText(file), file);
    for (const [index, { from }] of dials(read).entries()) {
      if (index % 6 !== 0) continue;
      const action = codeActions(read, from, from).find(({ title }) => title.startsWith("Make"));
      if (!action) continue;
      const now = worked(edited(read.source.text, action.edits), file);
      expect(isSameGarment(read.outcome, now.outcome), `${file} ${action.edits[0]!.text}`).toBe(true);
      count += 1;
    }
  }
  expect(count).toBeGreaterThan(50);
});

test("a run of lines becomes a step, with what it uses as parameters", () => {
  const recipe = `param flare = 4 cm from 0 cm to 8 cm\npiece panel {\n${square}  let low = 2 cm\n|  extend-hem hem by low + flare\n  # turned once\n  allow hem by low corners turned\n|  grain A to D\n}\n`;
  const { text, action, worked: read } = asStep(recipe);
  expect(text).toContain(
    "step own-step (edge hem, length low) {\n  extend-hem hem by low + flare\n  # turned once\n  allow hem by low corners turned\n}\n\npiece panel {",
  );
  expect(text).toContain("  let low = 2 cm\n  own-step hem hem low low\n  grain A to D\n");
  expect(isSameGarment(read.outcome, worked(`chalkline 1\n${text}`).outcome)).toBe(true);
  const { from, to } = action.select!;
  expect(`chalkline 1\n${text}`.slice(from, to)).toBe("own-step");
});

test("lines that give what other lines need are no step", () => {
  const given = asStep(`piece panel {\n|  point A = (0 cm, 0 cm)\n|  point B = A right 4 cm\n}\n`);
  expect(given.action.refused).toBe("A is used outside of these lines, and names that a step gives stay inside it.");
  expect(given.action.edits).toEqual([]);
  // An edge outlives its step only as a part of the outline, and there is no outline yet.
  const edge = asStep(
    `piece panel {\n  point A = (0 cm, 0 cm)\n|  line top = A to A right 4 cm\n|  mark top as seam\n}\n`,
  );
  expect(edge.action.refused).toContain("It would change the garment");
});

test("part of a line, lines outside of a piece and an empty stretch are no step", () => {
  const titles = (text: string, from: number, to: number): string[] =>
    codeActions(worked(text), from, to).map(({ title }) => title);
  const text = `chalkline 1\nlet a = 4 cm\npiece panel {\n${square}  allow hem by 2 cm\n}\n`;
  const at = text.indexOf("allow");
  expect(titles(text, at, at + "allow hem by 2 cm".length)).toContain("Make these lines a step of the recipe's own");
  for (const [from, to] of [
    [at, at + 4],
    [at, at],
    [text.indexOf("let"), text.indexOf("piece")],
    [text.indexOf("piece"), text.length],
  ] as const)
    expect(titles(text, from, to).filter((title) => title.includes("step"))).toEqual([]);
});

test("every run of lines of the workroom's recipes that becomes a step leaves the garment as it is", {
  timeout: 120_000,
}, () => {
  let [made, refused] = [0, 0];
  for (const file of ["lobby-coat-swing.chalk", "stage-smock.chalk", "uneven-jacket.chalk", "blocks/trousers.chalk"]) {
    const read = worked(recipeText(file), file);
    const { lines } = written(read);
    for (let index = 0; index < lines.length; index += 2) {
      const [first, last] = [lines[index]!, lines[Math.min(index + 1, lines.length - 1)]!];
      const untried = codeActions(read, first.from, last.block?.to ?? last.to).find(({ title }) =>
        title.includes("step"),
      );
      const action = untried && tried(read, untried);
      if (action?.refused !== undefined) refused += 1;
      if (!action || action.refused !== undefined) continue;
      const now = worked(edited(read.source.text, action.edits), file);
      expect(isSameGarment(read.outcome, now.outcome), `${file} ${first.words.map(({ text }) => text).join(" ")}`).toBe(
        true,
      );
      made += 1;
    }
  }
  expect(made).toBeGreaterThan(20);
  expect(refused).toBeGreaterThan(0);
});

test("lines that end as in Windows keep their ends", () => {
  const text = `chalkline 1\nunits cm\npiece panel {\n${square}  extend-hem hem by 2 cm\n}\n`.replaceAll("\n", "\r\n");
  const read = worked(text);
  const at = text.indexOf("2 cm");
  const [first, last] = [text.indexOf("  extend-hem"), at + 4];
  const param = codeActions(read, at, at).find(({ title }) => title.startsWith("Make"))!;
  const step = codeActions(read, first, last).find(({ title }) => title.includes("step"))!;
  for (const action of [param, tried(read, step)]) {
    const now = edited(text, action.edits);
    expect(action.refused).toBeUndefined();
    expect(now.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
    expect(isSameGarment(read.outcome, worked(now).outcome)).toBe(true);
  }
});

test("nothing throws anywhere, in whole recipes and in broken ones", { timeout: 120_000 }, () => {
  for (const file of ["bell-sleeve.chalk", "blocks/raglan.chalk", "lobby-coat-swing.chalk"]) {
    const whole = recipeText(file);
    for (const text of [
      whole,
      whole.replace(/[{}]/g, ""),
      whole.slice(0, whole.length * 0.6),
      whole.replace(/ (?:by|to) /g, " "),
    ]) {
      const read = worked(text, file);
      for (let offset = 0; offset <= text.length; offset += 7) {
        codeActions(read, offset, offset);
        for (const { edits } of codeActions(read, offset, Math.min(text.length, offset + 90)))
          for (const { from, to } of edits) expect(to).toBeGreaterThanOrEqual(from);
      }
    }
  }
});
