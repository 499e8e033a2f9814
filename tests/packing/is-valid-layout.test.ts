import { describe, expect, test } from "vitest";
import { faultsOf, isValidLayout } from "../../kernel/packing/is-valid-layout.ts";
import { type Layout, placedOutline, type Strip, utilisation } from "../../kernel/packing/strip.ts";
import { problems } from "./records.ts";
import { judged } from "./second-judge.ts";

/** The layout with one placement moved. */
const nudged = (layout: Layout, at: number, dx: number, dy: number): Layout => ({
  ...layout,
  placements: layout.placements.map((each, i) =>
    i === at ? { ...each, by: { x: each.by.x + dx, y: each.by.y + dy } } : each,
  ),
});

describe.each(problems())("the record layout of $name", ({ record, bestKnown, strip }) => {
  const { width } = record.strip;

  test("is accepted, by both judges, and as good as it is known to be", () => {
    expect(faultsOf(record.strip, record.layout)).toEqual([]);
    const { overlap, outside } = judged(record.strip, record.layout);
    expect(overlap).toBeLessThan(1e-9 * width * width);
    expect(outside).toBeLessThan(1e-7 * width);
    // Utilisation as in the table of arXiv:2509.13329, recomputed from areas by the data's own makers.
    expect(100 * utilisation(strip, bestKnown.length)).toBeCloseTo(bestKnown.utilisationPercent, 3);
  });

  // A record layout is so tight that hardly a shape has room on all four sides; where the second judge sees that it still lies
  // free, the first has to see so too.
  test("is refused with one shape nudged, wherever the second judge refuses it", () => {
    const by = width / 200;
    let refused = 0;
    record.layout.placements.forEach((_, at) => {
      const ways = [
        [by, 0],
        [-by, 0],
        [0, by],
        [0, -by],
      ] as const;
      const [dx, dy] = ways[at % 4]!;
      const layout = nudged(record.layout, at, dx, dy);
      const { overlap, outside } = judged(record.strip, layout);
      const isRefused = overlap > 1e-9 * width * width || outside > 1e-7 * width;
      expect(isValidLayout(record.strip, layout)).toBe(!isRefused);
      if (isRefused) refused += 1;
    });
    expect(refused).toBeGreaterThan(record.layout.placements.length / 2);
  });

  test("is refused with any one shape pushed over its neighbour by a fiftieth of the width", () => {
    const outlines = record.layout.placements.map((each) =>
      placedOutline(record.strip.shapes[each.shape]!.outline, each),
    );
    const middles = outlines.map((outline) => ({
      x: outline.reduce((sum, { x }) => sum + x, 0) / outline.length,
      y: outline.reduce((sum, { y }) => sum + y, 0) / outline.length,
    }));
    middles.forEach((from, at) => {
      const others = middles.filter((_, i) => i !== at);
      const away = others.map(({ x, y }) => Math.hypot(x - from.x, y - from.y));
      const nearest = others[away.indexOf(Math.min(...away))]!;
      // All the way: their middles are then one spot.
      const layout = nudged(record.layout, at, nearest.x - from.x, nearest.y - from.y);
      expect(faultsOf(record.strip, layout).some(({ kind }) => kind === "overlap")).toBe(true);
    });
  });

  test("is refused in a strip that is a thousandth shorter or narrower, with a copy too few, or turned", () => {
    const { placements, length } = record.layout;
    expect(isValidLayout(record.strip, { placements, length: length * 0.999 })).toBe(false);
    expect(isValidLayout({ ...record.strip, width: width * 0.999 }, record.layout)).toBe(false);
    expect(isValidLayout(record.strip, { placements: placements.slice(1), length })).toBe(false);
    const [first, ...others] = placements;
    const turned = { placements: [{ ...first!, turn: first!.turn + 0.01 }, ...others], length };
    expect(faultsOf(record.strip, turned)).toContainEqual({ kind: "turn", placement: 0 });
  });
});

describe("small layouts worked by hand", () => {
  const square = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ];
  const strip: Strip = { width: 20, shapes: [{ outline: square, turns: [0], count: 2 }] };
  const two = (x: number, y: number, length = 20): Layout => ({
    length,
    placements: [
      { shape: 0, turn: 0, by: { x: 0, y: 0 } },
      { shape: 0, turn: 0, by: { x, y } },
    ],
  });

  test("two squares may touch", () => {
    expect(faultsOf(strip, two(10, 0))).toEqual([]);
    expect(faultsOf(strip, two(10, 10))).toEqual([]);
  });

  test("an overlap is measured: 1 by 10", () => {
    const [fault] = faultsOf(strip, two(9, 0));
    expect(fault).toMatchObject({ kind: "overlap", first: 0, second: 1 });
    expect(fault?.kind === "overlap" && fault.area).toBeCloseTo(10, 4);
  });

  test("a hair's breadth over another is an overlap, and over the border is outside", () => {
    expect(isValidLayout(strip, two(10 - 1e-5, 0))).toBe(false);
    const [fault] = faultsOf(strip, two(10 + 1e-5, 10));
    expect(fault).toMatchObject({ kind: "outside", placement: 1 });
    expect(fault?.kind === "outside" && fault.by).toBeCloseTo(1e-5, 6);
  });

  test("one inside the other is an overlap, though no sides cross", () => {
    const small = square.map(({ x, y }) => ({ x: x / 4, y: y / 4 }));
    const nested: Strip = {
      width: 20,
      shapes: [
        { ...strip.shapes[0]!, count: 1 },
        { outline: small, turns: [0], count: 1 },
      ],
    };
    const layout: Layout = {
      length: 20,
      placements: [
        { shape: 0, turn: 0, by: { x: 0, y: 0 } },
        { shape: 1, turn: 0, by: { x: 4, y: 4 } },
      ],
    };
    expect(faultsOf(nested, layout).map(({ kind }) => kind)).toEqual(["overlap"]);
  });

  test("outlines run either way round", () => {
    const backward: Strip = { width: 20, shapes: [{ outline: [...square].reverse(), turns: [0], count: 2 }] };
    expect(isValidLayout(backward, two(9, 0))).toBe(false);
    expect(isValidLayout(backward, two(10, 0))).toBe(true);
  });

  test("a strip without a length, a shape that is not there and one moved off its place across are refused", () => {
    expect(faultsOf(strip, two(10, 0, 0))).toEqual([{ kind: "not a length" }]);
    expect(faultsOf(strip, two(10, 0, Number.NaN))).toEqual([{ kind: "not a length" }]);
    const { placements } = two(10, 0);
    const strange = { length: 20, placements: [placements[0]!, { ...placements[1]!, shape: 7 }] };
    expect(faultsOf(strip, strange).map(({ kind }) => kind)).toEqual(["count", "count"]);
    const held: Strip = { width: 20, shapes: [{ ...strip.shapes[0]!, across: 0 }] };
    expect(isValidLayout(held, two(10, 0))).toBe(true);
    expect(faultsOf(held, two(10, 10))).toEqual([{ kind: "turn", placement: 1 }]);
  });
});
