// `chalkline lay` lays the pieces on the cloth and says how much to buy.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { beforeAll, expect, test } from "vitest";
import { overValues } from "../../editor/terminal/lay-over.ts";
import { packersHere } from "../../editor/terminal/packers.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import { type Varied, variedOf } from "../../kernel/cloth/lay/varied.ts";
import { jsonText } from "../../kernel/report/json.ts";
import { layOverJson } from "../../kernel/report/lay-varied-json.ts";
import { workedText } from "../worked-recipe.ts";
import { build, chalkline, workroom } from "./chalkline.ts";

beforeAll(build);

// Boards of 60 by 40 cm: two side by side on 82 cm with its selvedges of 1, so that 60 cm are used and, with 2 at both ends and
// sold by 10, 70 bought.
const flats = `chalkline 1
recipe "Stage flats"
units cm
fabric canvas "canvas" width 82 cm
piece board {
  line head = (0, 0) to (40 cm, 0)
  line far = (40 cm, 0) to (40 cm, 60 cm)
  line foot = (0, 60 cm) to (40 cm, 60 cm)
  line near = (0, 0) to (0, 60 cm)
  outline head, far, foot, near
  grain along near
  allow head, far, foot, near by 0
}
cut board 2 from canvas
`;

const folder = () => workroom(["flats.chalk", flats]);

test("the length to buy is the first thing said", () => {
  const { code, out } = chalkline(folder(), ["lay", "flats.chalk", "--effort", "quick"]);
  expect(code).toBe(0);
  expect(out).toMatch(
    /^canvas, canvas\n {2}Buy 0\.7 m: the pieces take 60 cm of cloth 82 cm wide, opened flat, 100 % of it used\.\n/,
  );
  expect(out).toContain("board  2");
  // 0.48 m2 on 80 cm: 60 cm if all were used, 60 / 0.85 = 70.59 and 60 / 0.6 = 100 by the rule.
  expect(out).toMatch(/70\.\d+ cm to 100\.?\d* cm/);
});

test("--json has every piece where it is cut, on the cloth and not over another", () => {
  const { code, out } = chalkline(folder(), ["lay", "flats.chalk", "--effort", "quick", "--json"]);
  expect(code).toBe(0);
  const { schema, cloths } = JSON.parse(out) as {
    schema: number;
    cloths: {
      fabric: string;
      width: number;
      length: number;
      lengthToBuy: number;
      efficiency: number;
      placements: { piece: string; copy: number; mirrored: boolean; rotation: number; outline: [number, number][] }[];
    }[];
  };
  expect(schema).toBe(1);
  expect(cloths).toHaveLength(1);
  const { fabric, width, length, lengthToBuy, placements } = cloths[0]!;
  expect({ fabric, width, lengthToBuy }).toEqual({ fabric: "canvas", width: 820, lengthToBuy: 700 });
  expect(length).toBeGreaterThan(599.99);
  const across = placements.map(({ outline }) => outline.map(([, y]) => y));
  const [first, second] = across.sort((a, b) => Math.min(...a) - Math.min(...b));
  expect(Math.min(...first!)).toBeGreaterThan(9.9);
  expect(Math.max(...first!)).toBeLessThanOrEqual(Math.min(...second!) + 0.001);
  expect(Math.max(...second!)).toBeLessThan(810.1);
  expect(placements.map(({ mirrored }) => mirrored).sort()).toEqual([false, true]);
});

test("a width of its own, and cloth that is too narrow, with the ways out and an exit code", () => {
  const { code, out, err } = chalkline(folder(), ["lay", "flats.chalk", "--effort", "quick", "--width", "41cm"]);
  expect(code).toBe(1);
  expect(err.trim().split("\n").at(-1)).toBe("Not all of it lies on the cloth: see above.");
  expect(out).toMatch(/With its allowances board is 40 cm wide across the grain; the cloth has 39 cm to lay it on/);
  expect(out).toMatch(/Sew it together of 2 parts of 21\.5\d? cm each/);
});

test("drawings go into the folder, true to their scale", async () => {
  const room = folder();
  const { code, out } = chalkline(room, ["lay", "flats.chalk", "--effort", "quick", "--out", "drawn"]);
  expect(code).toBe(0);
  expect(out).toContain("Wrote lay-canvas.svg, lay-canvas.pdf, lay-canvas-life-size.pdf into drawn");
  const svg = readFileSync(join(room, "drawn", "lay-canvas.svg"), "utf8");
  expect(svg).toContain("selvedge");
  expect(svg).toContain("board 1");
  const pageOf = async (name: string) => {
    const file = await PDFDocument.load(readFileSync(join(room, "drawn", name)));
    return file.getPage(0).getSize();
  };
  const [small, large] = [await pageOf("lay-canvas.pdf"), await pageOf("lay-canvas-life-size.pdf")];
  // 60 cm of cloth and the margins at 72 points to the inch; a tenth of it, and margins as large.
  const points = (mm: number): number => (mm * 72) / 25.4;
  expect(large.width).toBeGreaterThan(points(600));
  expect(small.width).toBeLessThan(points(600) / 2);
  expect(large.height).toBeGreaterThan(points(820));
});

const varied = flats
  .replace("fabric", 'param wide = 40 cm from 10 cm to 100 cm "across"\nfabric')
  .replaceAll("40 cm,", "wide,");

