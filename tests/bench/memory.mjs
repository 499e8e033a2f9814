// What an editor holds that is open all day: `npm run bench -- memory` types 20,000 edits into the language server, into the page's
// worker, and into the page itself in Chromium, and prints what each holds after every tenth of them. `memory 5000` types as many.
import { mkdirSync, writeFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { chromium } from "playwright-core";

const root = fileURLToPath(new URL("../../", import.meta.url));

export const benchMemory = async (written = "20000") => {
  const edits = Math.max(10, Math.round(Number(written) / 10) * 10 || 20_000);
  const outfile = `${root}out/bench/whole-day.mjs`;
  await build({
    absWorkingDir: root,
    entryPoints: ["tests/memory/whole-day.ts"],
    outfile,
    bundle: true,
    platform: "node",
    format: "esm",
    packages: "external",
    logLevel: "warning",
  });
  const { wholeDay } = await import(outfile);
  const { languageServer, pageWorker } = await wholeDay(root, edits);
  const page = await pageDay(edits);
  console.log("MiB held once all that nobody needs any more has been thrown away");
  console.table(
    Object.fromEntries(
      languageServer.map(({ edits: done, mb }, index) => [
        done,
        {
          "language server": round(mb),
          "page's worker": round(pageWorker[index].mb),
          page: round(page[index].mb),
          "nodes in the page": page[index].nodes,
          "listeners in the page": page[index].listeners,
        },
      ]),
    ),
  );
  mkdirSync(`${root}out/bench`, { recursive: true });
  writeFileSync(`${root}out/bench/memory.json`, `${JSON.stringify({ languageServer, pageWorker, page }, null, 2)}\n`);
};

const round = (value) => Math.round(value * 100) / 100;

/** Types into the page itself; what undoing takes is part of what it holds. */
const pageDay = async (edits) => {
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
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  await page.goto(pathToFileURL(`${root}dist/editor/index.html`).href);
  await page.locator(".monaco-editor .view-line").first().waitFor();
  await page.waitForTimeout(1500);
  const session = await page.context().newCDPSession(page);
  await page.locator(".monaco-editor [role=textbox]").first().focus();
  // A remark in the second line: to and fro, so that the text does not grow.
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("End");
  await page.keyboard.press("Enter");
  await page.keyboard.type("# ");
  const held = [];
  for (let edit = 1; edit <= edits; edit += 1) {
    if (edit % 2 === 1) await page.keyboard.type(String(edit % 10));
    else await page.keyboard.press("Backspace");
    // The worker takes the latest text only; from time to time it is waited for, so that much is drawn as well.
    if (edit % 5 === 0) await page.waitForTimeout(10);
    if (edit % (edits / 10) !== 0) continue;
    await page.waitForTimeout(2000);
    await session.send("HeapProfiler.collectGarbage");
    await session.send("HeapProfiler.collectGarbage");
    const { usedSize } = await session.send("Runtime.getHeapUsage");
    const { nodes, jsEventListeners } = await session.send("Memory.getDOMCounters");
    held.push({ edits: edit, mb: usedSize / 1024 / 1024, nodes, listeners: jsEventListeners });
    console.log(`page, ${edit} edits: ${held.at(-1).mb.toFixed(2)} MiB`);
  }
  await browser.close();
  return held;
};
