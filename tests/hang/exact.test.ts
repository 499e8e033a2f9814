// The formula of the hanging sheet against closed forms, and against the trade's rule of where fullness falls.
import { expect, test } from "vitest";
import { type Held, hangingOn } from "../../kernel/cloth/hang/exact.ts";
import { hungExactly } from "../../kernel/cloth/hang/hung.ts";
import { slackAlong, withoutGaps } from "../../kernel/cloth/hang/slack.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { armholeCoat, centerCoat, middleCoat, sideCoat, straightCoat } from "./coats.ts";

const at = (x: number, y: number): Point => ({ x, y });
const still = (x: number, y: number): Held => ({ flat: at(x, y), body: at(x, y) });

test("a sheet held along its upper edge hangs as it lies", () => {
  const outline = [at(0, 0), at(300, 0), at(300, 1000), at(0, 1000)];
  const hang = hangingOn({ outline, supports: [{ from: still(0, 0), to: still(300, 0) }] });
  for (const [x, y] of [
    [0, 1000],
    [70, 400],
    [300, 1000],
  ] as const) {
    const { hung } = hang(at(x, y))!;
    expect(hung.x).toBeCloseTo(x, 9);
    expect(hung.y).toBeCloseTo(y, 9);
  }
});

test("a sheet held along a sloping edge hangs as it lies, too", () => {
  const outline = [at(0, 0), at(300, 100), at(300, 1000), at(0, 1000)];
  const hang = hangingOn({ outline, supports: [{ from: still(0, 0), to: still(300, 100) }] });
  const { hung } = hang(at(150, 800))!;
  expect(hung.x).toBeCloseTo(150, 9);
  expect(hung.y).toBeCloseTo(800, 9);
});

test("a sector of a disc held at its middle hangs in one line, its hem level", () => {
  const rim = Array.from({ length: 31 }, (_, index) => {
    const angle = (index / 30) * 1.5;
    return at(800 * Math.cos(angle), 800 * Math.sin(angle));
  });
  const middle: Held = { flat: at(0, 0), body: at(40, 10) };
  const hang = hangingOn({ outline: [at(0, 0), ...rim], supports: [{ from: middle, to: middle }] });
  for (const point of rim) {
    const { hung } = hang(point)!;
    expect(hung.x).toBeCloseTo(40, 9);
    expect(hung.y).toBeCloseTo(810, 9);
  }
});

test("the way goes round what is cut out", () => {
  // A hook-shaped sheet: from the support at (0, 0) to (400, 0) round the inner corners (100, 300) and (300, 300).
  const outline = [at(0, 0), at(100, 0), at(100, 300), at(300, 300), at(300, 0), at(400, 0), at(400, 400), at(0, 400)];
  const hang = hangingOn({ outline, supports: [{ from: still(0, 0), to: still(0, 0) }] });
  const expected = 2 * Math.sqrt(100 * 100 + 300 * 300) + 200;
  expect(hang(at(400, 0))!.hung.y).toBeCloseTo(expected, 6);
});

test("between two supports the cloth is taut, and hangs from both", () => {
  const places = [0, 20, 40, 60, 80, 100].map((x) => ({ flat: at(x, 500), hung: at(x < 50 ? 0 : 100, 500) }));
  expect(slackAlong(withoutGaps(places)).slack).toBeCloseTo(0, 9);
});

// Common practice, no source: fullness hangs below the place it was opened from, and nowhere else.
test.each([
  ["the center", centerCoat, 0],
  ["mid-shoulder", middleCoat, 190],
  ["the side", sideCoat, 300],
])("fullness added at %s hangs there", (_, garment, x) => {
  const { hem } = hungExactly(garment).pieces.find(({ name }) => name === "coat")!;
  // 300 mm straight across at the hem, 1000 mm down: an arc of 2000 asin(0.15) mm, which truing may miss by a few.
  expect(Math.abs(hem.slack - 2000 * Math.asin(0.15))).toBeLessThan(5);
  expect(Math.abs(hem.center.x - x)).toBeLessThan(4);
});

test("a straight coat has no slack, with an armhole or without", () => {
  for (const garment of [straightCoat, armholeCoat]) {
    const [piece] = hungExactly(garment).pieces;
    expect(piece!.hem.slack).toBeLessThan(0.5);
    expect(piece!.warnings).toEqual([]);
  }
});

test("a bodice is held at neck, shoulder and underarm", () => {
  const [piece] = hungExactly(armholeCoat).pieces;
  expect(piece!.holding.kind).toBe("bodice");
  expect([...piece!.holding.edges].sort()).toEqual(["neck", "shoulder"]);
  expect(piece!.holding.spots).toEqual([at(280, 240)]);
});

test("without its underarm held, a bodice shows slack that is not there", () => {
  // Trade handbook, the hang preview: 1 against 81 mm; here the underarm lies 80 mm beyond the shoulder tip.
  const [piece] = hungExactly(armholeCoat).pieces;
  const outline = [at(0, 0), at(70, -20), at(200, 20), at(190, 150), at(280, 240), at(280, 1000), at(0, 1000)];
  const supports = piece!.holding.supports.filter(({ from, to }) => from !== to);
  const hang = hangingOn({ outline, supports });
  const hem = Array.from({ length: 29 }, (_, index) => hang(at(index * 10, 1000))!);
  expect(slackAlong(withoutGaps(hem)).slack).toBeGreaterThan(76);
});
