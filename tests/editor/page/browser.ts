// A real browser for the page's tests: Debian's Chromium, which setup.mjs installs where it may.
import { existsSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";

const places = [
  process.env.CHALKLINE_CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
];

/** The browser's program; undefined where there is none. */
export const browserPath = places.find((path) => path !== undefined && existsSync(path));

export const launch = (): Promise<Browser> =>
  chromium.launch({
    ...(browserPath !== undefined && { executablePath: browserPath }),
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });

/** A new window of the browser, with every address that it asks for and every fault that it tells of. */
export const openWindow = async (
  browser: Browser,
): Promise<{ readonly page: Page; readonly asked: string[]; readonly faults: string[] }> => {
  const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
  page.setDefaultTimeout(15_000);
  const [asked, faults]: [string[], string[]] = [[], []];
  page.on("request", (request) => asked.push(request.url()));
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") faults.push(message.text());
  });
  return { page, asked, faults };
};

/** The page as the build left it. */
export const pageFolder = fileURLToPath(new URL("../../../dist/editor/", import.meta.url));
export const loneAddress = pathToFileURL(`${pageFolder}index.html`).href;

/** Waits until the table shows the pieces of a recipe and the full editor has loaded. */
export const ready = async (page: Page): Promise<void> => {
  await page.locator("[data-piece]").first().waitFor();
  await page.locator(".monaco-editor .view-line").first().waitFor();
};

/** A line of the recipe as the editor shows it, from 1; it has to be in sight. */
export const lineText = async (page: Page, line: number): Promise<string> => {
  const rows = await page.evaluate(() => {
    const numbers = [...document.querySelectorAll<HTMLElement>(".margin-view-overlays > div")].map((row) => ({
      top: row.style.top,
      number: row.textContent?.trim() ?? "",
    }));
    const lines = [...document.querySelectorAll<HTMLElement>(".view-lines > .view-line")].map((row) => ({
      top: row.style.top,
      text: row.textContent ?? "",
    }));
    return numbers.map(({ top, number }) => [number, lines.find((row) => row.top === top)?.text ?? ""] as const);
  });
  const found = rows.find(([number]) => number === String(line));
  return (found?.[1] ?? "").replaceAll("\u00a0", " ");
};

/** Puts the keyboard into the text. */
export const intoText = (page: Page): Promise<void> =>
  page
    .locator(".monaco-editor .view-line")
    .first()
    .click({ position: { x: 4, y: 8 } });

/** Puts the cursor behind the last letter of a line. */
export const toLineEnd = async (page: Page, line: number): Promise<void> => {
  await intoText(page);
  await page.keyboard.press("Control+Home");
  for (let at = 1; at < line; at += 1) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("End");
};

/** The length that the table says an edge has, in words. */
export const edgeLength = async (page: Page, piece: string, edge: string): Promise<string> => {
  const shown = page.locator(".facts", { has: page.locator("h3", { hasText: new RegExp(`^${piece}$`) }) });
  if (!(await shown.isVisible())) await page.locator("summary", { hasText: "Pieces in words" }).click();
  const words = await shown.getByRole("button", { name: new RegExp(`^${edge}, `) }).textContent();
  return words?.slice(edge.length + 2) ?? "";
};

/** Where a spot of an edge is seen, from 0 at its beginning to 1 at its end, in pixels. */
export const spotOf = (page: Page, piece: string, edge: string, part: number): Promise<{ x: number; y: number }> =>
  page.evaluate(
    ([named, wanted, at]) => {
      const path = document.querySelector<SVGPathElement>(`[data-piece="${named}"] [data-edge="${wanted}"]`)!;
      const spot = path.getPointAtLength(path.getTotalLength() * at);
      const { a, d, e, f } = path.getScreenCTM()!;
      return { x: spot.x * a + e, y: spot.y * d + f };
    },
    [piece, edge, part] as const,
  );
