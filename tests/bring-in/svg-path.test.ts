// Path data against the examples of the W3C's specifications, worked out by hand, and against svgpath, a reader that is not ours.
import fc from "fast-check";
import svgpath from "svgpath";
import { describe, expect, test } from "vitest";
import { movedBy } from "../../editor/bring-in/affine.ts";
import { svgPath } from "../../editor/bring-in/svg-path.ts";
import { svgTransform } from "../../editor/bring-in/svg-transform.ts";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { signedArea } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { cubic, endOf, line, type Path, type Span, startOf } from "../../kernel/geometry/path.ts";
import { distance, type Point } from "../../kernel/geometry/point.ts";
import { howFar } from "./traced.ts";

const only = (d: string): Path => {
  const { paths, brokenAt } = svgPath(d);
  expect(brokenAt).toBeUndefined();
  expect(paths).toHaveLength(1);
  return paths[0]!;
};

const at = (x: number, y: number): Point => ({ x, y });

describe("examples of W3C SVG 1.1 (Second Edition), chapter 8, worked out by hand", () => {
  test("triangle01: a triangle of 200 by 200", () => {
    const path = only("M 100 100 L 300 100 L 200 300 z");
    expect(path).toEqual([
      line(at(100, 100), at(300, 100)),
      line(at(300, 100), at(200, 300)),
      line(at(200, 300), at(100, 100)),
    ]);
    expect(signedArea(path)).toBe(20_000);
  });

  test("cubic01: S mirrors the handle before it", () => {
    expect(only("M100,200 C100,100 250,100 250,200 S400,300 400,200")).toEqual([
      cubic(at(100, 200), at(100, 100), at(250, 100), at(250, 200)),
      // (250, 100) mirrored in (250, 200).
      cubic(at(250, 200), at(250, 300), at(400, 300), at(400, 200)),
    ]);
  });

  test("quad01: T mirrors the control point before it", () => {
    const path = only("M200,300 Q400,50 600,300 T1000,300");
    expect(path.map(({ end }) => end)).toEqual([at(600, 300), at(1000, 300)]);
    // A quadratic lies at a quarter, half and a quarter of its three points: (300 + 2 * 50 + 300) / 4, and below as far.
    expect(pointAt([path[0]!], pathLength([path[0]!]) / 2).y).toBeCloseTo(175, 9);
    expect(pointAt([path[1]!], pathLength([path[1]!]) / 2).y).toBeCloseTo(425, 9);
  });

  test("arcs01: three quarters and one quarter of circles of radius 150", () => {
    const most = only("M300,200 h-150 a150,150 0 1,0 150,-150 z");
    // The arc's cubics are exact to a few millionths of the radius.
    expect(Math.abs(signedArea(most))).toBeCloseTo((Math.PI * 150 ** 2 * 3) / 4, 1);
    expect(bounds([most])).toMatchObject({ left: expect.closeTo(150, 3), right: expect.closeTo(450, 3) });
    expect(Math.abs(signedArea(only("M275,175 v-150 a150,150 0 0,0 -150,150 z")))).toBeCloseTo(
      (Math.PI * 150 ** 2) / 4,
      1,
    );
  });

  test("arcs01: the row of bumps, whose last ellipse is scaled up to reach its end", () => {
    const path = only(
      "M600,350 l 50,-25 a25,25 -30 0,1 50,-25 l 50,-25 a25,50 -30 0,1 50,-25 l 50,-25 a25,75 -30 0,1 50,-25 l 50,-25 a25,100 -30 0,1 50,-25 l 50,-25",
    );
    // Nine steps of (50, -25).
    expect(endOf(path)).toEqual(at(1050, 125));
    expect(path.filter(({ kind }) => kind === "line")).toHaveLength(5);
  });

  test.each([
    ["0,0", 1, -1],
    ["0,1", 1, 1],
    ["1,0", -1, -1],
    ["1,1", -1, 1],
  ])("arcs02: of the four arcs the flags %s pick the right one", (flags, small, sweep) => {
    // Ellipses of radii 100 and 50 through (125, 75) and (225, 125): centres (225, 75) and (125, 125).
    const path = only(`M 125,75 a100,50 0 ${flags} 100,50`);
    const center = small * sweep > 0 ? at(125, 125) : at(225, 75);
    for (let i = 0; i <= 20; i += 1) {
      const p = pointAt(path, (pathLength(path) * i) / 20);
      expect(((p.x - center.x) / 100) ** 2 + ((p.y - center.y) / 50) ** 2).toBeCloseTo(1, 5);
    }
    // Positive areas run clockwise: with the chord, the arc that sweeps that way.
    expect(Math.sign(signedArea(path))).toBe(sweep);
    const ellipse = Math.PI * 100 * 50;
    const segment = ellipse / 4 - (100 * 50) / 2;
    expect(Math.abs(signedArea(path))).toBeCloseTo(small > 0 ? segment : ellipse - segment, 1);
  });

  test("8.3.9: numbers need nothing between them that is not needed to tell them apart", () => {
    expect(only("M 100-200L300-400")).toEqual(only("M 100 -200 L 300 -400"));
    expect(only("M 0.6.5L5 5")).toEqual(only("M 0.6 0.5 L 5 5"));
    expect(only("M0 0a1 1 0 013 4")).toEqual(only("M 0 0 a 1 1 0 0 1 3 4"));
  });

  test("8.3.2: more numbers behind a move draw lines, of the move's own kind", () => {
    expect(only("M1 1 2 2 3 1")).toEqual(only("M1 1L2 2L3 1"));
    expect(only("m1 1 2 2 3 1")).toEqual(only("M1 1L3 3L6 4"));
  });
});

