// chalkline measure --as csv: a table alone on the first stream, findings on the other.
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

const measured = (recipe: string, ...args: string[]) =>
  chalkline(workroom(["panel.chalk", recipe]), ["measure", "panel.chalk", ...args]);

test("prints the table and nothing else, with CR and LF as RFC 4180 has it", () => {
  const { code, out, err } = measured(panel, "--as", "csv");
  expect(code).toBe(0);
  expect(out).toMatch(/^piece,kind,name,role,[^\r\n]+\r\n(?:[^\r\n]+\r\n)+$/);
  // The panel is 300 x 1000 mm and has no allowance.
  expect(out.split("\r\n")).toContain("panel,edge,side,seam,1000,100,1000,100,0,0,,,,");
  expect(out.split("\r\n")).toContain("panel,place,C,,,,,,,,300,30,1000,100");
  expect(err).toContain("panel.chalk: 2 pieces");
});

test("findings stay out of it, and the exit code tells", () => {
  const { code, out, err } = measured(`${panel}check length(panel.hem) = 1 cm\n`, "--as", "csv");
  expect(code).toBe(1);
  expect(out.split("\r\n")[1]).toMatch(/^panel,edge,/);
  expect(err).toMatch(/error/);
});

test("--as json is what --json prints; another format is refused", () => {
  expect(measured(panel, "--as", "json").out).toBe(measured(panel, "--json").out);
  const refused = measured(panel, "--as", "xls");
  expect(refused.code).toBe(2);
  expect(refused.err).toContain("Allowed choices are csv, json, text.");
});

test("--as text says one fact a line, and nothing that a length below a quarter of a millimeter would change", () => {
  const { code, out } = measured(panel, "--as", "text");
  expect(code).toBe(0);
  expect(out.split("\n").map((line) => line.trim())).toContain("edge waist 30 cm, seam");
  const nearly = measured(panel.replace("right 30 cm", "right 30.001 cm"), "--as", "text");
  expect(nearly.out).toBe(out);
});
