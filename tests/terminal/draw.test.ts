// chalkline draw: which files it writes, and that nobody ever finds half of one.
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { drawingNames } from "../../editor/files/drawing-names.ts";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

test("one drawing a piece and one sheet, into a folder that it makes", () => {
  const folder = workroom(["panel.chalk", panel]);
  const { code, out } = chalkline(folder, ["draw", "panel.chalk", "--out", "out/panel"]);
  expect(code).toBe(0);
  expect(readdirSync(join(folder, "out/panel")).sort()).toEqual(["panel.svg", "sheet.svg", "wide.svg"]);
  expect(out).toMatch(/^Wrote 3 files into out\/panel/);
  const drawing = readFileSync(join(folder, "out/panel/panel.svg"), "utf8");
  const [, width, height] = /width="(\d+)mm" height="(\d+)mm"/.exec(drawing)!;
  // True to size: the paper holds the rectangle of 300 x 1000 mm and a margin.
  expect([Number(width) > 300, Number(width) < 400]).toEqual([true, true]);
  expect([Number(height) > 1000, Number(height) < 1100]).toEqual([true, true]);
});

test("the same recipe gives the same bytes", () => {
  const folder = workroom(["panel.chalk", panel]);
  for (const out of ["one", "two"]) chalkline(folder, ["draw", "panel.chalk", "--out", out]);
  for (const name of readdirSync(join(folder, "one"))) {
    expect(readFileSync(join(folder, "one", name))).toEqual(readFileSync(join(folder, "two", name)));
  }
});

test("what can be drawn is drawn, whatever the findings, which are printed", () => {
  const folder = workroom(["panel.chalk", `${panel}piece scrap {\n  point A = missing\n}\n`]);
  const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", "out"]);
  expect(code).toBe(1);
  expect(err).toContain("error name-unknown   panel.chalk:27");
  expect(readdirSync(join(folder, "out"))).toContain("wide.svg");
});

test("a folder that cannot be made leaves everything as it was", () => {
  const folder = workroom(["panel.chalk", panel], ["taken", "a file"]);
  for (const out of ["taken", "taken/below"]) {
    const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", out]);
    expect(code).toBe(2);
    expect(err).toContain(`${out} cannot be written: a file stands where a folder is needed.`);
  }
  expect(readFileSync(join(folder, "taken"), "utf8")).toBe("a file");
});

test("when one drawing cannot be put in place, no half-written file stays behind", () => {
  const folder = workroom(["panel.chalk", panel]);
  // A folder stands where a drawing belongs; nothing can be renamed over it.
  mkdirSync(join(folder, "out", "sheet.svg"), { recursive: true });
  const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", "out"]);
  expect(code).toBe(2);
  expect(err).toContain("a folder stands where a file is needed");
  expect(readdirSync(join(folder, "out")).filter((name) => name.startsWith("."))).toEqual([]);
});

// The superuser may write anywhere, so the refusal can only be seen as somebody else.
test.skipIf(process.getuid?.() === 0)("a folder that nobody may write into", () => {
  const folder = workroom(["panel.chalk", panel]);
  mkdirSync(join(folder, "shut"));
  chmodSync(join(folder, "shut"), 0o500);
  const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", "shut"]);
  expect(code).toBe(2);
  expect(err).toContain("its permissions forbid it");
});

test.skipIf(!existsSync("/proc/self"))("a place where the system lets nobody make a folder", () => {
  const { code } = chalkline(workroom(["panel.chalk", panel]), ["draw", "panel.chalk", "--out", "/proc/chalkline/out"]);
  expect(code).toBe(2);
});

test("an older drawing is replaced, and keeps its permissions", () => {
  const folder = workroom(["panel.chalk", panel], ["out/panel.svg", "old"]);
  chmodSync(join(folder, "out/panel.svg"), 0o640);
  chalkline(folder, ["draw", "panel.chalk", "--out", "out"]);
  expect(readFileSync(join(folder, "out/panel.svg"), "utf8")).toContain("<svg");
});

test("file names are good on every system", () => {
  const pieces = ["back", "Back", "sheet", "con", "caf\u00e9", "cafe\u0301", "x".repeat(300)];
  const names = [...drawingNames(pieces).values()].map((name) => `${name}.svg`);
  expect(names.slice(0, 4)).toEqual(["back.svg", "Back-2.svg", "sheet-2.svg", "con-piece.svg"]);
  expect(new Set(names.map((name) => name.normalize("NFC").toLowerCase())).size).toBe(pieces.length);
  for (const name of names) expect(new TextEncoder().encode(name).length).toBeLessThan(255);
});

test("without --out nothing is written", () => {
  const folder = workroom(["panel.chalk", panel]);
  writeFileSync(join(folder, "other"), "");
  const { code, err } = chalkline(folder, ["draw", "panel.chalk"]);
  expect(code).toBe(2);
  expect(err).toContain("--out");
  expect(readdirSync(folder).sort()).toEqual(["other", "panel.chalk"]);
});

test("an option that would do nothing beside the others is refused, and nothing is written", () => {
  const folder = workroom(["panel.chalk", panel]);
  for (const [option, value, wanted] of [
    ["--paper", "a0", "write --as pdf as well"],
    ["--nest-at", "A", "write --size all as well"],
  ] as const) {
    const { code, err } = chalkline(folder, ["draw", "panel.chalk", "--out", "out", option, value]);
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  }
  expect(existsSync(join(folder, "out"))).toBe(false);
});
