// Starting from paper, in a real browser: a picture of a piece of ours is taken by a camera reckoned here, dropped on the table,
// clicked round, and the recipe that appears is held against the piece.
import AxeBuilder from "axe-core";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { pathLength, pointAt } from "../../../kernel/geometry/arc-length.ts";
import { flattened } from "../../../kernel/geometry/area.ts";
import { bounds } from "../../../kernel/geometry/bounds.ts";
import { nearest } from "../../../kernel/geometry/nearest.ts";
import { isStraight, mapped, type Path, startOf } from "../../../kernel/geometry/path.ts";
import type { Point } from "../../../kernel/geometry/point.ts";
import { boundary, walked } from "../../../kernel/outline.ts";
import type { Piece } from "../../../kernel/working.ts";
import { workedRecipe, workedText } from "../../worked-recipe.ts";
import { loneWindow, inBrowser as suite } from "./lone-window.ts";

const within = { timeout: 10_000, interval: 50 };

let page: Page;

loneWindow((window) => {
  ({ page } = window);
});

type Vector = readonly [number, number, number];
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dotted = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const crossed = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const ofLengthOne = (v: Vector): Vector => {
  const length = Math.sqrt(dotted(v, v));
  return [v[0] / length, v[1] / length, v[2] / length];
};

/**
 * What a pinhole camera sees of the table (z = 0, x right, y down, z away from the eye): the spot's place along the camera's own
 * axes, divided by its depth. The textbook camera, with none of the formulas of editor/paper in it.
 */
const camera = (eye: Vector, target: Vector, focal: number, middle: Point): ((p: Point) => Point) => {
  const forward = ofLengthOne(less(target, eye));
  // Held a little askew, as by hand.
  const right = ofLengthOne(crossed([0.06, 1, 0], forward));
  const down = crossed(forward, right);
  return ({ x, y }) => {
    const ray = less([x, y, 0], eye);
    const depth = dotted(ray, forward);
    return { x: middle.x + (focal * dotted(ray, right)) / depth, y: middle.y + (focal * dotted(ray, down)) / depth };
  };
};

interface Sheet {
  readonly points: readonly Point[];
  readonly fill: string;
}

/** A picture of flat sheets, drawn by the browser, as the text of a PNG file in base 64. */
const pictureOf = (sheets: readonly Sheet[], width: number, height: number): Promise<string> =>
  page.evaluate(
    ([drawn, across, down]) => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [across, down];
      const brush = canvas.getContext("2d")!;
      brush.fillStyle = "#6b5a48";
      brush.fillRect(0, 0, across, down);
      for (const { points, fill } of drawn) {
        brush.beginPath();
        for (const { x, y } of points) brush.lineTo(x, y);
        brush.closePath();
        brush.fillStyle = fill;
        brush.fill();
        brush.strokeStyle = "#222";
        brush.lineWidth = 2;
        brush.stroke();
      }
      return canvas.toDataURL("image/png").replace(/^.*,/, "");
    },
    [sheets, width, height] as const,
  );

const drop = (name: string, type: string, base64: string): Promise<void> =>
  page.evaluate(
    ([called, kind, content]) => {
      const bytes = Uint8Array.from(atob(content), (letter) => letter.charCodeAt(0));
      const carried = new DataTransfer();
      carried.items.add(new File([bytes], called, { type: kind }));
      const table = document.querySelector(".paper-card") ?? document.querySelector(".table")!;
      for (const what of ["dragover", "drop"])
        table.dispatchEvent(new DragEvent(what, { bubbles: true, cancelable: true, dataTransfer: carried }));
    },
    [name, type, base64] as const,
  );

const card = () => page.getByRole("region", { name: "From paper" });
const over = () => page.getByRole("application", { name: /^Points on the picture/ });
const takeUp = (part: string): Promise<void> =>
  card()
    .getByRole("button", { name: new RegExp(`^\\d ${part}`) })
    .click();

/** Where a pixel of the picture is seen. */
const seenAt = (spot: Point): Promise<Point> =>
  page.evaluate(({ x, y }) => {
    const image = document.querySelector<HTMLImageElement>(".paper-picture img")!;
    const { left, top, width } = image.getBoundingClientRect();
    const scale = width / image.naturalWidth;
    return { x: left + x * scale, y: top + y * scale };
  }, spot);

