// chalkline trace, as a user runs it: where the recipe goes, what is said beside it, and what is never overwritten.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";
import { inMillimetres } from "./traced.ts";

beforeAll(build);

const flap = inMillimetres('<path d="M0 0H140V60L70 90L0 60z"/>', '<image href="http://example.org/a.png"/>');
const recipe = `chalkline 1
recipe "Pocket flap"
units cm

# Traced from pocket-flap.svg. Rename what has a number to what it is:
#   piece-1: edge-1 to edge-5
# Left out:
#   pictures (1, line 3)

piece piece-1 {
  point corner-1 = (0, 0)
  point corner-2 = corner-1 right 14 cm
  point corner-3 = corner-2 down 6 cm
  point corner-4 = (7 cm, 9 cm)
  point corner-5 = (0, 6 cm)
  line edge-1 = corner-1 to corner-2  # top, 14 cm
  line edge-2 = corner-2 to corner-3  # right, 6 cm
  line edge-3 = corner-3 to corner-4  # bottom right, 7.62 cm
  line edge-4 = corner-4 to corner-5  # bottom left, 7.62 cm
  line edge-5 = corner-5 to corner-1  # left, 6 cm
  outline edge-1, edge-2, edge-3, edge-4, edge-5
}
`;

test("the recipe goes to standard output, and what is said of it to the other stream", () => {
  const { code, out, err } = chalkline(workroom(["pocket-flap.svg", flap]), ["trace", "pocket-flap.svg"]);
  expect(out).toBe(recipe);
  expect(err).toContain("Traced 1 piece from pocket-flap.svg, within 0.00 mm of what is drawn.");
  expect(err).toContain("note: left out: pictures (1, line 3)");
  expect(code).toBe(0);
});

test("the recipe is tidy, and works", () => {
  const folder = workroom(["pocket-flap.svg", flap]);
  chalkline(folder, ["trace", "pocket-flap.svg", "--out", "flap.chalk"]);
  expect(readFileSync(join(folder, "flap.chalk"), "utf8")).toBe(recipe);
  expect(chalkline(folder, ["tidy", "--check", "flap.chalk"]).code).toBe(0);
  expect(chalkline(folder, ["check", "flap.chalk"]).code).toBe(0);
});

test("a recipe that is there stays, unless --overwrite is said", () => {
  const folder = workroom(["pocket-flap.svg", flap], ["flap.chalk", "# mine\n"]);
  const refused = chalkline(folder, ["trace", "pocket-flap.svg", "--out", "flap.chalk"]);
  expect(refused).toEqual({
    code: 2,
    out: "",
    err: "error: flap.chalk is there already, and stays as it is.\n  Name another file, or say --overwrite.\n",
  });
  expect(readFileSync(join(folder, "flap.chalk"), "utf8")).toBe("# mine\n");
  expect(chalkline(folder, ["trace", "pocket-flap.svg", "--out", "flap.chalk", "--overwrite"]).code).toBe(0);
  expect(readFileSync(join(folder, "flap.chalk"), "utf8")).toBe(recipe);
});

test("nothing is left behind where nothing can be written", () => {
  const folder = workroom(["pocket-flap.svg", flap]);
  mkdirSync(join(folder, "there"));
  for (const out of ["no/such/folder/flap.chalk", "pocket-flap.svg/flap.chalk"]) {
    const { code, err } = chalkline(folder, ["trace", "pocket-flap.svg", "--out", out, "--overwrite"]);
    expect(code).toBe(2);
    expect(err).toContain("cannot be written");
  }
  expect(chalkline(folder, ["trace", "pocket-flap.svg", "--out", "there", "--overwrite"]).code).toBe(2);
  expect(readdirSync(folder).sort()).toEqual(["pocket-flap.svg", "there"]);
  expect(readdirSync(join(folder, "there"))).toEqual([]);
});

test("a drawing comes through standard input, of the kind that it begins as or that was said", () => {
  const folder = workroom();
  const traced = chalkline(folder, ["trace", "-"], { input: flap });
  expect([traced.code, traced.out]).toEqual([
    0,
    recipe.replace('"Pocket flap"', '"A drawing"').replace("pocket-flap.svg", "a drawing"),
  ]);
  expect(traced.err).toContain("Traced 1 piece from standard input");
  const table = "x,y\n0,0\n80,0\n80,40\n";
  expect(chalkline(folder, ["trace", "-", "--as", "csv", "--units", "mm"], { input: table }).out).toContain(
    "right 80 mm",
  );
  const unsaid = chalkline(folder, ["trace", "-"], { input: table });
  expect(unsaid.code).toBe(2);
  expect(unsaid.err).toContain("--as says which kind");
  expect(chalkline(folder, ["trace", "-", "--as", "svg"], { input: "<svg>\n<g>" }).err).toContain("standard input:2:");
  expect(chalkline(folder, ["trace", "-", "--as", "pdf"], { input: flap }).code).toBe(2);
});

