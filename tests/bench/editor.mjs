// How fast the page is, in real Chromium: from a key to the next frame against an editor that does nothing but edit, from a key to
// the redrawn table, and the way to the first drawing. Times are of this machine; what to compare is one run's figures with one another.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { chromium } from "playwright-core";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = `${root}dist/editor/`;
const address = pathToFileURL(`${folder}index.html`).href;
const size = (name) => gzipSync(readFileSync(folder + name), { level: 9 }).length;

const at = (values, part) =>
  [...values].sort((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * part))] ?? 0;
const round = (value) => Math.round(value * 10) / 10;

/** Runs in the page before anything else: notes keys, drawings, long tasks and the worker's own times. */
const watch = () => {
  const notes = { frame: [], redrawn: [], took: [], long: [], handler: [] };
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
      // What a frame shows is settled when its callbacks have run; the first message behind them comes when it has been made.
      requestAnimationFrame(() => {
        const framed = new MessageChannel();
        framed.port1.onmessage = () => notes.frame.push(performance.now() - began);
        framed.port2.postMessage(0);
      });
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

/** The text of a recipe, and where in it is typed: behind what `find` finds. */
const spotIn = (file, find) => {
  const text = readFileSync(`${root}recipes/${file}`, "utf8");
  const lines = text.split("\n");
  const line = lines.findIndex((each) => find.test(each));
  const found = find.exec(lines[line]);
  return { text, line, column: found.index + found[0].length };
};

/** Measures an opened page: a figure is typed at the spot and taken back, again and again. */
const typed = async (page, { line, column }) => {
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

const openedPage = async (browser, at) => {
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  await page.addInitScript(watch);
  await page.goto(at);
  await page.locator(".monaco-editor .view-line").first().waitFor();
  return page;
};

/** Types in our page with one recipe open. */
const typing = async (browser, file, find) => {
  const page = await openedPage(browser, address);
  await page.getByRole("button", { name: "Recipes" }).click();
  await page.getByLabel("Open", { exact: true }).selectOption(file);
  await page.keyboard.press("Escape");
  await page.waitForTimeout(1500);
  return typed(page, spotIn(file, find));
};

/** Types the same in monaco by itself, with the same text and no language. */
const bareTyping = async (browser, file, find) => {
  const bare = `${root}out/bench/bare/`;
  mkdirSync(bare, { recursive: true });
  const spot = spotIn(file, find);
  await build({
    absWorkingDir: root,
    stdin: {
      contents: `import { editor } from "monaco-editor/editor/editor.api.js";
        self.MonacoEnvironment = { getWorker: () => new Worker(URL.createObjectURL(new Blob([""]))) };
        editor.create(document.body.firstElementChild, { value: ${JSON.stringify(spot.text)} });`,
      resolveDir: root,
    },
    outfile: `${bare}bare.js`,
    bundle: true,
    minify: true,
    loader: { ".ttf": "dataurl" },
    logLevel: "warning",
  });
  writeFileSync(
    `${bare}index.html`,
    '<!doctype html><meta charset="utf-8"><link rel="stylesheet" href="bare.css"><div style="height:100vh"></div><script src="bare.js"></script>',
  );
  const page = await openedPage(browser, pathToFileURL(`${bare}index.html`).href);
  await page.waitForTimeout(1500);
  return typed(page, spot);
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

/** All that is measured of the page, in Chromium. */
const measured = async (loadCount, files) => {
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
  for (let load = 0; load < loadCount; load += 1) loads.push(await cold(browser));
  const rows = [];
  for (const [file, find] of files) {
    const notes = await typing(browser, file, find);
    const bare = await bareTyping(browser, file, find);
    rows.push({
      file,
      keys: notes.redrawn.length,
      frameP95: round(at(notes.frame, 0.95)),
      bareFrameP95: round(at(bare.frame, 0.95)),
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

const files = [
  ["lobby-coat-swing.chalk", /param flare\s*= 9/],
  ["uneven-jacket.chalk", /allow [^\n]* by 1/],
  ["conductors-cape-coat.chalk", /allow [^\n]* by 1/],
];

const figures = ({ file, frameP95, bareFrameP95, redrawnP95, handlerP95 }) => [
  {
    goal: `key to frame, 95 in 100, ${file}`,
    ours: frameP95,
    floor: { is: "monaco by itself", figure: bareFrameP95 },
    bound: 1.25,
  },
  { goal: `what a key sets off before the next event, 95 in 100, ${file}`, ours: handlerP95, bound: 8 },
  { goal: `key to redrawn table, 95 in 100, ${file}`, ours: redrawnP95 },
];

export const editorBench = {
  name: "editor",
  rows: async (rounds) => {
    const { firstDrawing, fullEditor, typing: rows } = await measured(Math.min(rounds, 5), files);
    return [
      ...rows.flatMap(figures),
      { goal: "page to first drawing, cold", ours: firstDrawing.coldMsMedian },
      { goal: "page to first drawing, gzipped", ours: firstDrawing.gzippedBytes / 1024, unit: "KiB" },
      { goal: "page to full editor, cold", ours: fullEditor.coldMsMedian },
      { goal: "page to full editor, gzipped", ours: fullEditor.gzippedBytes / 1024, unit: "KiB" },
    ];
  },
};
