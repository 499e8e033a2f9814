// `chalkline lay` lays the pieces on the cloth and says how much to buy.
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { PDFDocument } from "@cantoo/pdf-lib";
import { beforeAll, expect, test } from "vitest";
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
  const { code, out } = chalkline(folder(), ["lay", "flats.chalk", "--effort", "quick", "--width", "41cm"]);
  expect(code).toBe(1);
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
