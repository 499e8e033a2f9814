// Works the recipes of a page and says what came of them in the words that the page uses.
import type { Diagnostic } from "../../grammar/diagnostic.ts";
import { tidy } from "../../grammar/print.ts";
import { cuttingLine } from "../../kernel/cloth/allowances/cutting-line.ts";
import { pathLength } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { toDegrees } from "../../kernel/geometry/trig.ts";
import { kernel, type Outcome } from "../../kernel/kernel.ts";
import { boundary } from "../../kernel/outline.ts";
import { tellStep } from "../../kernel/record.ts";
import type { Sources } from "../../kernel/sources.ts";
import { plainNumber } from "../../kernel/units.ts";
import type { Value } from "../../kernel/value.ts";
import { vocabulary } from "../../kernel/vocabulary.ts";
import type { Mark } from "./marks.ts";
import type { Case, Page } from "./page.ts";

const { work, parse } = kernel(vocabulary);
const drafting = kernel({ ...vocabulary, checks: [] });

const opened = "page.chalk";

/** The text of a case: the page's `before` block, then its own. */
export const textOf = (page: Page, { recipe }: Case): string =>
  page.before ? `${page.before.text}\n${recipe.text}` : recipe.text;

/** The recipes of `file` blocks, by name and nothing else. */
export const sourcesOf = (page: Page): Sources => ({
  read: (path) => {
    const fence = page.files.get(path);
    if (fence) return { file: path, text: fence.text };
    return { problem: { code: "file-missing", message: `There is no file ${path} here.` } };
  },
});

/** Works a recipe with the page's other files at hand. */
export const worked = (text: string, page: Page, { recipe }: Case): Outcome =>
  (recipe.info === "drafting" ? drafting.work : work)({ file: opened, text }, { sources: sourcesOf(page) });

/** Where a finding stands, as a mark would say it: only its first line counts, and an empty stretch shows one caret. */
export const asMark = ({ where, severity, code }: Diagnostic, text: string): Omit<Mark, "words"> => {
  const start = text.lastIndexOf("\n", where.from - 1) + 1;
  const end = text.indexOf("\n", where.from);
  const to = Math.min(where.to, end < 0 ? text.length : end);
  const from = where.from - start + 1;
  return { line: where.line, from, to: Math.max(from, to - start), severity, code };
};

/** What each line of a `measured` block comes to, in the order in which they stand. */
export const measured = (whats: readonly string[], page: Page, each: Case): string[] => {
  const text = textOf(page, each);
  const lets = whats.map((what, index) => (isTold(what) ? "" : `let measured-${index} = ${what}`));
  const outcome = worked(`${text}\n${lets.join("\n")}`, page, each);
  const first = text.split("\n").length + 1;
  return whats.map((what, index) => {
    if (isTold(what)) return what.startsWith("step ") ? stepAt(what, outcome) : cuttingOf(what, outcome);
    const failed = outcome.findings.find(({ where }) => where.file === opened && where.line === first + index);
    if (failed) return failed.message;
    const value = outcome.values.get(`measured-${index}`)?.value;
    return value ? inWords(value) : "nothing";
  });
};

// `step spread-from` is the line in words of the first such step, `step spread-from 2` of the second; `cutting front` is
// the area that is cut for a piece. Everything else is a value of the language.
const isTold = (what: string): boolean => what.startsWith("step ") || what.startsWith("cutting ");

const cuttingOf = (what: string, outcome: Outcome): string => {
  const piece = outcome.garment.pieces.get(what.slice("cutting ".length));
  const line = piece && cuttingLine(piece);
  return line ? squareCentimetres(Math.abs(signedArea(line.path))) : "no such piece";
};

const stepAt = (what: string, outcome: Outcome): string => {
  const [, name, count = "1"] = what.split(" ");
  const record = outcome.records.filter(({ step }) => step === name)[Number(count) - 1];
  return record ? tellStep(record, outcome.garment) : "no such step";
};

/** A number to so many digits, in which what is nothing has no sign: it may come out a hair above 0 or below it. */
const fixed = (value: number, digits: number): string => value.toFixed(digits).replace(/^-(0\.0+)$/, "$1");

const mm = (millimetres: number): string => fixed(millimetres, 1);

const squareCentimetres = (squareMillimetres: number): string => `${fixed(squareMillimetres / 100, 1)} cm2`;

const inWords = (value: Value): string => {
  switch (value.kind) {
    case "length":
      return `${mm(value.value)} mm`;
    case "angle":
      return `${fixed(toDegrees(value.value), 2)} deg`;
    case "area":
      return squareCentimetres(value.value);
    case "weight":
      return `${fixed(value.value, 1)} gsm`;
    case "number":
      return plainNumber(value.value, 4);
    case "place":
      return `(${mm(value.point.x)}, ${mm(value.point.y)}) mm`;
    case "edge":
      return `${mm(pathLength(value.path))} mm`;
    case "piece": {
      const loop = boundary(value.piece);
      return loop ? squareCentimetres(Math.abs(signedArea(loop))) : "open";
    }
    case "truth":
      return value.holds ? "holds" : "does not hold";
    case "text":
      return value.text;
    default:
      return value.kind;
  }
};

/** The tidy form of a recipe. */
export const tidied = (text: string): string => {
  const { tree, forms } = parse({ file: opened, text });
  return tidy(tree, forms);
};