test("--most says the largest value, why not more, and in JSON what was looked at", () => {
  const room = workroom(["flats.chalk", varied]);
  const { code, out } = chalkline(room, [
    "lay",
    "flats.chalk",
    "--most",
    "wide",
    "--by",
    "1cm",
    "--to",
    "44cm",
    "--length",
    "canvas=1m",
  ]);
  expect(code).toBe(0);
  // 82 cm less two selvedges of 1: two boards lie side by side up to 40 cm.
  expect(out).toMatch(
    /^wide 40 cm is the most that fits 100 cm of canvas\.\n {2}At 41 cm, a step more: The shortest lay/,
  );
  const json = chalkline(room, ["lay", "flats.chalk", "--most", "wide", "--json"]);
  const told = JSON.parse(json.out) as {
    schema: number;
    value: number;
    varied: object;
    next: { value: number; obstacle: object };
    tried: { value: number; fits: boolean }[];
  };
  expect([told.schema, told.value]).toEqual([1, 800]);
  expect(told.varied).toEqual({
    name: "wide",
    kind: "param",
    of: "length",
    from: 100,
    to: 1000,
    by: 1,
    range: "stated",
  });
  expect(told.next).toMatchObject({ value: 801, obstacle: { kind: "too-wide", piece: "board", has: 800 } });
  expect(told.tried.every(({ value, fits }) => fits === value <= 800)).toBe(true);
});

test("--most of what never fits has an exit code, and says what is in the way", () => {
  const room = workroom(["flats.chalk", varied]);
  const { code, out } = chalkline(room, ["lay", "flats.chalk", "--most", "wide", "--width", "11cm"]);
  expect(code).toBe(1);
  expect(out).toMatch(/^No wide that was looked at fits/);
  expect(out).toContain("At 10 cm: With its allowances board is 10 cm wide across the grain; the cloth has 9 cm");
});

test("--over is a table, JSON and a curve", () => {
  const room = workroom(["flats.chalk", varied]);
  const asked = ["lay", "flats.chalk", "--over", "wide", "--from", "30cm", "--to", "50cm", "--by", "10cm"];
  const { code, out } = chalkline(room, [...asked, "--out", "drawn"]);
  expect(code).toBe(0);
  expect(out).toMatch(/\n +30 cm {2}0\.7 m +60 cm .*\n +40 cm {2}0\.7 m .*\n +50 cm {2}1\.3 m +120 cm /);
  expect(out).toContain("Wrote lay-canvas-over-wide.svg into drawn");
  expect(readFileSync(join(room, "drawn", "lay-canvas-over-wide.svg"), "utf8")).toContain("At wide 30 cm buy 0.7 m");
  const { schema, rows } = JSON.parse(chalkline(room, [...asked, "--json"]).out) as {
    schema: number;
    rows: { value: number; cloths: { lengthToBuy: number; fits: boolean }[]; failures: [] }[];
  };
  expect(schema).toBe(1);
  expect(rows.map(({ value, cloths }) => [value, cloths[0]!.lengthToBuy, cloths[0]!.fits])).toEqual([
    [300, 700, true],
    [400, 700, true],
    [500, 1300, true],
  ]);
});

test("threads give the same bytes as packing one strip after another", async () => {
  const room = workroom(["flats.chalk", varied]);
  const { out } = chalkline(room, ["lay", "flats.chalk", "--over", "wide", "--by", "15cm", "--json"]);
  const asked = { spread: "flat", selvedge: 10, tilt: 0, effort: "quick", seed: 1 } as const;
  const wide = variedOf(workedText(varied), "wide", {}) as Varied;
  const workWith = (value: number) =>
    workedText(varied, { params: new Map([["wide", { kind: "length", value } as const]]) });
  const alone = await overValues(wide, 150, rungsOf(100, 1000, 150, 0), asked, workWith, packersHere());
  expect(out).toBe(jsonText(layOverJson(alone)));
});

test.each([
  [["--most", "wied"], "no param or measure called wied. Did you mean wide?"],
  [["--most", "wide", "--over", "wide"], "--most or --over, and not both"],
  [["--length", "3m"], "give --most PARAM as well"],
  [["--most", "wide", "--length", "three"], "--length takes a length"],
  [["--most", "wide", "--length", "canvass=3m"], "Did you mean canvas?"],
  [["--from", "3cm"], "give --most PARAM or --over PARAM as well"],
  [["--over", "wide", "--by", "0cm"], "--by takes a step over 0"],
  [["--over", "wide", "--by", "1mm"], "no more than 200 are laid"],
  [["--over", "wide", "--to", "2m"], "look no farther than that"],
  [["--over", "wide", "--set", "wide=20cm"], "many were asked for"],
])("%j of a param is refused in a sentence", (flags, sentence) => {
  const room = workroom(["flats.chalk", varied]);
  const { code, out, err } = chalkline(room, ["lay", "flats.chalk", ...flags, "--out", "drawn"]);
  expect(code).toBe(2);
  expect(out).toBe("");
  expect(err).toContain(sentence);
  expect(existsSync(join(room, "drawn"))).toBe(false);
});

test.each([
  [["--width", "wide"], "--width takes a length"],
  [["--width", "0cm"], "--width takes a length"],
  [["--selvedge", "-1cm"], "--selvedge takes a length"],
  [["--tilt", "45deg"], "--tilt takes an angle"],
  [["--try", "1.5"], "--try takes a whole number"],
])("%j is refused in a sentence", (flags, sentence) => {
  const room = folder();
  const { code, out, err } = chalkline(room, ["lay", "flats.chalk", ...flags, "--out", "drawn"]);
  expect(code).toBe(2);
  expect(out).toBe("");
  expect(err).toContain(sentence);
  expect(existsSync(join(room, "drawn"))).toBe(false);
});

test("a recipe that cuts nothing says so", () => {
  const room = workroom(["flats.chalk", flats.replace(/cut .*\n/, "")]);
  const { code, out } = chalkline(room, ["lay", "flats.chalk"]);
  expect(code).toBe(0);
  expect(out).toContain("no `cut` line");
});
