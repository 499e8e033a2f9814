// Crossings of paths with each other, with a full line and with themselves.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import {
  crossings,
  crossingsWithRay,
  linesMeet,
  selfCrossings,
  selfCrossingsOfLoop,
} from "../../kernel/geometry/intersect.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import { cubic, line, reversed, straight, through } from "../../kernel/geometry/path.ts";
import { cross, distance, minus } from "../../kernel/geometry/point.ts";
import { part } from "../../kernel/geometry/split.ts";
import { bearing } from "../../kernel/geometry/trig.ts";
import { anyCubic, anyPoint, asBezier, largeCubic, mildCubic } from "./curves.ts";

const p = (x: number, y: number) => ({ x, y });
const places = (found: readonly { onFirst: number; onSecond: number }[]) =>
  found.map(({ onFirst, onSecond }) => [onFirst, onSecond]);

describe("lines", () => {
  test("cross in one point", () => {
    const found = crossings(straight(p(0, 0), p(40, 0)), straight(p(10, -10), p(10, 30)));
    expect(found).toEqual([{ point: p(10, 0), onFirst: 10, onSecond: 10 }]);
  });

  test("touch where one ends on the other, at that very end", () => {
    const end = p(20.1, 0);
    const found = crossings(straight(p(0, 0), p(40, 0)), straight(end, p(20, 30)));
    expect(found).toHaveLength(1);
    expect(found[0]!.point).toBe(end);
    expect(found[0]!.onSecond).toBe(0);
  });

  test("that run along each other give the two ends of what they share", () => {
    const long = straight(p(0, 0), p(40, 0));
    expect(places(crossings(long, straight(p(30, 0), p(10, 0))))).toEqual([
      [10, 20],
      [30, 0],
    ]);
    expect(places(crossings(long, straight(p(30, 0), p(90, 0))))).toEqual([
      [30, 0],
      [40, 10],
    ]);
    expect(crossings(long, straight(p(41, 0), p(90, 0)))).toEqual([]);
    expect(crossings(long, straight(p(0, 0.01), p(40, 0.01)))).toEqual([]);
  });

  test("a corner that touches counts once", () => {
    const bent = through([p(0, 10), p(10, 0), p(20, 10)]);
    expect(places(crossings(bent, straight(p(0, 0), p(20, 0))))).toHaveLength(1);
  });

  test("meet as full lines, unless parallel", () => {
    const met = linesMeet(p(0, 0), p(2, 0), p(10, 5), p(0, 7));
    expect(met!.x).toBeCloseTo(10, 12);
    expect(met!.y).toBeCloseTo(0, 12);
    expect(linesMeet(p(0, 0), p(1, 0), p(0, 5), p(-3, 0))).toBeUndefined();
    expect(linesMeet(p(0, 0), p(1, 0), p(0, 5), p(1, 5e-10))).toBeUndefined();
  });
});

