// The box around paths against bezier-js.
import fc from "fast-check";
import { expect, test } from "vitest";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { cubic, straight } from "../../kernel/geometry/path.ts";
import { anyCubic, asBezier } from "./curves.ts";

test("the box of a cubic is that of bezier-js", () => {
  fc.assert(
    fc.property(anyCubic, (span) => {
      const ours = bounds([[span]]);
      const theirs = asBezier(span).bbox();
      expect(ours.left).toBeCloseTo(theirs.x.min, 7);
      expect(ours.right).toBeCloseTo(theirs.x.max, 7);
      expect(ours.top).toBeCloseTo(theirs.y.min, 7);
      expect(ours.bottom).toBeCloseTo(theirs.y.max, 7);
    }),
  );
});

test("the box goes by the curve and not by its handles, and round all paths", () => {
  // Handles 40 up: the curve rises 3/4 of that.
  const bow = cubic({ x: 0, y: 0 }, { x: 0, y: -40 }, { x: 90, y: -40 }, { x: 90, y: 0 });
  const box = bounds([[bow], straight({ x: -5, y: 3 }, { x: 10, y: 70 })]);
  expect(box).toEqual({ left: -5, top: -30, right: 90, bottom: 70 });
});