describe("W3C SVG 2", () => {
  test.each([
    ["M 10 10 L 20 20 L 30", 1, 21],
    ["M 10 10 L 20 20 X 5 5", 1, 17],
    ["M 10 10 L 20 20 30 1e999", 1, 25],
    ["L 10 10", 0, 1],
    ["M 0 0 L 5 NaN", 0, 11],
  ])("9.5.4: %s is drawn up to its fault", (d, lines, brokenAt) => {
    const read = svgPath(d);
    expect(read.brokenAt).toBe(brokenAt);
    expect(read.paths.flat()).toHaveLength(lines);
  });

  test("9.3.8 and B.2.5: arcs of no radius are lines, of negative radius those of the positive one, of no way nothing", () => {
    expect(only("M0 0 A0 5 0 0 1 9 9")).toEqual(only("M0 0 L9 9"));
    expect(only("M0 0 A-5 -7 0 0 1 9 9")).toEqual(only("M0 0 A5 7 0 0 1 9 9"));
    expect(only("M0 0 A5 5 0 0 1 0 0 L9 9")).toEqual(only("M0 0 L9 9"));
    // Too small to reach: scaled up to half the distance.
    expect(howFar(only("M0 0 A1 1 0 0 1 10 0"), only("M0 0 A5 5 0 0 1 10 0"))).toBeLessThan(1e-9);
  });

  test("radii beyond all measure draw a line and no number that is none", () => {
    expect(only("M0 0 A1e200 1e200 0 0 1 100 0")).toEqual(only("M0 0 L100 0"));
  });
});

const whole = fc.integer({ min: -300, max: 300 });
const numbers = (count: number) => fc.array(whole, { minLength: count, maxLength: count }).map((all) => all.join(" "));
const command = fc.oneof(
  fc.tuple(fc.constantFrom("L", "l", "T", "t"), numbers(2)).map(([c, n]) => c + n),
  fc.tuple(fc.constantFrom("H", "h", "V", "v"), numbers(1)).map(([c, n]) => c + n),
  fc.tuple(fc.constantFrom("Q", "q", "S", "s"), numbers(4)).map(([c, n]) => c + n),
  fc.tuple(fc.constantFrom("C", "c"), numbers(6)).map(([c, n]) => c + n),
  fc
    .tuple(
      fc.constantFrom("A", "a"),
      fc.integer({ min: 5, max: 300 }),
      fc.integer({ min: 5, max: 300 }),
      whole,
      numbers(2),
      fc.constantFrom("0 0", "0 1", "1 0", "11"),
    )
    .map(([c, rx, ry, turn, end, flags]) => `${c}${rx} ${ry} ${turn} ${flags} ${end}`),
);
const pathData = fc
  .tuple(numbers(2), fc.array(command, { minLength: 1, maxLength: 6 }))
  .map(([m, all]) => `M${m} ${all.join(" ")}`);
