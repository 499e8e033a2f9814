// Areas and insides of closed paths.
import fc from "fast-check";
import { expect, test } from "vitest";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { contains, flattened, signedArea } from "../../kernel/geometry/area.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { line, reversed, through } from "../../kernel/geometry/path.ts";
import { between, distance } from "../../kernel/geometry/point.ts";
import { anyCubic, anyPoint } from "./curves.ts";

const p = (x: number, y: number) => ({ x, y });
const square = through([p(0, 0), p(50, 0), p(50, 20), p(0, 20), p(0, 0)]);

test("clockwise on the page is positive", () => {
  expect(signedArea(square)).toBe(1000);
  expect(signedArea(reversed(square))).toBe(-1000);
});

test("a gap counts as a straight line", () => {
  expect(signedArea(through([p(0, 0), p(50, 0), p(50, 20)]))).toBe(500);
});

test("a circle has pi r squared", () => {
  // Geometry; the arcs of 1/32 turn are off by less than 1e-9 of the radius.
  const circle = arcSpans(p(300, -80), p(400, -80), 2 * Math.PI);
  expect(signedArea(circle) / (Math.PI * 10000)).toBeCloseTo(1, 8);
});

test("the area under cubics is that of very many corners", () => {
  fc.assert(
    fc.property(anyCubic, (span) => {
      const loop = [span, line(span.end, span.start)];
      const corners = flattened([span], 1e-4);
      const byCorners = signedArea(through([...corners, span.start]));
      // Chords within 1e-4 mm of a curve at most 3 m long miss at most 0.3 square mm.
      expect(Math.abs(signedArea(loop) - byCorners)).toBeLessThan(0.3);
    }),
    { numRuns: 50 },
  );
});

test("inside and outside of a circle go by the distance from its centre", () => {
  const circle = arcSpans(p(0, 0), p(100, 0), -2 * Math.PI);
  fc.assert(
    fc.property(anyPoint, (q) => {
      const away = distance(q, p(0, 0));
      fc.pre(Math.abs(away - 100) > 1e-3);
      expect(contains(circle, q)).toBe(away < 100);
    }),
    { numRuns: 500 },
  );
});

test("a point level with corners is told right", () => {
  const diamond = through([p(0, 0), p(50, 50), p(0, 100), p(-50, 50), p(0, 0)]);
  expect(contains(diamond, p(0, 50))).toBe(true);
  expect(contains(diamond, p(-60, 50))).toBe(false);
  expect(contains(diamond, p(-10, 0))).toBe(false);
  expect(contains(diamond, p(-10, 100))).toBe(false);
});

test("a bent line drawn for a curve keeps within the distance asked", () => {
  fc.assert(
    fc.property(anyCubic, fc.constantFrom(1, 0.1, 0.01), (span, within) => {
      const points = flattened([span], within);
      expect(points[0]).toBe(span.start);
      expect(points[points.length - 1]).toBe(span.end);
      points.slice(1).forEach((q, i) => {
        expect(nearest([span], between(points[i]!, q, 0.5)).distance).toBeLessThan(within);
      });
    }),
    { numRuns: 50 },
  );
});
