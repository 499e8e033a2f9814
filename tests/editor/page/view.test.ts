// How the table is seen: zooming leaves the spot under the hand where it is, fitting shows all, and rulers count in round numbers.
import fc from "fast-check";
import { expect, test } from "vitest";
import { scaleMarks } from "../../../editor/page/table/scale-marks.ts";
import { fitted, inWindow, moved, onTable, zoomed } from "../../../editor/page/table/view.ts";

const number = (least: number, most: number) => fc.double({ min: least, max: most, noNaN: true });
const pixel = fc.record({ x: number(0, 2000), y: number(0, 1200) });
const view = fc.record({ x: number(-5000, 5000), y: number(-5000, 5000), scale: number(0.05, 20) });

test("a pixel and the spot seen at it lead to one another", () => {
  fc.assert(
    fc.property(view, pixel, (seen, at) => {
      const back = inWindow(seen, onTable(seen, at));
      expect(back.x).toBeCloseTo(at.x, 6);
      expect(back.y).toBeCloseTo(at.y, 6);
    }),
  );
});

test("zooming keeps the spot under the hand, and never goes beyond what can be used", () => {
  fc.assert(
    fc.property(view, pixel, number(0.01, 100), (seen, at, times) => {
      const nearer = zoomed(seen, times, at);
      const spot = onTable(nearer, at);
      expect(spot.x).toBeCloseTo(onTable(seen, at).x, 5);
      expect(nearer.scale).toBeGreaterThanOrEqual(0.02);
      expect(nearer.scale).toBeLessThanOrEqual(40);
    }),
  );
});

test("moving by so many pixels moves what is seen by so many", () => {
  expect(inWindow(moved({ x: 1, y: 2, scale: 3 }, { x: 10, y: -5 }), { x: 1, y: 1 })).toEqual({ x: 14, y: 0 });
});

test("fitting shows the whole of what is fitted inside the window it is given", () => {
  fc.assert(
    fc.property(number(1, 5000), number(1, 5000), (width, height) => {
      const window = { left: 300, top: 60, width: 700, height: 500 };
      const seen = fitted({ left: -20, top: 40, right: -20 + width, bottom: 40 + height }, window);
      const [first, last] = [inWindow(seen, { x: -20, y: 40 }), inWindow(seen, { x: -20 + width, y: 40 + height })];
      expect(first.x).toBeGreaterThanOrEqual(300);
      expect(first.y).toBeGreaterThanOrEqual(60);
      expect(last.x).toBeLessThanOrEqual(1000);
      expect(last.y).toBeLessThanOrEqual(560);
    }),
  );
});

test("a ruler in cm writes whole centimeters, one in inches whole inches", () => {
  const cm = scaleMarks(0, 200, 6, "cm");
  expect(cm.filter(({ words }) => words !== undefined).map(({ words }) => words)).toEqual([
    "0",
    "1",
    "2",
    "3",
    "4",
    "5",
    "6",
    "7",
    "8",
    "9",
    "10",
    "11",
    "12",
    "13",
    "14",
    "15",
    "16",
    "17",
    "18",
    "19",
    "20",
  ]);
  const inches = scaleMarks(0, 51, 6, "in").filter(({ words }) => words !== undefined);
  expect(inches).toEqual([
    { at: 0, words: "0" },
    { at: 25.4, words: "1" },
    { at: 50.8, words: "2" },
  ]);
});
