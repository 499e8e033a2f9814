// Real bodies: women of the ANSUR II survey (2012, public release 2017), where its table lies beside the project. It is not ours to ship.
import { existsSync, readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, workroom } from "../terminal/chalkline.ts";
import { rowsOf, table } from "./batch-runs.ts";

const survey = new URL("../../../shared/data/anthropometry/ansur2-female-sample.csv", import.meta.url);
const recipes = new URL("../../recipes/blocks/", import.meta.url);
const women = 40;

beforeAll(() => {
  if (existsSync(survey)) build();
});

/** The measures of a skirt, mm, as the survey has them or as its README says how to come by them. */
const bodies = (): { name: string; waist: number; hip: number; waistToHip: number }[] => {
  const [head = [], ...rows] = rowsOf(readFileSync(survey, "utf8").replaceAll(/\r?\n/g, "\r\n"));
  return rows.slice(0, women).map((row) => {
    const taken = (column: string): number => Number(row[head.indexOf(column)]);
    const ribToHipBone = (taken("tenthribheight") + taken("iliocristaleheight")) / 2;
    return {
      name: row[0]!,
      // The survey measures at the navel; Heinz et al. 2003 (J. Stat. Educ. 11(2)): natural waist = 0.636 navel + 16.52 cm.
      waist: Number((0.636 * taken("waistcircumference") + 165.2).toFixed(1)),
      hip: taken("buttockcircumference"),
      waistToHip: ribToHipBone - taken("buttockheight"),
    };
  });
};

test.skipIf(!existsSync(survey))("a skirt for each of them, as wide as her hip asks for", () => {
  const people = bodies();
  const block = readFileSync(new URL("straight-skirt.chalk", recipes));
  const sizes = ["working-table.chalk", "misses-table.chalk"].map(
    (name) => [`sizes/${name}`, readFileSync(new URL(`sizes/${name}`, recipes))] as const,
  );
  const rows = people.map(({ name, waist, hip, waistToHip }) => `${name},${waist},${hip},${waistToHip}\n`);
  const folder = workroom(
    ["skirt.chalk", block],
    ["women.csv", `name,waist-girth (mm),hip-girth (mm),waist-to-hip (mm)\n${rows.join("")}`],
    ...sizes,
  );
  const { code, out } = chalkline(folder, ["batch", "skirt.chalk", "--bodies", "women.csv", "--out", "out"]);
  expect([code, out]).toEqual([0, expect.stringMatching(/clean +40\n/)]);
  const [head = [], ...measured] = rowsOf(table(folder, "measures.csv"));
  expect(measured.length).toBe(women);
  for (const [index, { name, hip, waist }] of people.entries()) {
    const cell = (heading: string): number => Number(measured[index]![head.indexOf(heading)]);
    expect(measured[index]![1]).toBe(name);
    // Below the hip a straight skirt is as wide as the hip and 4 cm of ease (the recipe's own sentence); half of it here, cm.
    expect(cell("front.hem (cm)") + cell("back.hem (cm)")).toBeCloseTo((hip / 10 + 4) / 2, 3);
    // Its waist is the body's with 2 cm of ease, but for the curve of the waist line and what is too little for a dart.
    const half = (waist / 10 + 2) / 2;
    expect(Math.abs(cell("front.waist (cm)") + cell("back.waist (cm)") - half)).toBeLessThan(0.5);
  }
});