/** Goes near a spot of the picture, clicks it, and shows the whole picture again. */
const clickNear = async (spot: Point, isCurve = false): Promise<void> => {
  const far = await seenAt(spot);
  await page.mouse.move(far.x, far.y);
  for (let turn = 0; turn < 4; turn += 1) await page.mouse.wheel(0, -500);
  await expect
    .poll(async () => (await seenAt({ x: 1, y: 0 })).x - (await seenAt({ x: 0, y: 0 })).x, within)
    .toBeGreaterThan(2);
  const near = await seenAt(spot);
  if (isCurve) await page.keyboard.down("Shift");
  await page.mouse.click(near.x, near.y);
  if (isCurve) await page.keyboard.up("Shift");
  await card().getByRole("button", { name: "Whole picture" }).click();
};

/** The greatest distance from a line to another, looked at every millimetre. */
const farthest = (from: Path, to: Path): number => {
  const length = pathLength(from);
  let most = 0;
  for (let at = 0; at < length; at += 1) most = Math.max(most, nearest(to, pointAt(from, at)).distance);
  return most;
};

const atTopLeft = (loop: Path): Path => {
  const { left, top } = bounds([loop]);
  return mapped(loop, ({ x, y }) => ({ x: x - left, y: y - top }));
};

/** Round a piece: its corners, and on curves some points between. */
const clicksRound = (piece: Piece): { at: Point; isCurve: boolean; edge: string }[] =>
  walked(piece).flatMap(({ edge: { name }, path }) => {
    const corner = (at: Point) => ({ at, isCurve: false, edge: name });
    if (isStraight(path, 0.01)) return [corner(startOf(path))];
    // The neck begins with a straight stretch through the allowance of the center.
    const before = path.filter(({ kind }) => kind === "line");
    const curve = path.filter(({ kind }) => kind === "cubic");
    const length = pathLength(curve);
    return [
      ...before.map(({ start }) => corner(start)),
      corner(startOf(curve)),
      ...[0.06, 0.16, 0.3, 0.44, 0.58, 0.72, 0.85, 0.95].map((share) => ({
        at: pointAt(curve, share * length),
        isCurve: true,
        edge: name,
      })),
    ];
  });

const coatBack = (): Piece => workedRecipe("blocks/straight-coat.chalk").garment.pieces.get("back")!;

/** A cutting mat's rectangle of 50 by 80 cm under the coat's back, seen from about a metre and a half aslant. */
const coatPicture = async (): Promise<{ see: (p: Point) => Point; mat: Point[]; png: string }> => {
  const see = camera([260, 1150, -1500], [120, 520, 0], 2700, { x: 1000, y: 1300 });
  const mat = [
    { x: -100, y: 60 },
    { x: 400, y: 60 },
    { x: 400, y: 860 },
    { x: -100, y: 860 },
  ].map(see);
  const outline = flattened(boundary(coatBack())!, 0.02).map(see);
  const png = await pictureOf(
    [
      { points: mat, fill: "#2d5a46" },
      { points: outline, fill: "#f4ecd8" },
    ],
    2000,
    2600,
  );
  return { see, mat, png };
};