test("an allowance is a length above nought, and of a cutting line", () => {
  const folder = workroom(["pocket-flap.svg", flap]);
  const said = (...more: string[]) => chalkline(folder, ["trace", "pocket-flap.svg", ...more]);
  expect(said("--allowance", "1 cm").out).toContain("  strip edge-1, edge-2, edge-3, edge-4, edge-5 by 1 cm\n");
  for (const width of ["0", "1", "-1cm", "wide", "5deg"])
    expect(said("--allowance", width).err).toContain("--allowance takes a length above 0");
  const both = said("--allowance", "1cm", "--line", "sewing");
  expect([both.code, both.out]).toEqual([2, ""]);
  expect(both.err).toContain("leave out --line sewing");
});

test("units and scale are as they are said", () => {
  const folder = workroom(["yoke.csv", "x,y\n0,0\n8,0\n8,4\n"]);
  const { out } = chalkline(folder, ["trace", "yoke.csv", "--units", "in", "--scale", "1/4"]);
  expect(out).toContain("units in\n");
  expect(out).toContain("point corner-2 = corner-1 right 2 in\n");
  for (const scale of ["0", "-1", "two", "3 cm"])
    expect(chalkline(folder, ["trace", "yoke.csv", "--scale", scale]).err).toContain("--scale takes a number above 0");
});

test("what cannot be read is told with its file and line, and the exit code is 2", () => {
  const binary = new TextEncoder().encode("AutoCAD Binary DXF\r\n\u001a\0 and so on");
  const folder = workroom(
    ["broken.svg", "<svg>\n<g>\n</svg>"],
    ["broken.dxf", "0\nSECTION\nnonsense\n2\n"],
    ["binary.dxf", binary],
    ["notes.pages", "hello"],
    ["nul.csv", "x,y\0\n"],
  );
  const said = (file: string): string => {
    const { code, out, err } = chalkline(folder, ["trace", file]);
    expect([code, out]).toEqual([2, ""]);
    return err;
  };
  expect(said("broken.svg")).toContain("error: broken.svg:3: This is not well-formed XML");
  expect(said("broken.dxf")).toContain("error: broken.dxf:3: A group code");
  expect(said("binary.dxf")).toContain("binary.dxf is a binary DXF file");
  expect(said("notes.pages")).toContain("It takes a file ending in .svg, .dxf, .csv");
  expect(said("nul.csv")).toContain("holds bytes that no text has");
  expect(said("missing.svg")).toContain("There is no file missing.svg.");
  expect(said(".")).toContain("is a folder, not a file");
  expect(said("\u001b[31m.svg")).not.toContain("\u001b");
});

test("a file larger than any pattern is not read", () => {
  const folder = workroom();
  writeFileSync(join(folder, "large.svg"), `<svg>${"<g>".repeat(25_000_000)}`);
  expect(chalkline(folder, ["trace", "large.svg"]).err).toContain(
    "large.svg is larger than 64 MiB, and no pattern is.",
  );
});

test("letters of old DXF files are those of western Windows", () => {
  const text =
    "0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n90\n3\n70\n1\n10\n0\n20\n0\n10\n90\n20\n0\n10\n90\n20\n90\n0\nTEXT\n10\n60\n20\n30\n1\n";
  const latin = Uint8Array.from([
    ...new TextEncoder().encode(text),
    0xc4,
    0x72,
    0x6d,
    0x65,
    0x6c,
    ...new TextEncoder().encode("\n0\nENDSEC\n0\nEOF\n"),
  ]);
  expect(chalkline(workroom(["sleeve.dxf", latin]), ["trace", "sleeve.dxf"]).out).toContain('label "Ärmel"');
});

test("the same drawing gives the same bytes in every place and language", () => {
  const folder = workroom(["pocket-flap.svg", flap]);
  const runs = [{}, { LANG: "de_DE.UTF-8", TZ: "Asia/Tokyo" }, { LC_ALL: "tr_TR.UTF-8" }].map(
    (env) => chalkline(folder, ["trace", "pocket-flap.svg"], { env }).out,
  );
  expect(new Set(runs).size).toBe(1);
});
