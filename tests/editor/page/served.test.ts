// The page from the local server: a folder is opened, saved into and watched; what somebody else writes is never written over.
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Browser, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { recipeFolder } from "../../../editor/files/recipe-folder.ts";
import { pageFiles, policyOf } from "../../../editor/server/page-files.ts";
import { type Served, serve } from "../../../editor/server/serve.ts";
import { browserPath, edgeLength, launch, lineText, openWindow, pageFolder, ready, toLineEnd } from "./browser.ts";

const suite = test.skipIf(browserPath === undefined);
const recipes = fileURLToPath(new URL("../../../recipes/", import.meta.url));
const token = "token-of-the-test";
const within = { timeout: 10_000, interval: 50 };
const flareLine = 11;

let browser: Browser;
let served: Served;
let folder: string;
let page: Page;
let faults: string[];

beforeAll(async () => {
  if (browserPath === undefined) return;
  browser = await launch();
  folder = mkdtempSync(join(tmpdir(), "chalkline-page-"));
  const files = pageFiles(pageFolder);
  served = await serve(recipeFolder(folder), files, policyOf(files), token, 0);
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await served?.close();
  if (folder) rmSync(folder, { recursive: true });
});

beforeEach(async () => {
  if (browserPath === undefined) return;
  cpSync(recipes, folder, { recursive: true, force: true });
  ({ page, faults } = await openWindow(browser));
  await page.goto(`http://127.0.0.1:${served.port}/#token=${token}&file=lobby-coat-swing.chalk`);
  await ready(page);
}, 60_000);

afterEach(async () => {
  if (browserPath === undefined) return;
  await page.context().close();
  // The browser itself tells of every answer that refuses, and to be refused is what two of these tests are about.
  expect(faults.filter((words) => !words.includes("409"))).toEqual([]);
});

const coat = (): string => join(folder, "lobby-coat-swing.chalk");

suite("saving writes the file, and the token does not stay in the address", async () => {
  expect(page.url()).not.toContain(token);
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # saved");
  await page.keyboard.press("Control+s");
  await expect.poll(() => readFileSync(coat(), "utf8"), within).toContain("# saved");
  await expect.poll(() => page.locator(".changed").count(), within).toBe(0);
  // The page is loaded again: this tab still knows its way in.
  await page.reload();
  await ready(page);
});

suite("a file that somebody else changes is asked about: mine stays, and is written only when I say so", async () => {
  const before = await edgeLength(page, "back", "hem");
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # mine");
  const theirs = readFileSync(coat(), "utf8").replace("flare  = 9 cm", "flare  = 12 cm");
  writeFileSync(coat(), theirs);
  const slip = page.getByRole("alertdialog");
  await slip.waitFor({ timeout: 15_000 });
  expect(readFileSync(coat(), "utf8")).toBe(theirs);
  await slip.getByRole("button", { name: "Compare" }).click();
  await expect.poll(() => page.locator(".held-line").count(), within).toBeGreaterThan(0);
  await slip.getByRole("button", { name: "Keep mine" }).click();
  expect(readFileSync(coat(), "utf8")).toBe(theirs);
  expect(await edgeLength(page, "back", "hem")).toBe(before);
  await page.keyboard.press("Control+s");
  await page
    .getByRole("button", { name: "Save" })
    .click({ timeout: 3000 })
    .catch(() => undefined);
  await expect.poll(() => readFileSync(coat(), "utf8"), within).toContain("# mine");
});

suite("theirs is taken by an edit that undo takes back", async () => {
  const before = await edgeLength(page, "back", "hem");
  writeFileSync(coat(), readFileSync(coat(), "utf8").replace("flare  = 9 cm", "flare  = 12 cm"));
  await page.getByRole("button", { name: "Take theirs" }).click({ timeout: 15_000 });
  await expect.poll(() => lineText(page, flareLine), within).toContain("= 12 cm");
  await expect.poll(() => edgeLength(page, "back", "hem"), within).not.toBe(before);
  expect(await page.locator(".changed").count()).toBe(0);
  await page.locator(".monaco-editor [role=textbox]").first().focus();
  await page.keyboard.press("Control+z");
  await expect.poll(() => lineText(page, flareLine), within).toContain("= 9 cm");
});

suite("saving over a change that the page has not seen yet is refused, and asked about", async () => {
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # mine");
  const theirs = readFileSync(coat(), "utf8").replace("flare  = 9 cm", "flare  = 11 cm");
  writeFileSync(coat(), theirs);
  await page.keyboard.press("Control+s");
  await page.getByRole("alertdialog").waitFor({ timeout: 15_000 });
  expect(readFileSync(coat(), "utf8")).toBe(theirs);
});

suite("a used recipe that changes on the disk redraws the garment", async () => {
  const before = await edgeLength(page, "sleeve", "wrist");
  const block = join(folder, "blocks/straight-coat.chalk");
  const text = readFileSync(block, "utf8");
  const changed = text.replace(
    /(wrist-width[^\n]*= )(\d+)( cm)/,
    (_all, head: string, value: string, unit: string) => `${head}${Number(value) + 2}${unit}`,
  );
  expect(changed).not.toBe(text);
  writeFileSync(block, changed);
  await expect.poll(() => edgeLength(page, "sleeve", "wrist"), { timeout: 15_000, interval: 100 }).not.toBe(before);
});

suite("what is loaded only when it is wanted comes from the server too, under the same policy", async () => {
  await page.getByRole("region", { name: "Cloth to buy" }).getByRole("button").waitFor({ timeout: 20_000 });
  await page.getByRole("button", { name: "Recipes", exact: true }).click();
  const waiting = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("button", { name: /^Download: PDF on/ }).click();
  // How a PDF file begins (ISO 32000-1, 7.5.2).
  expect(
    readFileSync(await (await waiting).path())
      .subarray(0, 5)
      .toString("latin1"),
  ).toBe("%PDF-");
  await page.getByLabel(/Bring in a drawing/).setInputFiles({
    name: "pocket.svg",
    mimeType: "image/svg+xml",
    buffer: Buffer.from(
      '<svg xmlns="http://www.w3.org/2000/svg" width="9cm" height="9cm"><path d="M1 1H99V99H1Z"/></svg>',
    ),
  });
  await page.getByRole("button", { name: "Lay it on the table as a new recipe" }).click({ timeout: 30_000 });
  await page.getByRole("button", { name: "Save" }).click();
  await expect.poll(() => readdirSync(folder), within).toContain("pocket.chalk");
}, 90_000);

suite("without the token of this run the folder stays shut, and the page says so", async () => {
  const other = await (await browser.newContext()).newPage();
  await other.goto(`http://127.0.0.1:${served.port}/#token=wrong`);
  await expect.poll(() => other.locator(".failure").textContent(), within).toContain("earlier run");
  // The words stay when the recipe that opened instead has been drawn.
  await ready(other);
  expect(await other.locator(".failure").textContent()).toContain("earlier run");
  await other.context().close();
});
