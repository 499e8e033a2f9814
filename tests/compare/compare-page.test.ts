// The page that stands by itself, in a real browser at the width of a phone and of a desk: nothing is fetched, nothing runs over
// the side, the slider fades from before to after, and axe (Deque's checker of accessibility) finds no fault.
import { existsSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { type Browser, chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { comparePage } from "../../editor/terminal/compare-page.ts";
import { reviewOf, type Side } from "../../editor/terminal/compare-sides.ts";
import { sourceText } from "../../grammar/source.ts";
import { picturesOf } from "../../kernel/report/compare-pictures.ts";
import { recipeSources } from "../worked-recipe.ts";
import { apron, recipeText, workedAfresh } from "./compared.ts";

const browserPath = [process.env.CHALKLINE_CHROMIUM, "/usr/bin/chromium", "/usr/bin/chromium-browser"].find(
  (path) => path !== undefined && existsSync(path),
);

const sideOf = (text: string): Side => ({
  called: "test.chalk",
  opened: {
    source: { file: "test.chalk", text },
    sources: recipeSources,
    texts: new Map([["test.chalk", sourceText(text)]]),
  },
  outcome: workedAfresh(text),
});

const pageOf = (before: string, after: string): string => {
  const [was, is] = [sideOf(before), sideOf(after)];
  const review = reviewOf(was, is, { set: [] });
  const pairOf = (name: string) => ({
    before: was.outcome.garment.pieces.get(name),
    after: is.outcome.garment.pieces.get(name),
  });
  return comparePage([{ review, pictures: picturesOf(review, pairOf, { by: "table" }) }]);
};

const swing = recipeText("lobby-coat-swing.chalk");
const text = pageOf(
  swing,
  swing.replace("flare  = 9 cm", "flare  = 12 cm").replace("hem by longer", "hem by longer - 1 cm"),
);

describe("as text", () => {
  test("every id is there once, and every picture tells itself in words", () => {
    const ids = [...text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    expect(text.match(/<svg /g)!.length).toBe(2);
    expect(text).toMatch(
      /<desc id="overlay-back-words">The piece as it is over the piece as it was\. .*hem 40\.8 cm to /,
    );
  });

  test("what a recipe writes stays text", () => {
    const evil = apron.replace("Usher's apron", "</title><script>alert(1)</script><img src=x onerror=alert(1)>");
    const page = pageOf(evil, evil.replace("wide = 30 cm", "wide = 32 cm"));
    expect(page.match(/<script/g)!.length).toBe(1);
    expect(page).not.toContain("<img");
  });
});

describe.skipIf(browserPath === undefined)("in a browser", () => {
  let browser: Browser;
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "chalkline-page-")));
  const file = join(folder, "compare.html");
  beforeAll(async () => {
    writeFileSync(file, text);
    browser = await chromium.launch({ executablePath: browserPath!, args: ["--no-sandbox", "--disable-gpu"] });
  }, 60_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  const opened = async (width: number) => {
    const page = await browser.newPage({ viewport: { width, height: 800 } });
    const [asked, faults]: [string[], string[]] = [[], []];
    page.on("request", (request) => asked.push(request.url()));
    page.on("pageerror", (error) => faults.push(error.message));
    page.on("console", (message) => faults.push(message.text()));
    await page.goto(pathToFileURL(file).href);
    return { page, asked, faults };
  };

  test.each([390, 1280])("at %d pixels", async (width) => {
    const { page, asked, faults } = await opened(width);
    expect(asked).toEqual([pathToFileURL(file).href]);
    expect(faults).toEqual([]);
    expect(await page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")).toBe(0);
    await page.evaluate(axe.source);
    const found = await page.evaluate(
      "axe.run().then(({ violations }) => violations.map(({ id, nodes }) => id + ': ' + nodes.map(({ html }) => html).join()))",
    );
    expect(found).toEqual([]);
    await page.close();
  });

  test("the slider fades from before to after, and says so", async () => {
    const { page } = await opened(1280);
    const seen = (): Promise<unknown> =>
      page.evaluate(
        "['before', 'removed', 'after', 'added'].map((name) => getComputedStyle(document.querySelector('figure .' + name)).opacity)",
      );
    const slider = page.getByRole("slider");
    expect(await seen()).toEqual(["1", "1", "1", "1"]);
    await slider.press("Home");
    expect(await seen()).toEqual(["1", "1", "0", "0"]);
    expect(await slider.getAttribute("aria-valuetext")).toBe("before");
    await slider.press("End");
    expect(await seen()).toEqual(["0", "0", "1", "1"]);
    await page.close();
  });
});
