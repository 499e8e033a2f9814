// Drawings that are dropped on the table or chosen from the menu, in a real browser: the recipe that chalkline trace writes, as a new
// file, and nothing lost of what lay there.
import AxeBuilder from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { broughtIn } from "../../../editor/bring-in/brought-in.ts";
import { chalkline } from "../../worked-recipe.ts";
import { edgeLength, lineText, toLineEnd } from "./browser.ts";
import { loneWindow, inBrowser as suite } from "./lone-window.ts";

const within = { timeout: 20_000, interval: 50 };

let page: Page;
let asked: string[];

loneWindow((window) => {
  ({ page, asked } = window);
});

const slip = () => page.getByRole("region", { name: "A drawing to bring in" });
const words = () => slip().getByRole("status").textContent();
const lay = () => slip().getByRole("button", { name: "Lay it on the table as a new recipe" });

/** A pocket of 120 by 160 mm; width and height are what an SVG is measured by (SVG 2, 8.2). */
const pocket =
  '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200"><path id="pocket" d="M10 10 H130 V170 H10 Z"/></svg>';

const dropped = async (name: string, content: string): Promise<void> => {
  const files = await page.evaluateHandle(
    ([called, text]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], called));
      return transfer;
    },
    [name, content] as const,
  );
  await page.locator(".table").dispatchEvent("dragover", { dataTransfer: files });
  await page.locator(".table").dispatchEvent("drop", { dataTransfer: files });
};

/** The names in the menu's list of recipes. */
const names = async (): Promise<string[]> => {
  await page.getByRole("button", { name: "Recipes", exact: true }).click();
  const all = await page.getByLabel("Open", { exact: true }).locator("option").allTextContents();
  await page.keyboard.press("Escape");
  return all;
};

const open = async (name: string): Promise<void> => {
  await page.getByRole("button", { name: "Recipes", exact: true }).click();
  await page.getByLabel("Open", { exact: true }).selectOption(name);
};

suite("a dropped drawing becomes the recipe that chalkline trace writes, and what lay there is not lost", async () => {
  await toLineEnd(page, 11);
  await page.keyboard.type(" # mine");
  expect(asked.filter((address) => address.endsWith("tracer.js"))).toEqual([]);
  await dropped("patch pocket.svg", pocket);
  await expect.poll(words, within).toBe("1 piece, within 0.00 mm of what is drawn.");
  // Nothing lies on the table yet without the user's word.
  expect(await page.locator(".file-name").textContent()).toContain("lobby-coat-swing.chalk");
  await lay().press("Enter");
  await expect.poll(() => page.locator(".file-name").textContent(), within).toContain("patch-pocket.chalk (changed)");
  const traced = broughtIn(pocket, "svg", "patch pocket.svg", { scale: 1, line: "sewing" }, chalkline);
  if ("problem" in traced) throw new Error(traced.problem.message);
  for (const [index, line] of traced.recipe.trimEnd().split("\n").entries())
    expect(await lineText(page, index + 1)).toBe(line);
  // 120 mm and 160 mm, as drawn.
  const { name, edges } = traced.pieces[0]!;
  const lengths: string[] = [];
  for (const edge of edges) lengths.push(await edgeLength(page, name, edge));
  expect(lengths.sort()).toEqual(["12 cm", "12 cm", "16 cm", "16 cm"]);
  // It can be saved, and it stays within reach when another recipe is opened, with what is typed in it.
  expect(await page.getByRole("button", { name: "Save" }).isEnabled()).toBe(true);
  await toLineEnd(page, 1);
  await page.keyboard.type(" # kept");
  await open("lobby-coat-swing.chalk");
  await page.getByRole("button", { name: "Bring the draft back" }).click();
  await expect.poll(() => lineText(page, 11), within).toContain("# mine");
  await open("patch-pocket.chalk");
  await expect.poll(() => lineText(page, 1), within).toBe("chalkline 1 # kept");
}, 60_000);

suite("the second drawing of a name gets a name of its own", async () => {
  for (const name of ["patch-pocket.chalk", "patch-pocket-2.chalk"]) {
    await dropped("patch pocket.svg", pocket);
    await lay().click();
    await expect.poll(() => page.locator(".file-name").textContent(), within).toContain(name);
  }
  expect(await names()).toEqual(expect.arrayContaining(["patch-pocket.chalk", "patch-pocket-2.chalk"]));
});

suite("how it is read can be chosen, and the slip is left without a trace", async () => {
  const before = await lineText(page, 1);
  await page.getByRole("button", { name: "Recipes", exact: true }).click();
  await page.getByLabel(/Bring in a drawing/).setInputFiles({
    name: "yoke.csv",
    mimeType: "text/csv",
    // A table that does not say its units: the corners of a rectangle of 30 by 8.
    buffer: Buffer.from("x,y\n0,0\n30,0\n30,8\n0,8\n"),
  });
  await expect.poll(words, within).toBe("1 piece, within 0.00 mm of what is drawn.");
  expect(await slip().getByRole("listitem").allTextContents()).toEqual([
    "The table does not say its units: 1 is taken as 1 cm. Write x (mm) as a heading, or Units mm, where that is wrong.",
  ]);
  await slip().getByLabel("Units").selectOption("mm");
  await expect.poll(() => slip().getByRole("listitem").count(), within).toBe(0);
  await slip().getByLabel("Scale").fill("none");
  await slip().getByLabel("Scale").press("Tab");
  await expect.poll(words, within).toBe("The scale is a number above 0, such as 2, 1/4 or 50%.");
  expect(await lay().isDisabled()).toBe(true);
  await page.evaluate(AxeBuilder.source);
  const serious = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof AxeBuilder };
    const { violations } = await axe.run(document.querySelector(".drawing-slip")!, { preload: false });
    return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
  });
  expect(serious).toEqual([]);
  await slip().getByLabel("Scale").press("Escape");
  await expect.poll(() => slip().count(), within).toBe(0);
  expect(await lineText(page, 1)).toBe(before);
});

suite("what cannot be brought in is refused in sentences", async () => {
  await dropped("vest.dxf", "0\nSECTION\nhello\n");
  await expect
    .poll(words, within)
    .toBe("Line 3: A group code, a whole number, has to stand here, and it says “hello”.");
  expect(await lay().isDisabled()).toBe(true);
  await slip().getByRole("button", { name: "Leave it" }).click();
  await dropped("song.mp3", "la");
  await expect.poll(() => page.locator(".failure").textContent(), within).toContain("song.mp3 is neither a drawing");
  await page.evaluate(() => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([new Uint8Array(64 * 1024 * 1024 + 1)], "huge.svg"));
    document
      .querySelector(".table")!
      .dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });
  await expect
    .poll(() => page.locator(".failure").textContent(), within)
    .toBe("huge.svg is larger than 64 MiB, and no pattern is.");
  expect(await page.locator(".file-name").textContent()).toBe("lobby-coat-swing.chalk");
});
