// A window on the page as it works from a folder, without any server: a new one for every test, which has to end without a fault
// and without having asked a network for anything.
import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from "vitest";
import { browserPath, launch, loneAddress, openWindow, ready } from "./browser.ts";

/** A test that is skipped where there is no browser. */
export const inBrowser = test.skipIf(browserPath === undefined);

/** Opens the page before every test of a file and hands over its window. */
export const loneWindow = (opened: (window: Awaited<ReturnType<typeof openWindow>>) => void): void => {
  let browser: Browser;
  let window: Awaited<ReturnType<typeof openWindow>>;

  beforeAll(async () => {
    if (browserPath !== undefined) browser = await launch();
  }, 60_000);
  afterAll(() => browser?.close());

  beforeEach(async () => {
    if (browserPath === undefined) return;
    window = await openWindow(browser);
    opened(window);
    await window.page.goto(loneAddress);
    await ready(window.page);
  }, 60_000);

  afterEach(async () => {
    if (browserPath === undefined) return;
    await window.page.context().close();
    expect(window.faults).toEqual([]);
    expect(window.asked.filter((address) => !/^(?:file|data|blob):/.test(address))).toEqual([]);
  });
};
