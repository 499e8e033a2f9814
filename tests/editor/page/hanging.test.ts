// The garment as it hangs, in a real browser and from a folder: at once by the formula, then settling, and given up at the next key.
import AxeBuilder from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { toLineEnd } from "./browser.ts";
import { loneWindow, inBrowser as suite } from "./lone-window.ts";

let page: Page;
let asked: string[];

loneWindow((window) => {
  ({ page, asked } = window);
});

const slip = () => page.getByRole("region", { name: "As it hangs" });
const state = () => slip().getByRole("status").textContent();
const words = () => slip().locator(".hung-words").first().textContent();

/** How wide the hem stands, cm. */
const hemWidth = async (): Promise<number> => Number(/stands ([\d.]+) cm wide/.exec((await words()) ?? "")?.[1]);

suite("a garment hangs by the formula at once, and its cloth comes to rest much like it", async () => {
  // What settles cloth is as large as the page: nobody loads it who does not want to see it.
  expect(asked.filter((address) => address.endsWith("settler.js"))).toEqual([]);
  await page.getByRole("button", { name: "Hang it" }).click();
  await slip().waitFor();
  expect(await state()).toBe("by the formula");
  const [width, pictures] = [await hemWidth(), await slip().getByRole("img").count()];
  // The swing coat from behind, from the front and from below; its straight sleeve is not shown.
  expect(pictures).toBe(3);
  await expect.poll(state, { timeout: 20_000 }).toBe("at rest");
  // Slack and where it hangs agree to millimeters (tests/hang/world.test.ts); just how a fold stands beside the side seam does not,
  // and its depth counts on both sides of the width.
  expect(Math.abs((await hemWidth()) / width - 1)).toBeLessThan(0.2);
  expect(asked.filter((address) => address.endsWith("settler.js"))).toHaveLength(1);
});

suite("the next key ends the settling and hangs the new coat", async () => {
  await page.getByRole("button", { name: "Hang it" }).click();
  await expect.poll(state, { timeout: 20_000 }).toBe("settling …");
  const before = await words();
  await toLineEnd(page, 20);
  await page.keyboard.type(" * 2");
  await expect.poll(words, { timeout: 10_000 }).not.toBe(before);
  await expect.poll(state, { timeout: 20_000 }).toBe("at rest");
});

suite("put aside, it is gone; and nothing on it is out of reach of those who do not see it", async () => {
  await page.getByRole("button", { name: "Hang it" }).click();
  await slip().waitFor();
  for (const image of await slip().getByRole("img").all()) {
    expect(await image.getAttribute("aria-label")).toMatch(/folds? all round, about .* deep; the hem stands .* wide\./);
  }
  await page.evaluate(AxeBuilder.source);
  const serious = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof AxeBuilder };
    // The rest of the page has a test of its own.
    const { violations } = await axe.run(document.querySelector(".hanging-slip")!, { preload: false });
    return violations.filter(({ impact }) => impact === "serious" || impact === "critical").map(({ id }) => id);
  });
  expect(serious).toEqual([]);
  await slip().getByRole("button", { name: "Put aside" }).click();
  await expect.poll(() => slip().count()).toBe(0);
});
