// `chalkline card` tells a workroom all of a garment on one page.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { build, chalkline, panel, workroom } from "./chalkline.ts";

beforeAll(build);

const has = (program: string): boolean => spawnSync(program, ["-v"]).error === undefined;

test("tells the card on the first stream and findings on the other", () => {
  const { code, out, err } = chalkline(workroom(["panel.chalk", panel]), [
    "card",
    "panel.chalk",
    "--set",
    "flare=10cm",
  ]);
  expect(code).toBe(0);
  expect(out).toContain("Usher's apron panel");
  expect(out).toContain("Drafted with flare 10 cm.");
  expect(out).toContain("Body: waist-girth 70 cm.");
  // The hem of 30 cm opened by 10 cm.
  expect(out).toMatch(/opened 10 cm at the hem.*hem 30 cm to 40 cm/);
  expect(out).toContain("Cautions");
  expect(err).toContain("panel.chalk: 2 pieces");
});

test("a recipe with errors is told not to be cut, and the exit code tells it too", () => {
  const folder = workroom(["panel.chalk", `${panel}check length(panel.hem) = 1 cm\n`]);
  const { code, out } = chalkline(folder, ["card", "panel.chalk"]);
  expect(code).toBe(1);
  expect(out).toContain("NOT FIT TO CUT: 1 error");
});

test("writes text, SVG and PDF into a folder, the same bytes wherever and whenever", () => {
  const folder = workroom(["panel.chalk", panel]);
  const [one, two] = [
    { TZ: "UTC", LC_ALL: "C" },
    { TZ: "Pacific/Auckland", LC_ALL: "de_DE.UTF-8" },
  ].map((env, index) => {
    const { code, out } = chalkline(folder, ["card", "panel.chalk", "--out", `out-${index}`], { env });
    expect(code).toBe(0);
    expect(out).toContain(`Wrote card.txt, card.svg, card.pdf into out-${index}`);
    return readdirSync(join(folder, `out-${index}`)).map((name) => readFileSync(join(folder, `out-${index}`, name)));
  });
  expect(one).toHaveLength(3);
  expect(one).toEqual(two);
});

test.skipIf(!has("pdftotext"))("the PDF is one A4 page on which poppler finds what the text says", () => {
  const folder = workroom(["panel.chalk", panel]);
  chalkline(folder, ["card", "panel.chalk", "--out", "out", "--as", "pdf"]);
  expect(readdirSync(join(folder, "out"))).toEqual(["card.pdf"]);
  const info = spawnSync("pdfinfo", [join(folder, "out", "card.pdf")], { encoding: "utf8" }).stdout;
  expect(info).toMatch(/Pages:\s+1\n/);
  // 210 by 297 mm are 595.276 by 841.89 points (ISO 216, 72 points to the inch).
  expect(info).toMatch(/Page size:\s+595\.27\d* x 841\.8\d* pts \(A4\)/);
  const text = spawnSync("pdftotext", ["-layout", join(folder, "out", "card.pdf"), "-"], { encoding: "utf8" }).stdout;
  for (const words of ["Usher's apron panel", "Finished measures, as sewn", "Cautions", "waist-girth 70 cm"])
    expect(text).toContain(words);
});

test("a format that is not there, one without a folder, and a folder that cannot be made are refused", () => {
  const folder = workroom(["panel.chalk", panel]);
  const asked = (...args: string[]) => chalkline(folder, ["card", "panel.chalk", ...args]);
  expect(asked("--out", "out", "--as", "pfd").err).toContain("There is no format pfd. Did you mean pdf?");
  expect(asked("--as", "pdf").err).toContain("--as pdf makes files, which need a folder: --out FOLDER.");
  const blocked = asked("--out", "panel.chalk");
  expect(blocked.code).toBe(2);
  expect(blocked.err).toContain("panel.chalk cannot be written: a file stands where a folder is needed.");
  expect(readFileSync(join(folder, "panel.chalk"), "utf8")).toBe(panel);
  expect(existsSync(join(folder, "out"))).toBe(false);
});

test("its page is A4 or Letter, and a paper that would do nothing is refused", () => {
  const folder = workroom(["panel.chalk", panel]);
  const drawn = (command: string, ...more: string[]) => chalkline(folder, [command, "panel.chalk", ...more]);
  for (const command of ["card", "chalk-off"]) {
    expect(drawn(command, "--out", "out", "--as", "svg", "--paper", "letter").code).toBe(0);
    const page = readdirSync(join(folder, "out")).find((name) => name.startsWith(command))!;
    // ANSI/ASME Y14.1, size A: 8.5 by 11 in.
    expect(readFileSync(join(folder, "out", page), "utf8")).toContain('width="215.9mm" height="279.4mm"');
    expect(drawn(command, "--paper", "letter").err).toContain("need a folder: --out FOLDER");
    expect(drawn(command, "--out", "out", "--paper", "leter").err).toContain("There is no paper leter for words");
    expect(drawn(command, "--out", "out", "--as", "text", "--paper", "a4").err).toContain(
      "write --as svg or pdf as well",
    );
  }
});
