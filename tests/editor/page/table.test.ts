// The page in a real browser, opened from its folder without any server: what is typed, turned and pulled moves the drawing,
// the drawing and the text point at one another, and nothing is ever asked of a network.
import AxeBuilder from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { edgeLength, intoText, lineText, loneAddress, ready, spotOf, toLineEnd } from "./browser.ts";
import { loneWindow, inBrowser as suite } from "./lone-window.ts";

let page: Page;

loneWindow((window) => {
  ({ page } = window);
});

const within = { timeout: 10_000, interval: 50 };
const flareLine = 11;

suite("typing redraws, and a broken line keeps the last good drawing", async () => {
  const before = await edgeLength(page, "back", "hem");
  await toLineEnd(page, 21);
  await page.keyboard.type(" + 4 cm");
  await expect.poll(() => edgeLength(page, "back", "center"), within).toBe("110 cm");
  expect(await edgeLength(page, "back", "hem")).not.toBe(before);
  await page.keyboard.type(" +");
  await expect.poll(() => page.locator('[data-piece="back"].kept .tissue').count(), within).toBe(1);
  expect(await page.locator(".findings .error").count()).toBeGreaterThan(0);
  expect(await edgeLength(page, "back", "center")).toBe("110 cm");
  await page.keyboard.press("Backspace");
  await page.keyboard.press("Backspace");
  // What is left is the finding that the longer back no longer fits the front.
  await expect.poll(() => page.locator("[data-piece].kept").count(), within).toBe(0);
  expect(await page.locator(".findings .error p").first().textContent()).toContain("shorter than the side of back");
});

suite("a finding appears where the mistake stands, and its button repairs it", async () => {
  await toLineEnd(page, 7);
  await page.keyboard.type("\nlet more = 3 inches");
  const fix = page.locator(".finding .fix").first();
  await fix.waitFor();
  expect(await page.locator(".squiggly-error").count()).toBeGreaterThan(0);
  await fix.click();
  await expect.poll(() => page.locator(".findings .error").count(), within).toBe(0);
  expect(await lineText(page, 8)).toBe("let more = 3 in");
});

suite("a dial swings the hem, the text is what changes, and one undo takes the whole turn back", async () => {
  const before = await edgeLength(page, "back", "hem");
  const box = (await page.getByRole("slider", { name: "flare" }).boundingBox())!;
  const middle = box.y + box.height / 2;
  await page.mouse.move(box.x + box.width * 0.45, middle);
  await page.mouse.down();
  for (let step = 1; step <= 8; step += 1) await page.mouse.move(box.x + box.width * (0.45 + step * 0.05), middle);
  await expect.poll(() => lineText(page, flareLine), within).toMatch(/= 1[5-9](\.\d)? cm from/);
  await expect.poll(() => edgeLength(page, "back", "hem"), within).not.toBe(before);
  await page.mouse.up();
  await intoText(page);
  await page.keyboard.press("Control+z");
  await expect.poll(() => lineText(page, flareLine), within).toContain("= 9 cm from");
  await expect.poll(() => edgeLength(page, "back", "hem"), within).toBe(before);
  await page.keyboard.press("Control+z");
  expect(await lineText(page, flareLine)).toContain("= 9 cm from");
});

