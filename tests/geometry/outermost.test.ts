// The outer rim of paths that run over themselves, with areas that a pencil gives too.
import { describe, expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { outermost } from "../../kernel/geometry/outermost.ts";
import { joined, type Path, reversed, straight, through } from "../../kernel/geometry/path.ts";
import { part } from "../../kernel/geometry/split.ts";

const round = (...pairs: readonly (readonly [number, number])[]): Path =>
  through([...pairs, pairs[0]!].map(([x, y]) => ({ x, y })));

const rimOf = (loop: Path, sense: 1 | -1 = 1): Path =>
  joined(outermost(loop, sense)!.map(({ from, to }) => part(loop, from, to)));

describe("a path that does not touch itself", () => {
  test("is its own rim", () => {
    expect(outermost(round([0, 0], [100, 0], [100, 100], [0, 100]), 1)).toBeUndefined();
  });
});

describe("what is gone round", () => {
  // A square of 100 whose lower left corner is turned over itself: a loop of 20 x 20 that runs the other way stands out.
  const turnedOver = round([0, 0], [100, 0], [100, 100], [-20, 100], [-20, 120], [0, 120]);

  test("the wrong way is dropped", () => {
    expect(signedArea(rimOf(turnedOver))).toBeCloseTo(100 * 100, 9);
  });

  test("the wrong way is what counts for one who goes round it so", () => {
    expect(signedArea(rimOf(reversed(turnedOver), -1))).toBeCloseTo(-100 * 100, 9);
    expect(signedArea(rimOf(turnedOver, -1))).toBeCloseTo(-20 * 20, 9);
  });

  // A square of 100 with a smaller one of 40 hung on it, which lies half inside.
  test("twice is inside like what is gone round once", () => {
    const overlapping = round(
      [0, 0],
      [100, 0],
      [100, 50],
      [80, 50],
      [120, 50],
      [120, 90],
      [80, 90],
      [80, 50],
      [80, 100],
      [0, 100],
    );
    expect(signedArea(rimOf(overlapping))).toBeCloseTo(80 * 100 + 20 * 50 + 40 * 40, 9);
  });

  test("with a hole left open has the outer rim alone", () => {
    // A frame of 100 with walls of 20 whose two ends lie on one another.
    const frame = round(
      [0, 0],
      [100, 0],
      [100, 100],
      [0, 100],
      [0, -10],
      [20, -10],
      [20, 80],
      [80, 80],
      [80, 20],
      [0, 20],
    );
    expect(signedArea(rimOf(frame))).toBeCloseTo(100 * 100 + 20 * 10, 9);
  });

  test("by two circles that overlap is as wide as both", () => {
    const [left, right] = [0, 100].map((x) => arcSpans({ x, y: 0 }, { x, y: -100 }, 2 * Math.PI));
    const both = joined([
      left!,
      straight({ x: 0, y: -100 }, { x: 100, y: -100 }),
      right!,
      straight({ x: 100, y: -100 }, { x: 0, y: -100 }),
    ]);
    // Half of each circle and the middle between: the lens that each has below adds to the area under the straight top.
    const lens = 100 * 100 * (2 * Math.acos(0.5) - 2 * 0.5 * Math.sqrt(0.75));
    expect(signedArea(rimOf(both)) / (2 * Math.PI * 100 * 100 - lens)).toBeCloseTo(1, 5);
  });

  test("in parts that share no more than a spot is the largest of them", () => {
    // Three triangles about (0, 0), one after the other: the first is 100 wide and 100 high.
    const leaves = round(
      [0, 0],
      [100, -50],
      [100, 50],
      [0, 0],
      [-50, 100],
      [-100, 50],
      [0, 0],
      [-100, -50],
      [-50, -100],
    );
    expect(signedArea(rimOf(leaves))).toBeCloseTo((100 * 100) / 2, 9);
  });
});
