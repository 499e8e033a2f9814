// `chalkline chalk-off` tells where the points of every piece lie on the cloth.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

const asked = (recipe: string, ...args: string[]) =>
  chalkline(workroom(["panel.chalk", recipe]), ["chalk-off", "panel.chalk", ...args]);

test("a rectangle of 30 by 100 cm is told by its four corners, each edge straight to the next", () => {
  const { code, out, err } = asked(panel);
  expect(code).toBe(0);
  const lines = out.split("\n").map((line) => line.trim().replace(/\s+/g, " "));
  expect(lines).toContain(
    "Down along the edge center, from level with A; out to the right of it, its top away from you.",
  );
  expect(lines).toContain("waist 1 0 cm 0 cm straight to 2 0.1 mm");
  expect(lines).toContain("side 2 0 cm 30 cm straight to 3 0.1 mm");
  expect(lines).toContain("hem 3 100 cm 30 cm straight to 4 0.1 mm");
  expect(lines).toContain("center 4 100 cm 0 cm straight to 1 0.1 mm");
  expect(lines).toContain("notch side 20 cm 30 cm");
  expect(err).toContain("panel.chalk: 2 pieces");
});

test("in inches lengths are eighths, and the bound is one of them", () => {
  const { out } = asked(panel.replace("units cm", "units in"));
  expect(out).toContain("Lengths to the nearest 1/8 in. As few points as keep the ruled line within 1/8 in");
  // 30 cm are 11.811 in, and 11 3/4 lies nearer than 11 7/8; 100 cm are 39.370 in, 39 3/8.
  expect(out.replace(/ +/g, " ")).toMatch(/hem 3 39 3\/8 in 11 3\/4 in/);
});

test("--as csv prints the table and nothing else, with CR and LF as RFC 4180 has it", () => {
  const { code, out, err } = asked(panel, "--as", "csv");
  expect(code).toBe(0);
  expect(out).toMatch(/^piece,kind,point,name,down mm,[^\r\n]+\r\n(?:[^\r\n]+\r\n)+$/);
  expect(out.split("\r\n")).toContain("panel,outline,3,hem,1000,100,300,30,0.01,the edge center,A");
  expect(out.split("\r\n")).toContain("panel,notch,,side,200,20,300,30,,the edge center,A");
  expect(err).toContain("panel.chalk: 2 pieces");
});

test("a piece without a closed outline is told so, and the others are chalked off", () => {
  const { out } = asked(`${panel}piece begun {\n  point A = (0, 0)\n}\n`);
  expect(out).toContain("begun: its outline is not closed, so it cannot be chalked off yet.");
  expect(out).toContain("straight to 2");
});

test("writes text, CSV, SVG and PDF into a folder, the same bytes twice", () => {
  const folder = workroom(["panel.chalk", panel]);
  const [one, two] = ["one", "two"].map((name) => {
    const { code, out } = chalkline(folder, ["chalk-off", "panel.chalk", "--out", name]);
    expect(code).toBe(0);
    expect(out).toContain(`Wrote chalk-off.txt, chalk-off.csv, chalk-off.svg, chalk-off.pdf into ${name}`);
    return readdirSync(join(folder, name)).map((file) => readFileSync(join(folder, name, file)));
  });
  expect(one).toHaveLength(4);
  expect(one).toEqual(two);
});

test("several formats without a folder are refused", () => {
  const { code, err } = asked(panel, "--as", "text,csv");
  expect(code).toBe(2);
  expect(err).toContain("--as text,csv makes files, which need a folder: --out FOLDER.");
});
