// chalkline draw: which files it writes, and that nobody ever finds half of one.
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
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
  const pieces = ["back", "Back", "sheet", "con", "lpt\u00b2", "caf\u00e9", "cafe\u0301", "x".repeat(300)];
  const names = [...drawingNames(pieces).values()].map((name) => `${name}.svg`);
  expect(names.slice(0, 5)).toEqual(["back.svg", "Back-2.svg", "sheet-2.svg", "con-piece.svg", "lpt\u00b2-piece.svg"]);
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

test("a letter that cannot be set is a warning at its line, in prints and drawings, and not where the format has letters of its own", () => {
  const folder = workroom(["panel.chalk", panel.replace("apron panel", "前 panel")]);
  const drawn = (...as: readonly string[]) => chalkline(folder, ["draw", "panel.chalk", "--out", "out", "--as", ...as]);
  for (const as of [["pdf", "--paper", "a0"], ["svg"], ["layers"]]) {
    const { code, err } = drawn(...as);
    expect(code).toBe(0);
    expect(err).toContain("warning letter-missing   panel.chalk:2");
    expect(err).toMatch(/panel\.chalk: 2 pieces, \d+ checks, 1 warning/);
  }
  for (const as of ["hpgl", "laser", "dxf"]) expect(drawn(as).err).not.toContain("letter-missing");
});

test("no SVG file asks for a font, and its words are found in it", () => {
  const folder = workroom(["panel.chalk", panel]);
  chalkline(folder, ["draw", "panel.chalk", "--out", "out", "--as", "svg,layers"]);
  chalkline(folder, ["card", "panel.chalk", "--out", "out", "--as", "svg"]);
  chalkline(folder, ["chalk-off", "panel.chalk", "--out", "out", "--as", "svg"]);
  const files = readdirSync(join(folder, "out"));
  expect(files).toContain("sheet-layers.svg");
  expect(files).toContain("card.svg");
  expect(files).toContain("chalk-off.svg");
  for (const name of files) {
    const text = readFileSync(join(folder, "out", name), "utf8");
    expect(text).not.toMatch(/<text|font-|<use|href/);
    expect(text).toMatch(/aria-label="[^"]*panel/i);
  }
});

test("what no sheet takes is refused with the reason and with papers that do take it", () => {
  const long = (length: string): string => panel.split("piece wide")[0]!.replaceAll("down 100 cm", `down ${length}`);
  const folder = workroom(
    ["long.chalk", long("600 cm")],
    ["field.chalk", long("9000 cm").replaceAll("30 cm", "9000 cm")],
  );
  const drawn = (recipe: string, paper: string) =>
    chalkline(folder, ["draw", recipe, "--out", "out", "--as", "pdf", "--paper", paper]);
  const { code, err } = drawn("long.chalk", "a0");
  expect(code).toBe(2);
  // Six meters do not lie on a sheet; a belt of 60 x 2 pages does on tiles, and on a roll it goes over two pages.
  expect(err.replace(/\s+/g, " ")).toContain(
    "Others do: --paper a4, letter, a3, tabloid, roll-36in, roll-914mm; the small ones are put together.",
  );
  expect(drawn("long.chalk", "roll-36in").out.replace(/\s+/g, " ")).toContain("3 sheets 36 in roll");
  expect(drawn("field.chalk", "roll-36in").err.replace(/\s+/g, " ")).toContain("has room for 89.44 cm across");
  for (const paper of ["a4", "roll-36in"]) {
    const { code, err } = drawn("field.chalk", paper);
    expect(code).toBe(2);
    expect(err).not.toContain("Others do");
    expect(err.replace(/\s+/g, " ")).toContain("Split it into panels first.");
  }
  expect(existsSync(join(folder, "out", "sheet-a4.pdf"))).toBe(false);
});

const recipesFolder = fileURLToPath(new URL("../../recipes", import.meta.url));

test("--size all lays the sizes of the first table on one another, and tells of the other table", async () => {
  const folder = workroom(["none", ""]);
  const block = join(recipesFolder, "blocks", "straight-coat.chalk");
  const args = ["draw", block, "--root", recipesFolder, "--as", "svg,pdf", "--size", "all", "--paper", "a0"];
  const { code, err } = chalkline(folder, [...args, "--out", "out", "--nest-at", "underarm"]);
  expect(code).toBe(0);
  expect(err.replace(/\s+/g, " ")).toMatch(
    /note: These are the sizes of \S*working-table\S*; those of \S*misses-table\S* are another nest\./,
  );
  const document = await getDocument({
    data: new Uint8Array(readFileSync(join(folder, "out", "sheet-a0.pdf"))),
    verbosity: 0,
  }).promise;
  // The table of the workroom, blocks/sizes/working-table.chalk, declares these sizes in this order.
  const sizes = ["B80", "B84", "B88", "B92", "B96", "B100", "B104"];
  const config = await document.getOptionalContentConfig();
  const names = (config.getOrder() as string[]).map((id) => config.getGroup(id).name as string);
  expect(names.slice(0, sizes.length + 1)).toEqual([...sizes.map((size) => `Size ${size}`), "Cutting lines"]);
  const { info } = await document.getMetadata();
  expect(info).toMatchObject({ Title: "Straight coat block, sizes B80 to B104" });
  await document.destroy();
  const refused = chalkline(folder, [...args, "--out", "other", "--nest-at", "tail"]);
  expect(refused.code).toBe(2);
  expect(refused.err).toContain("--nest-at tail: no piece has a place or an edge of that name in every size.");
  expect(existsSync(join(folder, "other"))).toBe(false);
});

test("a place that some size lacks is no place to nest at, and a garment without sizes has no nest", () => {
  // The root of what is less than nothing: the line fails in the large size, which then has no such place.
  const spare = "notch side at 20 cm\n  point spare = A right 1 cm * sqrt(75 - waist-girth / 1 cm)";
  const sized = `${panel.split("piece wide")[0]!.replace("notch side at 20 cm", spare)}
size small {
  waist-girth = 70 cm
}
size large {
  waist-girth = 80 cm
}
base size small
`;
  const folder = workroom(["sized.chalk", sized], ["panel.chalk", panel]);
  const nest = (recipe: string, ...more: string[]) =>
    chalkline(folder, ["draw", recipe, "--out", "out", "--size", "all", ...more]);
  const refused = nest("sized.chalk", "--nest-at", "spare");
  expect(refused.code).toBe(2);
  expect(refused.err).toContain("--nest-at spare: no piece has a place or an edge of that name in every size.");
  expect(existsSync(join(folder, "out"))).toBe(false);
  const drawn = nest("sized.chalk", "--nest-at", "A");
  expect(drawn.code).toBe(0);
  expect(drawn.err).toContain("note: Not every size comes out clean: large.");
  expect(nest("panel.chalk").err).toContain("--size all: the recipe has no size table");
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
