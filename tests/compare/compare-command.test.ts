// chalkline compare and explain as a user runs them: what is printed, in which form, and the exit code.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";
import { apron } from "./compared.ts";

beforeAll(build);

const wider = apron.replace("wide = 30 cm", "wide = 32 cm");
const room = () => workroom(["old.chalk", apron], ["new.chalk", wider], ["broken.chalk", `${apron}line a = B to\n`]);

test("two files, for the terminal", () => {
  const { code, out, err } = chalkline(room(), ["compare", "old.chalk", "new.chalk"]);
  expect([code, err]).toEqual([0, ""]);
  expect(out.split("\n")).toEqual([
    "Usher's apron  old.chalk  ->  new.chalk",
    "1 piece changed; 1 value changed.",
    "",
    // 2 x 100 cm.
    "panel  200 cm2 of cloth added (3000 cm2 to 3200 cm2)",
    "  edge   before  after  change  by",
    "  hem    30 cm   32 cm  +2 cm   line 4",
    "  waist  30 cm   32 cm  +2 cm   line 4",
    "  as long as before, but elsewhere: side (2 cm)",
    "  corners moved: hem/side 2 cm, side/waist 2 cm",
    "  places moved: B 2 cm, C 2 cm",
    "",
    "Values",
    "  name  before  after",
    "  wide  30 cm   32 cm",
    "",
    "Edited lines, and what taking each one back would undo",
    '  new.chalk:4: param wide = 32 cm from 10 cm to 60 cm "width"',
    '  was: param wide = 30 cm from 10 cm to 60 cm "width"',
    expect.stringMatching(/^ {2}undoes 9 of 9 changes: panel\.hem, panel\.waist, panel\.side, the cloth of panel/),
    expect.any(String),
    "",
  ]);
});

test("in inches where the recipe shows inches", () => {
  const inches = (text: string): string => text.replace("units cm", "units in");
  const folder = workroom(["old.chalk", inches(apron)], ["new.chalk", inches(wider)]);
  const { out } = chalkline(folder, ["compare", "old.chalk", "new.chalk"]);
  // 300 mm = 11.811 in, 320 mm = 12.598 in, 20 mm = 0.787 in, each to the nearest sixteenth.
  expect(out).toMatch(/hem +11 13\/16 in +12 5\/8 in +\+13\/16 in/);
});

test("JSON has the fields that were promised", () => {
  const { code, out } = chalkline(room(), ["compare", "old.chalk", "new.chalk", "--json"]);
  const report = JSON.parse(out);
  expect(code).toBe(0);
  expect(Object.keys(report)).toEqual(
    expect.arrayContaining(["schema", "values", "pieces", "seams", "checks", "causes"]),
  );
  expect(report.schema).toBe(1);
  expect(report.values).toEqual([{ name: "wide", before: 300, after: 320 }]);
  const [piece] = report.pieces;
  expect(piece).toMatchObject({ name: "panel", status: "changed", from: "panel" });
  expect(piece.edges[0]).toMatchObject({ name: "hem", before: 300, after: 320, difference: 20 });
  expect(piece.places[0]).toEqual({ name: "B", before: [300, 0], after: [320, 0], moved: 20 });
  expect(piece.area).toEqual({ before: 300_000, after: 320_000, added: 20_000, removed: 0 });
  expect(report.checks).toEqual({ began: [], ceased: [] });
  expect(report.causes[0]).toMatchObject({ line: 4, text: 'param wide = 32 cm from 10 cm to 60 cm "width"' });
  expect(report.causes[0].undoes).toContainEqual({ kind: "edge", name: "panel.hem" });
});

test("Markdown holds tables, and no markup of the recipe's", () => {
  const titled = (text: string): string => text.replace("Usher's apron", "<b>*Apron*</b> | @workroom");
  const folder = workroom(["old.chalk", titled(apron)], ["new.chalk", titled(wider)]);
  const { out } = chalkline(folder, ["compare", "old.chalk", "new.chalk", "--markdown"]);
  expect(out).toContain("## &lt;b\\>\\*Apron\\*&lt;/b\\> \\| \\@workroom");
  expect(out).toContain("| edge | before | after | change | by |\n| --- | ---: | ---: | ---: | --- |");
  expect(out).toContain("| hem | 30 cm | 32 cm | +2 cm | line 4 |");
});

