// What the page hands over, in a real browser and from a folder: PDF on the paper that was chosen and every other format, the same
// bytes as the command line writes for the same recipe.
import { readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Page } from "playwright-core";
import { beforeAll, expect } from "vitest";
import { build, chalkline, workroom } from "../../terminal/chalkline.ts";
import { browserPath, intoText } from "./browser.ts";
import { loneWindow, inBrowser as suite } from "./lone-window.ts";

const recipes = fileURLToPath(new URL("../../../recipes/", import.meta.url));
const coat = "lobby-coat-swing.chalk";

let page: Page;
let asked: string[];

loneWindow((window) => {
  ({ page, asked } = window);
});

beforeAll(() => {
  if (browserPath !== undefined) build();
});

/** What the command line draws of the coat, by the names of its files. */
const byCommand = (...args: readonly string[]): ReadonlyMap<string, Uint8Array> => {
  const folder = workroom();
  const { code, err } = chalkline(recipes, [...args, "--out", folder]);
  expect(err).not.toContain("error");
  expect(code).toBe(0);
  return new Map(readdirSync(folder).map((name) => [name, new Uint8Array(readFileSync(join(folder, name)))]));
};

/** Presses a button and takes what it hands over. */
const taken = async (button: string | RegExp): Promise<{ readonly name: string; readonly bytes: Uint8Array }> => {
  const waiting = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("button", { name: button }).click();
  const download = await waiting;
  const path = join(tmpdir(), `chalkline-${process.pid}-${download.suggestedFilename()}`);
  await download.saveAs(path);
  return { name: download.suggestedFilename(), bytes: new Uint8Array(readFileSync(path)) };
};

const openMenu = () => page.getByRole("button", { name: "Recipes", exact: true }).click();

suite("PDF on any paper has the bytes that chalkline draw writes, and its program is loaded only then", async () => {
  const drawn = byCommand("draw", coat, "--as", "pdf", "--paper", "a4,letter,roll-36in");
  await openMenu();
  expect(asked.filter((address) => address.endsWith("printer.js"))).toEqual([]);
  for (const [paper, title] of [
    ["a4", "A4"],
    ["letter", "Letter"],
    ["roll-36in", "36 in roll"],
  ] as const) {
    await page.getByLabel("Paper to print on").selectOption(paper);
    const { name, bytes } = await taken(`Download: PDF on ${title}`);
    expect(name).toBe(`lobby-coat-swing-sheet-${paper}.pdf`);
    expect(Buffer.compare(bytes, drawn.get(`sheet-${paper}.pdf`)!)).toBe(0);
  }
  expect(asked.filter((address) => address.endsWith("printer.js"))).toHaveLength(1);
  // Read by a reader of others: the last was one sheet of a roll 36 in wide, 72 points to the inch (ISO 32000-1, 8.3.2.3).
  const roll = await getDocument({ data: drawn.get("sheet-roll-36in.pdf")!.slice() }).promise;
  const [, , width] = (await roll.getPage(1)).view;
  expect(width).toBeCloseTo(36 * 72, 1);
  await roll.destroy();
}, 90_000);

suite("every other format has the bytes of the command line too", async () => {
  const drawn = byCommand("draw", coat, "--as", "svg,layers,laser,hpgl,dxf");
  await openMenu();
  const inPage = new Map<string, Uint8Array>();
  for (const title of ["SVG drawings", "SVG by layers", "plain DXF", "HPGL"]) {
    const { name, bytes } = await taken(new RegExp(`^Download: ${title}`));
    expect(name).toMatch(/^lobby-coat-swing-\w+\.zip$/);
    for (const [file, content] of Object.entries(unzipSync(bytes))) inPage.set(file, content);
  }
  inPage.set("cutting-room.dxf", (await taken(/^Download: DXF after/)).bytes);
  expect([...inPage.keys()].sort()).toEqual([...drawn.keys()].sort());
  for (const [name, bytes] of drawn) expect([name, Buffer.compare(inPage.get(name)!, bytes)]).toEqual([name, 0]);
}, 90_000);

suite("the lay's PDF has the bytes that chalkline lay writes with the same effort", async () => {
  const drawn = byCommand("lay", coat, "--effort", "quick");
  await page.getByRole("region", { name: "Cloth to buy" }).getByRole("button").click({ timeout: 20_000 });
  for (const [size, file] of [
    ["at a tenth of the size", "lay-shell.pdf"],
    ["as large as life", "lay-shell-life-size.pdf"],
  ] as const) {
    const { name, bytes } = await taken(`Download: PDF ${size}`);
    expect(name).toBe(`lobby-coat-swing-${file}`);
    expect(Buffer.compare(bytes, drawn.get(file)!)).toBe(0);
  }
}, 90_000);

suite("a paper that takes no such piece, and a letter that the font lacks, are told in words", async () => {
  await intoText(page);
  await page.keyboard.press("Control+a");
  await page.keyboard.insertText(
    [
      "chalkline 1",
      'recipe "舞台 curtain"',
      "units cm",
      "piece curtain {",
      "  point A = (0, 0)",
      "  line top = A to A right 130 cm",
      "  line side = A right 130 cm to A right 130 cm down 130 cm",
      "  line hem = A right 130 cm down 130 cm to A down 130 cm",
      "  line center = A down 130 cm to A",
      "  outline top, side, hem, center",
      "}",
    ].join("\n"),
  );
  await page.locator('[data-piece="curtain"]').waitFor();
  await openMenu();
  // A0 is 841 by 1189 mm (ISO 216), and the curtain 1300 by 1300.
  await page.getByLabel("Paper to print on").selectOption("a0");
  await page.getByRole("button", { name: "Download: PDF on A0" }).click();
  const told = page.locator(".failure").first();
  await expect
    .poll(() => told.textContent(), { timeout: 30_000 })
    .toMatch(/A0 .* does not take curtain \(13\d cm by 13\d cm\)/);
  expect(await told.textContent()).toContain("A4");
  await page.getByLabel("Paper to print on").selectOption("a4");
  await taken("Download: PDF on A4");
  // U+821E and U+53F0 are the two characters' numbers (the Unicode code charts).
  await expect.poll(() => told.textContent()).toContain("U+821E");
  expect(await told.textContent()).toContain("U+53F0");
}, 90_000);