const move = fc.oneof(
  fc.tuple(whole, whole).map(([x, y]) => `translate(${x}, ${y})`),
  whole.map((angle) => `rotate(${angle})`),
  fc.tuple(whole, whole, whole).map(([angle, x, y]) => `rotate(${angle} ${x},${y})`),
  fc
    .tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }))
    .map(([x, y]) => `scale(${x / 8} ${y / 8})`),
  fc
    .tuple(fc.constantFrom("skewX", "skewY"), fc.integer({ min: -60, max: 60 }))
    .map(([name, angle]) => `${name}(${angle})`),
  fc.constant("matrix(0.5 0.2 -0.3 0.8 10 -20)"),
);

/** What svgpath makes of path data, arcs as cubics, as a path of ours. */
const judged = (d: string, transform: string): Path => {
  const spans: Span[] = [];
  let pen = at(0, 0);
  // Transformed while arcs are arcs, and every other letter is spelt out.
  svgpath(d)
    .abs()
    .unshort()
    .transform(transform)
    .unarc()
    .round(9)
    .iterate((segment, _index, x, y) => {
      const [letter, ...v] = segment as [string, ...number[]];
      pen = at(x, y);
      const [p, q, r] = [at(v[0]!, v[1]!), at(v[2]!, v[3]!), at(v[4]!, v[5]!)];
      if (letter === "L") spans.push(line(pen, p));
      if (letter === "H") spans.push(line(pen, at(v[0]!, y)));
      if (letter === "V") spans.push(line(pen, at(x, v[0]!)));
      if (letter === "C") spans.push(cubic(pen, p, q, r));
      if (letter === "Q") {
        const third = (a: Point): Point => at(a.x + ((p.x - a.x) * 2) / 3, a.y + ((p.y - a.y) * 2) / 3);
        spans.push(cubic(pen, third(pen), third(q), q));
      }
    });
  return spans.filter((span) => span.kind === "cubic" || distance(span.start, span.end) > 0);
};

test("svgpath draws the same, whatever commands and transforms", () => {
  fc.assert(
    fc.property(pathData, fc.array(move, { maxLength: 3 }), (d, moves) => {
      const transform = moves.join(" ");
      const expected = judged(d, transform);
      const { paths, brokenAt } = svgPath(d);
      expect(brokenAt).toBeUndefined();
      if (paths.length === 0) return expect(expected).toEqual([]);
      const ours = movedBy(svgTransform(transform)!, paths[0]!);
      const size = bounds([expected]);
      // svgpath takes a cubic for a quarter of an ellipse, which is off by 0.03 % of its radius, and scaled ellipses to 1e-10.
      const within = 0.002 + 0.0006 * Math.max(size.right - size.left, size.bottom - size.top);
      expect(howFar(ours, expected)).toBeLessThan(within);
      expect(distance(startOf(ours), startOf(expected))).toBeLessThan(1e-4);
      expect(distance(endOf(ours), endOf(expected))).toBeLessThan(1e-4);
    }),
    { numRuns: 100 },
  );
});

test.each(["rotate(", "turn(30)", "scale(a)", "matrix(1 2 3)", "rotate(1e999)", "translate(1) nonsense"])(
  "the transform %s is not guessed at",
  (written) => {
    expect(svgTransform(written)).toBeUndefined();
  },
);
