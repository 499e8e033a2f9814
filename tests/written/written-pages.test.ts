// Written sheets on paper: one page where that will do, more where not, and never a letter lost.
import { expect, test } from "vitest";
import { chalkOff } from "../../kernel/chalk/chalk-off.ts";
import type { Drawing } from "../../kernel/drawing/drawing.ts";
import { boxOf } from "../../kernel/drawing/lettering.ts";
import { svg } from "../../kernel/export/svg.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { chalkOffEntries } from "../../kernel/report/chalk-off-entries.ts";
import { amountsUnder, type Entry, heading, sentence, table, title, wordsUnder } from "../../kernel/written/entry.ts";
import { writtenPages, writtenPapers } from "../../kernel/written/written-pages.ts";
import { workedRecipe } from "../worked-recipe.ts";

const list = (rows: number): Entry[] => [
  title("Stage cloak"),
  heading("Cut"),
  ...table(
    [wordsUnder("piece"), amountsUnder("long")],
    Array.from({ length: rows }, (_, index) => [`panel-${index}`, `${index} cm`]),
  ),
];

/** All letters of the pages but their feet, sorted: breaking a line moves letters and loses none. */
const lettersOn = (pages: readonly Drawing[]): string =>
  sorted(pages.flatMap(({ groups }) => groups[0]!.texts.slice(0, -1).map(({ text }) => text)));

const lettersIn = (entries: readonly Entry[]): string =>
  sorted(
    entries.flatMap((entry) => {
      if (entry.kind === "picture") return entry.texts.map(({ text }) => text);
      return entry.kind === "table" ? [...entry.columns.map(({ head }) => head), ...entry.rows.flat()] : [entry.text];
    }),
  );

const sorted = (texts: readonly string[]): string => [...texts.join("").replace(/\s/g, "")].sort().join("");

const staysOnPaper = ({ groups, paper }: Drawing): void => {
  for (const { center, halfWidth, halfHeight } of groups[0]!.texts.map(boxOf)) {
    expect(center.x - halfWidth).toBeGreaterThan(paper.left + 10);
    expect(center.x + halfWidth).toBeLessThan(paper.right - 10);
    expect(center.y - halfHeight).toBeGreaterThan(paper.top + 10);
    expect(center.y + halfHeight).toBeLessThan(paper.bottom - 10);
  }
};

test("a page is A4, 210 by 297 mm", () => {
  // Source: ISO 216:2007.
  expect(svg(writtenPages("Cloak", list(3))[0]!)).toContain('width="210mm" height="297mm"');
});

test("or Letter, 8 1/2 by 11 in, with nothing lost and nothing near its edges", () => {
  // Source: ANSI/ASME Y14.1, size A: 8.5 by 11 in, at 25.4 mm to the inch.
  const letter = writtenPapers.find(({ name }) => name === "letter")!;
  for (const rows of [3, 60, 200]) {
    const pages = writtenPages("Cloak", list(rows), letter);
    expect(pages[0]!.paper).toEqual({ left: 0, top: 0, right: 215.9, bottom: 279.4 });
    expect(lettersOn(pages)).toBe(lettersIn(list(rows)));
    for (const page of pages) staysOnPaper(page);
  }
});

test.each([71, 75, 80, 100, 150, 200, 330])(
  "%s rows are shared out evenly, on no more pages than they need",
  (rows) => {
    const pages = writtenPages("Cloak", list(rows));
    const rowsOn = pages.map(({ groups }) => groups[0]!.texts.filter(({ text }) => text.startsWith("panel-")).length);
    expect(pages.length).toBeGreaterThan(1);
    // A page holds what the fullest of a long list holds.
    const fullest = Math.max(
      ...writtenPages("Cloak", list(2000)).map(
        ({ groups }) => groups[0]!.texts.filter(({ text }) => text.startsWith("panel-")).length,
      ),
    );
    expect(pages.length).toBe(Math.ceil((rows + 3) / fullest));
    // The last page has at least two thirds of what the others have.
    expect(Math.min(...rowsOn) / Math.max(...rowsOn)).toBeGreaterThan(0.66);
  },
);

test("what goes on one page in smaller letters is on one page, and in letters of the usual size where that will do", () => {
  const [short] = writtenPages("Cloak", list(3));
  const [long, ...more] = writtenPages("Cloak", list(60));
  const sizeOf = (page: Drawing): number => page.groups[0]!.texts.find(({ text }) => text === "panel-2")!.size;
  expect(more).toEqual([]);
  expect(sizeOf(long!)).toBeLessThan(sizeOf(short!));
});

test.each([1, 40, 70, 200])("no letter of %s rows is lost, and all stay 10 mm within the paper", (rows) => {
  const pages = writtenPages("Cloak", list(rows));
  expect(lettersOn(pages)).toBe(lettersIn(list(rows)));
  for (const page of pages) staysOnPaper(page);
});

test("sentences and words of any length are broken, not cut", () => {
  const entries = [
    title("W".repeat(300)),
    heading("m".repeat(400)),
    sentence("x".repeat(9000)),
    ...table([wordsUnder("a"), amountsUnder("b")], [["k ".repeat(4000), "1".repeat(500)]]),
  ];
  const pages = writtenPages("Cloak", entries);
  expect(pages.length).toBeGreaterThan(1);
  expect(lettersOn(pages)).toBe(lettersIn(entries));
  for (const page of pages) staysOnPaper(page);
});

test("a heading never stands alone at the foot of a page, and a section that a page can hold stays on one", () => {
  const entries = [...list(22), heading("Sew"), ...list(22).slice(2), heading("Care"), ...list(22).slice(2)];
  const pages = writtenPages("Cloak", entries);
  expect(pages.length).toBe(2);
  const said = pages.map(({ groups }) => groups[0]!.texts.map(({ text }) => text));
  expect(said[0]).not.toContain("Care");
  expect(said[1]!.indexOf("Care")).toBe(0);
});

test("columns without anything in them are left out", () => {
  expect(table([wordsUnder("a"), wordsUnder("b")], [["x", ""]])).toEqual([
    { kind: "table", columns: [{ head: "a", amount: false }], rows: [["x"]] },
  ]);
  expect(table([wordsUnder("a")], [])).toEqual([]);
});

test("a piece's picture has every point by its number, within the width of the page", () => {
  const { garment } = workedRecipe("lobby-coat-swing.chalk");
  const pages = writtenPages("Coat", chalkOffEntries(garment));
  for (const page of pages) staysOnPaper(page);
  const counts = chalkOff(garment).pieces.map(({ edges }) => edges.flatMap(({ points }) => points).length);
  const pictures = chalkOffEntries(garment).flatMap((entry) => (entry.kind === "picture" ? [entry] : []));
  expect(pictures.map(({ texts }) => texts.length)).toEqual(counts);
  for (const { strokes, height } of pictures) {
    const { left, top, right, bottom } = bounds(strokes.map(({ path }) => path));
    expect(left).toBeGreaterThanOrEqual(0);
    expect(top).toBeGreaterThanOrEqual(0);
    expect(right).toBeLessThanOrEqual(182);
    expect(bottom).toBeLessThanOrEqual(height);
  }
});