suite("a coat back photographed aslant and clicked round lies within a millimetre of the true one", async () => {
  const { see, mat, png } = await coatPicture();
  const truth = coatBack();
  await drop("coat back.png", "image/png", png);
  await over().waitFor();
  for (const corner of mat) await clickNear(corner);
  await card().getByLabel("Rectangle across").fill("50");
  await card().getByLabel("Rectangle down").fill("80");
  await takeUp("Outline");
  const clicks = clicksRound(truth);
  for (const { at, isCurve } of clicks) await clickNear(see(at), isCurve);
  await takeUp("Edges");
  const corners = clicks.filter(({ isCurve }) => !isCurve);
  const rows = page.locator(".edge-name");
  expect(await rows.count()).toBe(corners.length);
  for (const [i, { edge }] of corners.entries()) {
    await rows.nth(i).fill(edge);
    await rows.nth(i).press("Tab");
  }
  await card().getByLabel("the sewing line").check();
  await card().getByLabel("Allowance to add").fill("1.5");
  await card().getByLabel("The grain runs").selectOption("center");
  await takeUp("Recipe");
  await card().getByLabel("Name of the piece").fill("back");
  const written = (await card().getByRole("region", { name: "Text of the piece" }).textContent())!;

  const outcome = workedText(`chalkline 1\nunits cm\n${written}\n`);
  expect(outcome.findings).toEqual([]);
  const made = outcome.garment.pieces.get("back")!;
  const [traced, paper] = [boundary(made)!, atTopLeft(boundary(truth)!)];
  expect(farthest(paper, traced)).toBeLessThan(1);
  expect(farthest(traced, paper)).toBeLessThan(1);
  expect([...made.edges.keys()].sort()).toEqual([...new Set(clicks.map(({ edge }) => edge))].sort());

  await card().getByRole("button", { name: "as a new recipe" }).click();
  await expect.poll(() => page.locator('[data-piece="back"]').count(), within).toBe(1);
  await expect.poll(() => page.locator("[data-piece]").count(), within).toBe(1);
  await expect.poll(() => page.locator(".findings h3").textContent(), within).toBe("No findings");
  await expect.poll(() => page.locator(".file-name").textContent(), within).toContain("back-from-paper.chalk");
  expect(await card().count()).toBe(0);
}, 120_000);

/** A plain picture of 800 by 600 pixels. */
const scan = (): Promise<string> =>
  pictureOf([{ points: [at(100, 100), at(500, 100), at(500, 400), at(100, 400)], fill: "#fff" }], 800, 600);
const at = (x: number, y: number): Point => ({ x, y });

const dropScan = async (name = "scan.png"): Promise<void> => {
  await drop(name, "image/png", await scan());
  await over().waitFor();
};

const click = async (...spots: Point[]): Promise<void> => {
  for (const spot of spots) {
    const { x, y } = await seenAt(spot);
    await page.mouse.click(x, y);
  }
};

const press = async (key: string, times = 1): Promise<void> => {
  for (let turn = 0; turn < times; turn += 1) await page.keyboard.press(key);
};

const said = (): Promise<string[]> => card().locator(".paper-fault").allTextContents();
const points = (): Promise<number> => card().locator("[data-point]").count();

suite("all of it goes by keyboard, and the piece is written below the open recipe by one edit", async () => {
  await dropScan();
  // The card has taken the keyboard; the parts of the work lie behind the picture.
  await takeUp("Size");
  await over().focus();
  await press("ArrowLeft", 25);
  await press("Enter");
  await press("ArrowRight", 50);
  await press("Enter");
  // 50 presses of 10 pixels of the screen are 25 cm, so one is half a centimetre.
  await card().getByLabel("Distance of the two points").fill("25");
  await takeUp("Outline");
  await over().focus();
  await press("Enter");
  await press("ArrowLeft", 40);
  await press("Enter");
  await press("ArrowDown", 10);
  await press("Enter");
  await press("ArrowDown", 2);
  await press("Enter");
  expect(await points()).toBe(4);
  await press("Backspace");
  expect(await points()).toBe(3);
  await press("ArrowUp", 2);
  await press("ArrowRight", 20);
  await press("ArrowDown", 1);
  await press("Shift+Enter");
  await press("ArrowUp", 1);
  await press("ArrowRight", 20);
  await press("Enter");
  // Back to the point before, and it becomes a curve point and a corner again.
  await press("Tab");
  expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toMatch(/^Point 5, a corner/);
  await press("PageUp");
  expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toMatch(/^Point 4, on a curve/);
  await press("c");
  await press("c");
  // A stride of ten pixels is half a centimetre here too; up and down again.
  await press("ArrowDown");
  await press("Control+z");
  await takeUp("Recipe");
  const written = await card().getByRole("region", { name: "Text of the piece" }).textContent();
  expect(written).toContain("point corner-3 = (0, 5 cm)");
  expect(written).toContain("point corner-4 = (20 cm, 5 cm)");
  expect(written).toContain("curve edge-3 = corner-3 to corner-4 through (10 cm, 5.5 cm)");
  await card().getByRole("button", { name: "below the open recipe" }).press("Enter");
  await expect.poll(() => page.locator('[data-piece="piece-1"]').count(), within).toBe(1);
  expect(await page.locator("[data-piece]").count()).toBe(4);
  // The text shows the new piece, and the keyboard is in it.
  await page.locator(".view-line", { hasText: "piece piece-1 {" }).click();
  await press("Control+z");
  await expect.poll(() => page.locator("[data-piece]").count(), within).toBe(3);
  expect(await page.locator(".changed").count()).toBe(0);
}, 60_000);