suite("a number is turned where it stands, by the mouse and by the keyboard", async () => {
  const number = page
    .locator(".view-line", { hasText: "param flare" })
    .locator("span > span", { hasText: /^9\scm$/ })
    .first();
  // The editor draws its lines anew now and then, and between two drawings the number stands nowhere.
  let found: Awaited<ReturnType<typeof number.boundingBox>> = null;
  await expect
    .poll(async () => {
      found = await number.boundingBox();
      return found !== null;
    }, within)
    .toBe(true);
  const box = found!;
  await page.keyboard.down("Alt");
  await page.mouse.move(box.x + 4, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 44, box.y + box.height / 2, { steps: 10 });
  await page.mouse.up();
  await page.keyboard.up("Alt");
  await expect.poll(() => lineText(page, flareLine), within).toContain("= 10 cm from");
  await toLineEnd(page, 17);
  await page.keyboard.press("Control+Home");
  for (let at = 1; at < flareLine; at += 1) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("Home");
  for (let at = 0; at < "param flare  = 1".length; at += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Alt+PageDown");
  await expect.poll(() => lineText(page, flareLine), within).toContain("= 9.9 cm from");
});

suite("pulling at the hem turns the number that governs it, shows the value, and one undo takes it back", async () => {
  const corner = await spotOf(page, "back", "hem", 1);
  const before = await edgeLength(page, "back", "hem");
  await page.mouse.move(corner.x, corner.y);
  await page.mouse.down();
  for (let step = 1; step <= 12; step += 1) {
    await page.mouse.move(corner.x + step * 4, corner.y - step);
    await page.waitForTimeout(120);
  }
  await expect.poll(() => page.locator(".pulled-words").textContent(), within).toMatch(/cm$/);
  const now = await spotOf(page, "back", "hem", 1);
  // The hand is where it let the corner be drawn to, as nearly as a tenth of a centimetre of the number allows.
  expect(Math.abs(now.x - (corner.x + 48))).toBeLessThan(8);
  await page.mouse.up();
  expect(await edgeLength(page, "back", "hem")).not.toBe(before);
  await intoText(page);
  await page.keyboard.press("Control+z");
  await expect.poll(() => edgeLength(page, "back", "hem"), within).toBe(before);
});

suite("a line lights up what it drew, and an edge leads to its lines", async () => {
  await toLineEnd(page, 25);
  await expect.poll(() => page.locator(".stroke.chalked").count(), within).toBe(0);
  await toLineEnd(page, 20);
  await expect.poll(() => page.locator('[data-piece="back"] .stroke.chalked').count(), within).toBeGreaterThan(0);
  expect(await page.locator('[data-piece="front"] .stroke.chalked').count()).toBe(0);
  const spot = await spotOf(page, "front", "hem", 0.5);
  await page.mouse.move(spot.x, spot.y);
  await expect.poll(() => page.locator(".line-drew, .line-changed").count(), within).toBeGreaterThan(1);
  await page.mouse.click(spot.x, spot.y);
  await page.keyboard.press("Escape");
});

suite("what a step of the recipe's own drew leads to the call, and the way down is offered", async () => {
  const recipe = [
    "chalkline 1",
    "units cm",
    "step longer (edge low) {",
    "  extend-hem low by 3 cm",
    "}",
    "piece panel {",
    "  point A = (0, 0)",
    "  point B = A right 20 cm",
    "  line waist = A to B",
    "  line side = B to B down 40 cm",
    "  line hem = B down 40 cm to A down 40 cm",
    "  line center = A down 40 cm to A",
    "  outline waist, side, hem, center",
    "  longer low hem",
    "}",
  ].join("\n");
  await intoText(page);
  await page.keyboard.press("Control+a");
  await page.keyboard.insertText(recipe);
  await page.locator('[data-piece="panel"]').waitFor();
  await page.locator("summary", { hasText: "Pieces in words" }).click();
  await page
    .locator(".facts")
    .getByRole("button", { name: /^side, \d/ })
    .first()
    .click();
  const slip = page.locator(".chosen-slip");
  await expect
    .poll(() => slip.textContent(), within)
    .toContain("drawn by line 10, changed by line 14 (inside it: line 4)");
  await slip.getByRole("button", { name: "line 4", exact: true }).click();
  await expect.poll(() => page.locator(".active-line-number").first().textContent(), within).toBe("4");
});

suite("the text answers questions: what can stand here, what a word is, and where a name was given", async () => {
  await toLineEnd(page, 21);
  await page.keyboard.type("\nspr");
  await expect.poll(() => page.locator(".suggest-widget").textContent(), within).toContain("spread-from");
  await page.keyboard.press("Escape");
  for (let times = 0; times < 4; times += 1) await page.keyboard.press("Backspace");
  await toLineEnd(page, 16);
  await page.keyboard.press("Home");
  for (let right = 0; right < "piece back = str".length; right += 1) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("F12");
  await expect.poll(() => page.locator(".active-line-number").first().textContent(), within).toBe("9");
  const renamed = async (line: number, before: string, to: string): Promise<void> => {
    await toLineEnd(page, line);
    await page.keyboard.press("Home");
    for (let right = 0; right < before.length; right += 1) await page.keyboard.press("ArrowRight");
    await page.keyboard.press("F2");
    // The box that asks for the name marks the old one a moment after it has opened; a hand is never so quick.
    const asked = (): Promise<string> =>
      page.evaluate(() => {
        const box = document.activeElement;
        if (!(box instanceof HTMLInputElement) || !box.classList.contains("rename-input")) return "";
        return box.value.slice(box.selectionStart ?? 0, box.selectionEnd ?? 0) || box.value;
      });
    await expect.poll(asked, within).not.toBe("");
    await page.waitForTimeout(300);
    await page.keyboard.type(to);
    await expect.poll(asked, within).toBe(to);
    await page.keyboard.press("Enter");
  };
  await renamed(14, "fabric sh", "gabardine");
  await expect.poll(() => lineText(page, 14), within).toMatch(/^fabric gabardine "gabardine"/);
  await expect.poll(() => page.locator(".findings .error").count(), within).toBe(0);
  // Another recipe of the workroom speaks of this one's flare, and what is not on the table cannot be taken back by undo.
  await renamed(flareLine, "param fl", "swing");
  await expect.poll(() => page.locator(".failure").textContent(), within).toContain("lobby-coat-straight-again.chalk");
  expect(await lineText(page, flareLine)).toContain("param flare");
});

suite("a number becomes a param by an action that leaves the garment as it is", async () => {
  const before = await edgeLength(page, "back", "hem");
  await toLineEnd(page, 19);
  await page.keyboard.press("Home");
  for (let right = 0; right < "spread-from nape to hem by 4".length; right += 1)
    await page.keyboard.press("ArrowRight");
  await page.keyboard.press("Control+.");
  await page.locator(".action-widget .monaco-list-row", { hasText: /param/i }).first().click();
  await expect.poll(() => page.locator(".dial-head label").count(), within).toBe(3);
  await expect.poll(() => page.locator(".findings .error").count(), within).toBe(0);
  expect(await edgeLength(page, "back", "hem")).toBe(before);
});

suite("the working goes back and forth, and the pieces grow", async () => {
  const back = page.getByRole("button", { name: "Back", exact: true });
  const slider = page.getByRole("slider", { name: "Steps of the working shown" });
  await slider.focus();
  await page.keyboard.press("Home");
  await expect.poll(() => page.locator("[data-piece]").count(), within).toBe(0);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await expect.poll(() => page.locator("[data-piece]").count(), within).toBe(1);
  await expect.poll(() => page.locator(".step-words").textContent(), within).toContain("line 17");
  await page.keyboard.press("End");
  await expect.poll(() => page.locator("[data-piece]").count(), within).toBe(3);
  await back.click();
  await expect.poll(() => page.locator(".step-words").textContent(), within).toMatch(/^\d+ of \d+, line/);
});

suite("the recipe lies on any edge of the table or loose on it, is widened and folded away, and keeps what was typed", async () => {
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # kept");
  const card = page.locator(".recipe-card");
  const lies = async (where: string): Promise<{ x: number; y: number; width: number; height: number }> => {
    await page.getByLabel("Where the recipe lies").selectOption(where);
    return (await card.boundingBox())!;
  };
  expect((await lies("right")).x).toBeGreaterThan(700);
  expect((await lies("top")).height).toBeLessThan(700);
  expect((await lies("bottom")).y).toBeGreaterThan(100);
  expect((await lies("loose")).x).toBeGreaterThan(0);
  const before = (await lies("left")).width;
  await page.getByRole("separator", { name: "Width of the recipe card" }).focus();
  await page.keyboard.press("ArrowRight");
  expect((await card.boundingBox())!.width).toBeGreaterThan(before);
  await page.getByRole("button", { name: "Fold the recipe" }).click();
  expect((await card.boundingBox())!.width).toBeLessThan(60);
  await page.getByRole("button", { name: "Open the recipe" }).click();
  await expect.poll(() => lineText(page, flareLine), within).toContain("# kept");
});

suite("at true size ten centimeters of the piece are ten centimeters of glass, once the screen is measured", async () => {
  const pixels = (): Promise<number> =>
    page.evaluate(() => document.querySelector<SVGGElement>("[data-piece]")!.getScreenCTM()!.a);
  await page.getByRole("button", { name: "True size" }).click();
  // A CSS pixel is 1/96 in where nothing better is known (CSS Values and Units 4, 6.2).
  await expect.poll(pixels, within).toBeCloseTo(96 / 25.4, 3);
  await page.getByRole("button", { name: "Look" }).click();
  await page.getByLabel(/bank card/).fill("5");
  await page.keyboard.press("Escape");
  await page.getByRole("button", { name: "True size" }).click();
  await expect.poll(pixels, within).toBeCloseTo(5, 3);
});

suite("the drawing is held against the saved text, and the difference is seen", async () => {
  await toLineEnd(page, 21);
  await page.keyboard.type(" + 4 cm");
  await expect.poll(() => edgeLength(page, "back", "center"), within).toBe("110 cm");
  await page.getByRole("button", { name: "Look" }).click();
  await page.getByLabel("hold against").selectOption("saved");
  await expect.poll(() => page.locator(".held-line").count(), within).toBeGreaterThan(10);
  const bottoms = await page.evaluate(() => {
    const bottom = (element: Element | null): number => element!.getBoundingClientRect().bottom;
    const now = document.querySelector('[data-piece="back"] [data-edge="center"]');
    return [bottom(now), Math.max(...[...document.querySelectorAll(".held g")].slice(0, 1).map(bottom))];
  });
  expect(bottoms[0]! - bottoms[1]!).toBeGreaterThan(5);
  await page.getByLabel("hold against").selectOption("");
  await expect.poll(() => page.locator(".held-line").count(), within).toBe(0);
});

suite("a script in a label stays text", async () => {
  await toLineEnd(page, 18);
  const label = "<img src=x onerror=alert(1)><script>alert(2)</script>";
  await page.keyboard.insertText(`\n  label "${label}"`);
  let alerted = false;
  page.on("dialog", () => {
    alerted = true;
  });
  await expect.poll(() => page.locator(".findings .error").count(), within).toBe(0);
  await page.locator("summary", { hasText: "Pieces in words" }).click();
  await expect.poll(() => page.locator(".facts").first().textContent(), within).toContain("back");
  expect(await page.locator("img, main script").count()).toBe(0);
  expect(alerted).toBe(false);
});

suite("a link carries the recipe, and nothing of it goes to a server", async () => {
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # of the shared coat");
  await page.getByRole("button", { name: "Recipes" }).click();
  await page.getByRole("button", { name: "Make a link" }).click();
  const link = await page.getByLabel("Link to this recipe").inputValue();
  expect(link).toMatch(/#recipe=[\w-]+$/);
  const other = await (await page.context().browser()!.newContext()).newPage();
  await other.goto(link);
  await ready(other);
  expect(await lineText(other, flareLine)).toContain("# of the shared coat");
  await other.goto(`${link.slice(0, -20)}`);
  await other.reload();
  await expect.poll(() => other.locator(".failure").textContent(), within).toContain("cut off");
  await other.context().close();
});

suite("what was handed over as a file is still there when its recipe is opened again", async () => {
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # handed over");
  const handed = page.waitForEvent("download");
  await page.keyboard.press("Control+s");
  expect((await handed).suggestedFilename()).toBe("lobby-coat-swing.chalk");
  const openRecipe = async (name: string): Promise<void> => {
    await page.getByRole("button", { name: "Recipes" }).click();
    await page.getByLabel("Open", { exact: true }).selectOption(name);
    await page.keyboard.press("Escape");
  };
  await openRecipe("stage-cape.chalk");
  await expect.poll(() => page.locator(".file-name").textContent(), within).toContain("stage-cape");
  await openRecipe("lobby-coat-swing.chalk");
  await expect.poll(() => lineText(page, flareLine), within).toContain("# handed over");
});

suite("a tab that dies loses at most a second: the draft is offered, and brought back", async () => {
  await toLineEnd(page, flareLine);
  await page.keyboard.type(" # typed before the crash");
  await page.waitForTimeout(1500);
  const context = page.context();
  const next = await context.newPage();
  // The tab is gone without a word to the page.
  await page.goto("chrome://crash").catch(() => undefined);
  await next.goto(loneAddress);
  await ready(next);
  await next.getByRole("button", { name: "Bring the draft back" }).click();
  await expect.poll(() => lineText(next, flareLine), within).toContain("# typed before the crash");
});

suite("no serious fault of access, light or dark, with everything opened", async () => {
  const violations = async (): Promise<string[]> => {
    await page.evaluate(AxeBuilder.source);
    return page.evaluate(async () => {
      const axe = (
        window as unknown as {
          axe: {
            run(
              what: unknown,
              how: unknown,
            ): Promise<{ violations: { id: string; impact: string; nodes: { target: unknown }[] }[] }>;
          };
        }
      ).axe;
      // The full editor's own insides are its makers' concern.
      const { violations: found } = await axe.run({ exclude: [[".monaco-editor"]] }, { preload: false });
      return found
        .filter(({ impact }) => impact === "serious" || impact === "critical")
        .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => String(target)).join(", ")}`);
    });
  };
  await page.locator("summary", { hasText: "Pieces in words" }).click();
  await page.locator("summary", { hasText: "All numbers" }).click();
  await page.locator("summary", { hasText: "Body" }).click();
  expect(await violations()).toEqual([]);
  await page.getByRole("button", { name: "Look" }).click();
  await page.getByLabel("dark").check();
  expect(await violations()).toEqual([]);
});

suite("everything is reached by the keyboard, and it shows where one is", async () => {
  const reached = new Set<string>();
  await page.locator(".table").focus();
  for (let press = 0; press < 60; press += 1) {
    await page.keyboard.press("Tab");
    const at = await page.evaluate(() => {
      const element = document.activeElement as HTMLElement | null;
      if (!element || element === document.body) return undefined;
      const { outlineStyle, outlineWidth } = getComputedStyle(element);
      const name = element.getAttribute("aria-label") ?? element.textContent?.trim() ?? element.tagName;
      const isEditor = element.closest(".monaco-editor") !== null;
      return {
        name: isEditor ? "the text" : name.slice(0, 40),
        shows: isEditor || (outlineStyle !== "none" && outlineWidth !== "0px"),
      };
    });
    if (!at) continue;
    expect(at.shows, `${at.name} shows that it is reached`).toBe(true);
    reached.add(at.name);
    // In the text Tab writes; Ctrl+M makes it go on.
    if (at.name === "the text") await page.keyboard.press("Control+m");
  }
  for (const name of [
    "Show all",
    "Look",
    "Recipes",
    "the text",
    "Width of the recipe card",
    "Steps of the working shown",
  ])
    expect(
      [...reached].some((each) => each.includes(name)),
      `${name} is reached: ${[...reached].join(" | ")}`,
    ).toBe(true);
});