describe("curves", () => {
  test("two circles cross where geometry says", () => {
    // Radii 100 about (0, 0) and (120, 0): x = 60, y = +-80.
    const found = crossings(arcSpans(p(0, 0), p(-100, 0), 2 * Math.PI), arcSpans(p(120, 0), p(220, 0), 2 * Math.PI));
    expect(found).toHaveLength(2);
    for (const { point } of found) {
      expect(point.x).toBeCloseTo(60, 5);
      expect(Math.abs(point.y)).toBeCloseTo(80, 5);
    }
  });

  test("circles that touch from outside touch once", () => {
    const found = crossings(arcSpans(p(0, 0), p(0, -100), 2 * Math.PI), arcSpans(p(150, 0), p(150, 50), 2 * Math.PI));
    // A joint of both circles lies at the touching place, so their polynomial arcs touch there exactly, up to rounding.
    expect(found).toHaveLength(1);
    expect(found[0]!.point.x).toBeCloseTo(100, 6);
  });

  test("parabolas that graze in the middle of their spans touch once", () => {
    const up = cubic(p(-60, 60), p(-20, -20), p(20, -20), p(60, 60));
    const down = cubic(p(-60, -60), p(-20, 20), p(20, 20), p(60, -60));
    const found = crossings([up], [down]);
    expect(found).toHaveLength(1);
    expect(distance(found[0]!.point, p(0, 0))).toBeLessThan(1e-6);
  });

  test("every crossing is on both, and the other way about gives the same", () => {
    fc.assert(
      fc.property(anyCubic, anyCubic, (first, second) => {
        const found = crossings([first], [second]);
        for (const { point, onFirst, onSecond } of found) {
          expect(distance(pointAt([first], onFirst), point)).toBeLessThan(1e-6);
          expect(distance(pointAt([second], onSecond), point)).toBeLessThan(1e-6);
        }
        const other = crossings([second], [first]);
        expect(other).toHaveLength(found.length);
      }),
      { numRuns: 500 },
    );
  });

  test("what bezier-js finds is found", () => {
    // bezier-js 6.1.4 closes in to a given distance and reports one meeting several times, near misses among them; some
    // it overlooks. So each of its places must be near one of ours, or the curves pass each other there.
    fc.assert(
      fc.property(fc.noBias(largeCubic), fc.noBias(largeCubic), (first, second) => {
        const [a, b] = [asBezier(first), asBezier(second)];
        const theirs = (a.intersects(b, 0.01) as string[]).map((pair) => a.get(Number(pair.split("/")[0])));
        const ours = crossings([first], [second]).map(({ point }) => point);
        for (const q of theirs) {
          const isOurs = ours.some((other) => distance(other, q) < 0.5);
          // A place of theirs with none of ours near it must be a near miss: the curves come close, without crossing.
          if (!isOurs) expect(bentLinesCross(around(first, q), around(second, q))).toBe(0);
        }
      }),
      { numRuns: 200 },
    );
  });

  test("there are as many as between fine bent lines", () => {
    fc.assert(
      fc.property(fc.noBias(largeCubic), fc.noBias(largeCubic), (first, second) => {
        const [a, b] = [flattened([first], 0.02), flattened([second], 0.02)];
        expect(crossings([first], [second])).toHaveLength(bentLinesCross(a, b));
      }),
      { numRuns: 100 },
    );
  });

  test("a line and a cubic meet where bezier-js says", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, anyPoint, (span, from, to) => {
        fc.pre(distance(from, to) > 1);
        const bezier = asBezier(span);
        const theirs = (bezier.intersects({ p1: { ...from }, p2: { ...to } }) as number[]).map((t) => bezier.get(t));
        const ours = crossings([span], straight(from, to)).map(({ point }) => point);
        for (const q of theirs) expect(Math.min(...ours.map((other) => distance(other, q)))).toBeLessThan(0.01);
        expect(ours.length).toBeGreaterThanOrEqual(new Set(theirs.map((q) => `${q.x.toFixed(1)}`)).size > 0 ? 1 : 0);
      }),
      { numRuns: 500 },
    );
  });

  test("a curve and a part of it share that part's ends", () => {
    fc.assert(
      fc.property(mildCubic, (span) => {
        const length = pathLength([span]);
        const piece = part([span], length * 0.3, length * 0.8);
        for (const other of [piece, reversed(piece)]) {
          const found = crossings([span], other);
          expect(found).toHaveLength(2);
          expect(found[0]!.onFirst).toBeCloseTo(length * 0.3, 5);
          expect(found[1]!.onFirst).toBeCloseTo(length * 0.8, 5);
        }
      }),
      { numRuns: 100 },
    );
  });

  test("curves that keep a hair's breadth apart do not meet", () => {
    const outer = arcSpans(p(0, 0), p(200, 0), 1.5);
    const inner = arcSpans(p(0, 0), p(199.9999, 0), 1.5);
    expect(crossings(outer, inner)).toEqual([]);
  });
});