suite("points are dragged, picked, changed and taken away, and each of it is taken back", async () => {
  await dropScan();
  await takeUp("Outline");
  await click(at(100, 100), at(500, 100), at(500, 400), at(100, 400));
  expect(await points()).toBe(4);
  const [from, to] = [await seenAt(at(500, 100)), await seenAt(at(600, 50))];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 5 });
  await page.mouse.up();
  const where = async (index: number): Promise<Point> => {
    const box = (await card().locator(`[data-point="${index}"] .point`).boundingBox())!;
    return at(Math.round(box.x + box.width / 2), Math.round(box.y + box.height / 2));
  };
  const near = async (index: number, spot: Point): Promise<void> => {
    const [found, wanted] = [await where(index), await seenAt(spot)];
    expect(Math.hypot(found.x - wanted.x, found.y - wanted.y)).toBeLessThan(2);
  };
  await near(1, at(600, 50));
  await card().getByRole("button", { name: "Take back" }).click();
  await near(1, at(500, 100));
  // A point goes in behind the one that is picked.
  await click(at(100, 100), at(300, 60));
  expect(await points()).toBe(5);
  await near(1, at(300, 60));
  await card().getByRole("group", { name: "Point 2 of 5 is" }).getByLabel("a point on a curve").check();
  expect(await card().locator('[data-point="1"] circle.point').count()).toBe(1);
  await card().getByRole("button", { name: "Take point 2 away" }).click();
  expect(await points()).toBe(4);
  await card().getByRole("button", { name: "Take back" }).click();
  await near(1, at(300, 60));
  // The table under the card has not moved, and an empty place of the picture moves the picture.
  const before = await seenAt(at(0, 0));
  const [grip, away] = [await seenAt(at(700, 500)), await seenAt(at(650, 480))];
  await page.mouse.move(grip.x, grip.y);
  await page.mouse.down();
  await page.mouse.move(away.x, away.y, { steps: 4 });
  await page.mouse.up();
  expect((await seenAt(at(0, 0))).x).toBeLessThan(before.x - 20);
  expect(await points()).toBe(5);
});

suite("what cannot be is said in words where it is put right", async () => {
  await drop("notes.jpg", "image/jpeg", btoa("no picture at all"));
  await expect.poll(said, within).toEqual([expect.stringContaining("notes.jpg cannot be read as a picture")]);
  const large = '<svg xmlns="http://www.w3.org/2000/svg" width="8000" height="6000"><rect width="9" height="9"/></svg>';
  await drop("large.svg", "image/svg+xml", btoa(large));
  await expect.poll(said, within).toEqual([expect.stringContaining("large.svg has 48 megapixels, and 40 is the most")]);
  expect(await over().count()).toBe(0);

  await dropScan();
  expect(await said()).toEqual([]);
  await click(at(100, 100), at(300, 100), at(500, 100));
  await expect.poll(said, within).toEqual(["3 of the rectangle's 4 corners are set."]);
  await click(at(100, 400));
  await expect.poll(said, within).toEqual([expect.stringContaining("lie in one line")]);
  await press("Backspace", 3);
  await click(at(500, 400), at(500, 100), at(100, 400));
  await expect.poll(said, within).toEqual([expect.stringContaining("do not go round")]);
  await over().focus();
  await press("Backspace", 4);
  await takeUp("Size");
  expect(await said()).toEqual([expect.stringContaining("Its size is not known")]);
  await click(at(100, 100), at(500, 100));
  await card().getByLabel("Distance of the two points").fill("0");
  expect(await said()).toEqual([expect.stringContaining("a length above 0")]);
  await card().getByLabel("Distance of the two points").fill("40");
  expect(await said()).toEqual([]);
  await takeUp("Outline");
  await click(at(100, 100), at(500, 400));
  expect(await said()).toEqual(["An outline needs 3 points or more, and 2 of them are set."]);
  await click(at(500, 100), at(100, 400));
  expect(await said()).toEqual([expect.stringContaining("crosses itself where the ring is")]);
  const ring = (await card().locator(".fault-ring").boundingBox())!;
  const middle = await seenAt(at(300, 250));
  expect(Math.hypot(ring.x + ring.width / 2 - middle.x, ring.y + ring.height / 2 - middle.y)).toBeLessThan(3);
  await takeUp("Recipe");
  await card().getByRole("button", { name: "Go there" }).click();
  expect(await points()).toBe(4);
  await over().focus();
  await press("Backspace", 3);
  await click(at(500, 100), at(500, 400), at(100, 400));
  await takeUp("Edges");
  await page.locator(".edge-name").first().fill("my edge");
  await page.locator(".edge-name").first().press("Tab");
  expect(await said()).toEqual([expect.stringContaining("letters and digits")]);
  await page.locator(".edge-name").first().fill("top");
  await page.locator(".edge-name").first().press("Tab");
  expect(await said()).toEqual([]);
  await takeUp("Recipe");
  await card().getByLabel("Name of the piece").fill("back");
  expect(await said()).toEqual([expect.stringContaining("has something called back already")]);
  expect(await card().getByRole("button", { name: "below the open recipe" }).isDisabled()).toBe(true);
}, 60_000);

