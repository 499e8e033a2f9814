// The page of promises is what the table of limits says now, and the hostile recipe on it ends as the page shows: in plain sentences.
// CHALKLINE_UPDATE=1 writes the page anew.
import { readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { beforeAll, expect, test } from "vitest";
import { limits } from "../../grammar/limits.ts";
import { hostileRecipe, promisesPage } from "../../kernel/manual/promises-page.ts";
import { build, chalkline, type Ran, workroom } from "../terminal/chalkline.ts";

const page = fileURLToPath(new URL("../../recipes/PROMISES.md", import.meta.url));
let ran: Ran;

beforeAll(() => {
  build();
  const folder = workroom(["room/gift.chalk", hostileRecipe], ["letters/private.chalk", "chalkline 1\n# dear diary\n"]);
  ran = chalkline(`${folder}/room`, ["check", "gift.chalk"]);
  if (process.env.CHALKLINE_UPDATE) writeFileSync(page, promisesPage(ran.out));
});

test("a recipe written to attack the reader ends with a friendly sentence for each of its tries", () => {
  const codes = [...ran.out.matchAll(/^error (\S+) +gift\.chalk:(\d+)$/gm)].map(([, code, line]) => `${line} ${code}`);
  expect(codes).toEqual(["3 use-outside", "4 use-address", "5 use-absolute", "9 limit-table", "10 limit-steps"]);
  expect([ran.code, ran.err]).toEqual([1, ""]);
  expect(ran.out).not.toMatch(/\n\s+at |undefined|NaN|dear diary|Error:/);
});

test("recipes/PROMISES.md is up to date (npm run manual)", () => {
  expect(readFileSync(page, "utf8")).toBe(promisesPage(ran.out));
});

test("every limit is named on the page, and every test file that it names is there", () => {
  const text = readFileSync(page, "utf8");
  for (const [name, value] of Object.entries(limits)) {
    const said =
      name === "fileBytes"
        ? "1 MiB"
        : ["coordinate", "length", "allowance"].includes(name)
          ? `${value / 1000} m`
          : value.toString().replace(/\B(?=(\d{3})+$)/g, ",");
    expect(text, name).toContain(said);
  }
  const named = [...text.matchAll(/`(tests\/[\w/.-]+)`/g)].map(([, file]) => file!);
  expect(named.length).toBeGreaterThan(5);
  for (const file of named)
    expect(() => readFileSync(new URL(`../../${file}`, import.meta.url)), file).not.toThrow(/ENOENT/);
});