describe("nothing to tell", () => {
  test("the same text", () => {
    expect(chalkline(room(), ["compare", "old.chalk", "old.chalk"]).out).toContain("\nNothing changed.\n");
  });
  test("another text of the same garment", () => {
    const folder = workroom(["old.chalk", apron], ["new.chalk", apron.replace("units cm", "# winter\nunits cm")]);
    const { out } = chalkline(folder, ["compare", "old.chalk", "new.chalk"]);
    expect(out).toContain("\nNothing changed in the garment; only the text did.\n");
  });
});

describe("bad input", () => {
  test("a side that does not work whole is said, and the rest compared", () => {
    const { code, out } = chalkline(room(), ["compare", "old.chalk", "broken.chalk"]);
    expect(code).toBe(1);
    expect(out).toMatch(/Not all lines of broken\.chalk could be worked \(1 error\): broken\.chalk:\d+: /);
  });
  test("a file that is not there", () => {
    const { code, err } = chalkline(room(), ["compare", "old.chalk", "other.chalk"]);
    expect([code, err]).toEqual([2, "error: There is no file other.chalk.\n"]);
  });
  test("a revision where there is no repository", () => {
    const { code, err } = chalkline(room(), ["compare", "HEAD", "--", "old.chalk"]);
    expect([code, err]).toEqual([2, "error: old.chalk does not lie in a git repository, so it has no revisions.\n"]);
  });
  test("a file without any copied piece, by itself", () => {
    const { code, err } = chalkline(room(), ["compare", "old.chalk"]);
    expect(code).toBe(2);
    expect(err).toContain("No piece of old.chalk was copied from another");
  });
  test("a place that no piece has, and a way to lay pictures that nobody asked for, are refused", () => {
    const folder = room();
    const nowhere = chalkline(folder, ["compare", "old.chalk", "new.chalk", "--out", "a", "--align", "nape"]);
    expect(nowhere.code).toBe(2);
    expect(nowhere.err).toContain("no piece that changed has a place called nape on both sides");
    expect(existsSync(join(folder, "a"))).toBe(false);
    const unseen = chalkline(folder, ["compare", "old.chalk", "new.chalk", "--align", "fold"]);
    expect(unseen.code).toBe(2);
    expect(unseen.err).toContain("give --out FOLDER as well");
  });
});

test("two folders: recipes of the same name", () => {
  const folder = workroom(["a/x.chalk", apron], ["b/x.chalk", wider], ["a/y.chalk", apron], ["b/z.chalk", apron]);
  const { code, out } = chalkline(folder, ["compare", "a", "b", "--json"]);
  expect(code).toBe(0);
  expect(JSON.parse(out).title).toBe("Usher's apron");
  expect([JSON.parse(out).before, JSON.parse(out).after]).toEqual(["a/x.chalk", "b/x.chalk"]);
});

test("pictures: both outlines, the cloth between by hatching, and the same facts in words", () => {
  const folder = room();
  expect(chalkline(folder, ["compare", "old.chalk", "new.chalk", "--out", "out"]).code).toBe(0);
  expect(readdirSync(join(folder, "out")).sort()).toEqual(["compare.html", "panel.svg"]);
  const svg = readFileSync(join(folder, "out", "panel.svg"), "utf8");
  expect(svg).toContain("hem 30 cm to 32 cm");
  expect(svg).toContain("line 4: param wide");
  // The strip of 20 x 1000 mm at the right.
  expect(svg).toMatch(/<g class="added"><path d="M[^"]*320 1000[^"]*" fill="url\(#overlay-panel-added\)"/);
  expect(svg).not.toContain('class="removed"');
});

test("explain: the life of an edge, through the piece that it was copied from", () => {
  const folder = workroom(["coat.chalk", `${apron}piece longer = panel {\n  extend-hem hem by 5 cm\n}\n`]);
  const { code, out } = chalkline(folder, ["explain", "coat.chalk", "longer.side"]);
  expect(code).toBe(0);
  const lines = out.split("\n");
  expect(lines[0]).toBe("longer.side  100 cm as drafted, 105 cm in the end");
  expect(lines[2]).toMatch(/^ +13 +panel +line +100 cm +drafted$/);
  expect(lines.find((line) => line.includes("extend-hem  "))).toMatch(/^ +24 +longer +extend-hem +105 cm +\+5 cm$/);
  const { err, code: refused } = chalkline(folder, ["explain", "coat.chalk", "longer.sid"]);
  expect([refused, err]).toEqual([2, "error: longer has no edge called sid.\n  Did you mean side?\n"]);
});