suite("a picture is chosen in the menu too, put aside and gone on with, and another one asks first", async () => {
  await page.getByRole("button", { name: "Recipes" }).click();
  await page
    .getByLabel("Begin from a photograph")
    .setInputFiles({ name: "front.png", mimeType: "image/png", buffer: Buffer.from(await scan(), "base64") });
  await over().waitFor();
  await takeUp("Outline");
  await click(at(100, 100), at(500, 100));
  await card().getByRole("button", { name: "Put aside" }).click();
  expect(await card().count()).toBe(0);
  if (!(await page.getByRole("button", { name: "Go on with front.png" }).isVisible()))
    await page.getByRole("button", { name: "Recipes" }).click();
  await page.getByRole("button", { name: "Go on with front.png" }).click();
  expect(await points()).toBe(2);
  await drop("sleeve.png", "image/png", await scan());
  await card().getByRole("button", { name: "Stay with this picture" }).click();
  expect(await points()).toBe(2);
  await drop("sleeve.png", "image/png", await scan());
  await card().getByRole("button", { name: "Begin anew" }).click();
  await expect.poll(() => card().locator("h2").textContent(), within).toContain("sleeve.png");
  await takeUp("Outline");
  expect(await points()).toBe(0);
});

suite("no serious fault of access in any part of the work, light or dark, wide or narrow", async () => {
  const violations = async (): Promise<string[]> => {
    await page.evaluate(AxeBuilder.source);
    return page.evaluate(async () => {
      interface Found {
        readonly violations: { id: string; impact: string; nodes: { target: unknown }[] }[];
      }
      const { axe } = window as unknown as { axe: { run(what: unknown, how: unknown): Promise<Found> } };
      const { violations: found } = await axe.run({ include: [[".paper-card"]] }, { preload: false });
      return found
        .filter(({ impact }) => impact === "serious" || impact === "critical")
        .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => String(target)).join(", ")}`);
    });
  };
  await dropScan();
  await takeUp("Size");
  await click(at(100, 100), at(500, 100));
  await card().getByLabel("Distance of the two points").fill("40");
  await takeUp("Outline");
  await click(at(100, 100), at(500, 100), at(500, 400), at(100, 400));
  for (const theme of ["light", "dark"]) {
    await page.evaluate((wanted) => {
      document.documentElement.dataset.theme = wanted;
    }, theme);
    for (const size of [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
    ]) {
      await page.setViewportSize(size);
      for (const part of ["Straighten", "Size", "Outline", "Edges", "Recipe"]) {
        await takeUp(part);
        expect(await violations(), `${part}, ${theme}, ${size.width}`).toEqual([]);
        const isCut = await card().evaluate((element) => {
          const parts = element.querySelector(".paper-parts")!;
          return parts.scrollWidth > parts.clientWidth;
        });
        expect(isCut, `${part} at ${size.width} fits its breadth`).toBe(false);
      }
    }
  }
}, 90_000);
