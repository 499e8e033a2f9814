// How fast the page is, in real Chromium: from a key to the redrawn table, what typing has to wait for, and the way to the
// first drawing. Times are of this machine; what to compare is one run's figures with one another.
import { readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { chromium } from "playwright-core";

const folder = fileURLToPath(new URL("../../dist/editor/", import.meta.url));
const address = pathToFileURL(`${folder}index.html`).href;
const size = (name) => gzipSync(readFileSync(folder + name), { level: 9 }).length;

const at = (values, part) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * part))] ?? 0;
const round = (value) => Math.round(value * 10) / 10;

/** Runs in the page before anything else: notes keys, drawings, long tasks and the worker's own times. */
const watch = () => {
  const notes = { redrawn: [], took: [], long: [], handler: [] };
  window.benchNotes = notes;
  let pressed;
  addEventListener(
    "keydown",
    () => {
      pressed = performance.now();
      // Whatever runs between the key and the next free moment is what typing waits for.
      const began = pressed;
      const channel = new MessageChannel();
      channel.port1.onmessage = () => notes.handler.push(performance.now() - began);
      channel.port2.postMessage(0);
    },
    true,
  );
  const Real = window.Worker;
  window.Worker = class extends Real {
    constructor(...given) {
      super(...given);
      this.addEventListener("message", ({ data }) => {
        if (data?.kind === "worked") notes.took.push(data.worked.took);
      });
    }
  };
  addEventListener("DOMContentLoaded", () => {
    new MutationObserver((changes) => {
      const drawn = changes.some(
        ({ target, attributeName }) => attributeName === "d" && target.closest?.("[data-piece]"),
      );
      if (!drawn || pressed === undefined) return;
      const from = pressed;
      pressed = undefined;
      requestAnimationFrame(() => setTimeout(() => notes.redrawn.push(performance.now() - from)));
    }).observe(document.body, { subtree: true, attributes: true, attributeFilter: ["d"] });
  });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) notes.long.push(entry.duration);
  }).observe({ type: "longtask" });
};

/** Measures the page with one recipe open; `find` names the line to type in and `keys` what is typed there again and again. */
const typing = async (browser, file, find) => {
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  await page.addInitScript(watch);
  await page.goto(address);
  await page.locator(".monaco-editor .view-line").first().waitFor();
  await page.getByRole("button", { name: "Recipes" }).click();
  await page.getByLabel("Open", { exact: true }).selectOption(file);
  await page.keyboard.press("Escape");
  await page.waitForTimeout(1500);
  const text = readFileSync(fileURLToPath(new URL(`../../recipes/${file}`, import.meta.url)), "utf8");
  const lines = text.split("\n");
  const line = lines.findIndex((each) => find.test(each));
  const column = find.exec(lines[line]).index + find.exec(lines[line])[0].length;
  await page.locator(".monaco-editor [role=textbox]").first().focus();
  await page.keyboard.press("Control+Home");
  for (let down = 0; down < line; down += 1) await page.keyboard.press("ArrowDown");
  for (let right = 0; right < column; right += 1) await page.keyboard.press("ArrowRight");
  await page.evaluate(() => {
    for (const list of Object.values(window.benchNotes)) list.length = 0;
  });
  for (let round = 0; round < 60; round += 1) {
    await page.keyboard.type("5");
    await page.waitForTimeout(140);
    await page.keyboard.press("Backspace");
    await page.waitForTimeout(140);
  }
  const notes = await page.evaluate(() => window.benchNotes);
  await page.context().close();
  return notes;
};

const cold = async (browser) => {
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  const began = performance.now();
  await page.goto(address, { waitUntil: "commit" });
  await page.locator("[data-piece] .tissue").first().waitFor();
  const drawn = performance.now() - began;
  await page.locator(".monaco-editor .view-line").first().waitFor();
  const written = performance.now() - began;
  await page.context().close();
  return { drawn, written };
};

export const benchEditor = async () => {
  const browser = await chromium.launch({
    executablePath: process.env.CHALKLINE_CHROMIUM ?? "/usr/bin/chromium",
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
  const loads = [];
  for (let load = 0; load < 5; load += 1) loads.push(await cold(browser));
  const rows = [];
  for (const [file, find] of [
    ["lobby-coat-swing.chalk", /param flare\s*= 9/],
    ["uneven-jacket.chalk", /allow [^\n]* by 1/],
    ["conductors-cape-coat.chalk", /allow [^\n]* by 1/],
  ]) {
    const notes = await typing(browser, file, find);
    rows.push({
      file,
      keys: notes.redrawn.length,
      redrawnP50: round(at(notes.redrawn, 0.5)),
      redrawnP95: round(at(notes.redrawn, 0.95)),
      workedP50: round(at(notes.took, 0.5)),
      workedP95: round(at(notes.took, 0.95)),
      handlerP95: round(at(notes.handler, 0.95)),
      longestTask: round(Math.max(0, ...notes.long)),
    });
  }
  await browser.close();
  const first = ["index.html", "page.css", "page.js", "worker.js", "recipes.js"]
    .map(size)
    .reduce((sum, each) => sum + each, 0);
  return {
    firstDrawing: {
      gzippedBytes: first,
      coldMsMedian: round(
        at(
          loads.map(({ drawn }) => drawn),
          0.5,
        ),
      ),
    },
    fullEditor: {
      gzippedBytes: size("monaco.js") + size("monaco.css"),
      coldMsMedian: round(
        at(
          loads.map(({ written }) => written),
          0.5,
        ),
      ),
    },
    typing: rows,
  };
};
