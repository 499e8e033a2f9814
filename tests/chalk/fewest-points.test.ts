// The fewest points of a line that a ruler joins: straight lines, an arc whose chords are known, and a tape that reads in steps.
import { expect, test } from "vitest";
import { fewestPoints } from "../../kernel/chalk/fewest-points.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { cubic, straight, through } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";

const exactly = (p: Point): Point => p;
const inTwos = ({ x, y }: Point): Point => ({ x: Math.round(x / 2) * 2, y: Math.round(y / 2) * 2 });

test("a straight line is its two ends", () => {
  const { points, off } = fewestPoints(straight({ x: 0, y: 0 }, { x: 300, y: 400 }), exactly, 2);
  expect(points).toEqual([
    { x: 0, y: 0 },
    { x: 300, y: 400 },
  ]);
  expect(off).toHaveLength(1);
  expect(off[0]).toBeLessThan(0.02);
});

test("a quarter circle of 200 mm takes six rulers for 2 mm, each as far off as its chord is", () => {
  const arc = arcSpans({ x: 0, y: 0 }, { x: 200, y: 0 }, Math.PI / 2);
  const { points, off } = fewestPoints(arc, exactly, 2);
  // Source: geometry. A chord over the angle a is r(1 - cos(a/2)) off: five chords of 18 deg are 2.46 mm off, six of 15 deg 1.71 mm.
  expect(200 * (1 - Math.cos(Math.PI / 20))).toBeGreaterThan(2);
  expect(points).toHaveLength(7);
  for (const [index, each] of off.entries()) {
    const chord = distance(points[index]!, points[index + 1]!);
    const known = 200 - Math.sqrt(200 ** 2 - (chord / 2) ** 2);
    expect(each).toBeGreaterThan(known - 0.01);
    // The true line is followed by one that is 0.01 mm off itself, and that is told with it.
    expect(each).toBeLessThan(known + 0.02);
    expect(each).toBeLessThanOrEqual(2);
  }
  // Of all ways with six, one that strays little: no way has less than 1.71 mm, and spots lie 4 mm apart at most.
  expect(Math.max(...off)).toBeGreaterThan(1.71);
  expect(Math.max(...off)).toBeLessThan(200 * (1 - Math.cos((Math.PI / 12 + 4 / 200) / 2)) + 0.02);
});

test.each([
  [0.5, 100],
  [2, 300],
  [5, 1000],
])("for %s mm on a quarter circle of %s mm no way with fewer rulers is there", (bound, radius) => {
  const { points } = fewestPoints(arcSpans({ x: 0, y: 0 }, { x: radius, y: 0 }, Math.PI / 2), exactly, bound);
  // Source: geometry. The widest angle that a chord may span, and how often that goes into a quarter turn.
  const widest = 2 * Math.acos(1 - bound / radius);
  const fewest = Math.ceil(Math.PI / 2 / widest);
  expect(points.length - 1).toBeGreaterThanOrEqual(fewest);
  expect(points.length - 1).toBeLessThanOrEqual(fewest + 1);
});

test("points that the tape cannot read lie in whole steps, and what that costs is told", () => {
  const path = straight({ x: 0, y: 0 }, { x: 300.9, y: 99.1 });
  const { points, off } = fewestPoints(path, inTwos, 2);
  expect(points).toEqual([
    { x: 0, y: 0 },
    { x: 300, y: 100 },
  ]);
  // Source: geometry. The end is 0.9 mm and 0.9 mm away.
  expect(off[0]).toBeCloseTo(Math.sqrt(0.9 ** 2 + 0.9 ** 2) + 0.01, 6);
});

test("corners are points, and a curve that nothing can follow is told with what it is off by", () => {
  const bent = through([
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 60 },
  ]);
  expect(fewestPoints(bent, exactly, 2).points).toHaveLength(3);
  const far = fewestPoints(straight({ x: 0, y: 0 }, { x: 100, y: 0 }), ({ x, y }) => ({ x, y: y + 7 }), 2);
  expect(far.off[0]).toBeCloseTo(7.01, 6);
});

test("a line that doubles back is followed to its tip", () => {
  const loop = [cubic({ x: 0, y: 0 }, { x: 400, y: 0 }, { x: 400, y: 1 }, { x: 0, y: 1 })];
  const { points } = fewestPoints(loop, exactly, 2);
  // Source: geometry. The curve's tip is three quarters of the way to its handles.
  expect(Math.max(...points.map(({ x }) => x))).toBeGreaterThan(298);
});