describe("a full line", () => {
  test("meets a circle behind and ahead", () => {
    const circle = arcSpans(p(0, 0), p(100, 0), 2 * Math.PI);
    const found = crossingsWithRay(circle, p(50, 0), bearing(Math.PI / 2));
    expect(found).toHaveLength(2);
    expect(found[0]!.ahead).toBeCloseTo(-Math.sqrt(7500), 5);
    expect(found[1]!.ahead).toBeCloseTo(Math.sqrt(7500), 5);
    expect(found[1]!.at).toBeCloseTo((100 * Math.PI) / 3, 5);
  });

  test("through a corner meets it once, along a line at both ends", () => {
    const bent = through([p(0, 10), p(10, 0), p(20, 10)]);
    expect(crossingsWithRay(bent, p(10, -5), p(0, 1))).toEqual([{ point: p(10, 0), at: Math.sqrt(200), ahead: 5 }]);
    expect(crossingsWithRay(straight(p(10, 0), p(4, 0)), p(0, 0), p(1, 0)).map(({ ahead }) => ahead)).toEqual([4, 10]);
  });

  test("meets all that a long line meets", () => {
    fc.assert(
      fc.property(anyCubic, anyPoint, fc.double({ min: 0, max: 6.3, noNaN: true }), (span, from, angle) => {
        const direction = bearing(angle);
        const [back, on] = [-3000, 3000].map((d) => p(from.x + d * direction.x, from.y + d * direction.y));
        const byLine = crossings([span], straight(back!, on!));
        const byRay = crossingsWithRay([span], from, direction);
        expect(byRay).toHaveLength(byLine.length);
        for (const { point, ahead } of byRay) {
          expect(distance(point, p(from.x + ahead * direction.x, from.y + ahead * direction.y))).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe("a path itself", () => {
  const eight = through([p(0, 0), p(40, 40), p(40, 0), p(0, 40)]);

  test("crosses where a bent line comes back over itself", () => {
    const found = selfCrossings(eight);
    expect(found).toHaveLength(1);
    expect(distance(found[0]!.point, p(20, 20))).toBeLessThan(1e-9);
    expect(found[0]!.onFirst).toBeCloseTo(Math.sqrt(800), 9);
  });

  test("crosses inside one cubic that loops", () => {
    const loop = cubic(p(0, 0), p(100, 80), p(-60, 80), p(40, 0));
    const found = selfCrossings([loop]);
    // By symmetry about x = 20.
    expect(found).toHaveLength(1);
    expect(found[0]!.point.x).toBeCloseTo(20, 8);
    expect(found[0]!.onFirst + found[0]!.onSecond).toBeCloseTo(pathLength([loop]), 7);
  });

  test("does not cross at joints, smooth or sharp", () => {
    expect(selfCrossings(arcSpans(p(0, 0), p(100, 0), 6))).toEqual([]);
    expect(selfCrossings(through([p(0, 0), p(50, 0), p(0, 1), p(50, 2)]))).toEqual([]);
  });

  test("of a closed one the joint does not count, of an open one the ends do", () => {
    const square = through([p(0, 0), p(50, 0), p(50, 50), p(0, 50), p(0, 0)]);
    expect(selfCrossingsOfLoop(square)).toEqual([]);
    expect(places(selfCrossings(square))).toEqual([[0, 200]]);
  });

  test("touches where a corner lies on another stretch", () => {
    const touching = through([p(0, 0), p(100, 0), p(100, 50), p(50, 0), p(0, 50), p(0, 0)]);
    expect(selfCrossingsOfLoop(touching).map(({ point }) => point)).toEqual([p(50, 0)]);
  });

  test("an outline of a hundred spans takes little time", () => {
    // Bumps all round a circle, which do not cross.
    const count = 100;
    const knots = Array.from({ length: count + 1 }, (_, i) => {
      const direction = bearing((2 * Math.PI * (i % count)) / count);
      return p(300 * direction.x, 300 * direction.y);
    });
    const outline: Path = knots.slice(1).map((end, i) => {
      const start = knots[i]!;
      const out = (q: { x: number; y: number }) => p(q.x * 1.05, q.y * 1.05);
      return i % 3 === 0 ? line(start, end) : cubic(start, out(start), out(end), end);
    });
    // The quickest of several runs: what else the machine does is not to count. One run takes a few milliseconds.
    let quickest = Number.POSITIVE_INFINITY;
    for (let run = 0; run < 8; run += 1) {
      const before = performance.now();
      expect(selfCrossingsOfLoop(outline)).toEqual([]);
      quickest = Math.min(quickest, performance.now() - before);
    }
    expect(quickest).toBeLessThan(50);
  });
});

describe("long paths", () => {
  test("a line back through a slanting zigzag of a thousand corners crosses every stroke of it once", () => {
    // Stroke i leads from (2i, 0) to (2i + 2 + 50, 100), or back: halfway up, at y = 50, it stands at x = 2i + 1 + 25.
    const strokes = 1000;
    const corners = Array.from({ length: strokes + 1 }, (_, i) => ({ x: 2 * i + (i % 2) * 50, y: (i % 2) * 100 }));
    const [right, left] = [2 * strokes + 100, -100];
    const back = [corners.at(-1)!, { x: right, y: 0 }, { x: right, y: 50 }, { x: left, y: 50 }];
    const found = selfCrossings([...through(corners), ...through(back)]);
    expect(found.length).toBe(strokes);
    found.forEach(({ point, onFirst, onSecond }, i) => {
      expect(point.x).toBeCloseTo(2 * i + 26, 9);
      expect(point.y).toBeCloseTo(50, 9);
      expect(onFirst).toBeLessThan(onSecond);
    });
  });

  test("a bent line crosses itself where its stretches cross one another, taken two by two", () => {
    const corner = fc.record({ x: fc.integer({ min: -40, max: 40 }), y: fc.integer({ min: -40, max: 40 }) });
    fc.assert(
      fc.property(fc.array(corner, { minLength: 4, maxLength: 14 }), (corners) => {
        const turns = corners.slice(2).map((end, i) => {
          const [start, middle] = [corners[i]!, corners[i + 1]!];
          return cross(minus(middle, start), minus(end, middle));
        });
        // Stretches that turn back on themselves share more than their joint.
        fc.pre(!turns.includes(0));
        const stretches = through(corners);
        const wanted: { x: number; y: number }[] = [];
        stretches.forEach((first, i) => {
          for (const second of stretches.slice(i + 2))
            for (const { point } of crossings([first], [second]))
              if (wanted.every((other) => distance(other, point) >= 0.001)) wanted.push(point);
        });
        const found = selfCrossings(stretches).map(({ point }) => point);
        expect(found.length).toBe(wanted.length);
        for (const point of wanted) expect(found.some((other) => distance(other, point) < 1e-6)).toBe(true);
      }),
    );
  });
});

/** The stretch of a cubic within a quarter of a millimetre of its place nearest to q, as a bent line. */
const around = (span: Parameters<typeof asBezier>[0], q: { x: number; y: number }): Corners => {
  const { at } = nearest([span], q);
  const length = pathLength([span]);
  return flattened(part([span], Math.max(0, at - 0.25), Math.min(length, at + 0.25)), 1e-5);
};

type Corners = readonly { readonly x: number; readonly y: number }[];

/** How often two bent lines cross, by the sides on which the ends of each stretch lie. */
const bentLinesCross = (a: Corners, b: Corners): number => {
  let count = 0;
  for (let i = 1; i < a.length; i += 1) {
    const [from, to] = [a[i - 1]!, a[i]!];
    for (let j = 1; j < b.length; j += 1) {
      const [start, end] = [b[j - 1]!, b[j]!];
      const side = (q: typeof from): boolean => cross(minus(to, from), minus(q, from)) > 0;
      const otherSide = (q: typeof from): boolean => cross(minus(end, start), minus(q, start)) > 0;
      if (side(start) !== side(end) && otherSide(from) !== otherSide(to)) count += 1;
    }
  }
  return count;
};
