// The largest value at which something holds, against looking at every one of them.
import fc from "fast-check";
import { expect, test } from "vitest";
import { type Largest, largestRung } from "../../kernel/cloth/lay/largest-rung.ts";
import { rungsOf } from "../../kernel/cloth/lay/rungs.ts";
import "../seeded.ts";

const found = (count: number, holds: (rung: number) => boolean): Largest => {
  const search = largestRung(count);
  let step = search.next();
  while (!step.done) step = search.next(step.value.map(holds));
  return step.value;
};

test("where all that is smaller holds too, it is the very largest", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), fc.integer({ min: -1, max: 5000 }), (count, last) => {
      const { rung, next, tried } = found(count, (each) => each <= last);
      const largest = Math.min(last, count - 1);
      expect(rung).toBe(largest < 0 ? undefined : largest);
      expect(next).toBe(largest < 0 || largest === count - 1 ? undefined : largest + 1);
      // 17 all over the range, a halving of what lies between two of them, and four beyond.
      expect(tried.size).toBeLessThanOrEqual(17 + Math.ceil(Math.log2(count / 16 + 2)) + 4);
    }),
  );
});

test("whatever holds, what is given holds, the next does not, and no larger one that was looked at does", () => {
  fc.assert(
    fc.property(fc.array(fc.boolean(), { minLength: 1, maxLength: 400 }), (holds) => {
      const { rung, next, tried } = found(holds.length, (each) => holds[each]!);
      for (const [each, held] of tried) {
        expect(held).toBe(holds[each]);
        if (held) expect(each).toBeLessThanOrEqual(rung!);
      }
      if (rung === undefined) expect([...tried.values()]).not.toContain(true);
      else if (rung < holds.length - 1) {
        expect(next).toBe(rung + 1);
        expect(holds[rung]).toBe(true);
        expect(holds[rung + 1]).toBe(false);
        // What holds again a little farther on is not missed.
        expect(holds.slice(rung + 1, rung + 6)).not.toContain(true);
      }
    }),
  );
});

test("of no more than 17 every one is looked at", () => {
  expect(found(17, (rung) => rung === 3).rung).toBe(3);
  expect([...found(17, () => false).tried.keys()]).toEqual(Array.from({ length: 17 }, (_, i) => i));
});

test("a range in steps has both its ends, and whole steps between", () => {
  const all = (least: number, most: number, step: number, anchor: number): number[] => {
    const { count, at } = rungsOf(least, most, step, anchor);
    return Array.from({ length: count }, (_, rung) => at(rung));
  };
  expect(all(0, 10, 5, 0)).toEqual([0, 5, 10]);
  expect(all(3, 12, 5, 0)).toEqual([3, 5, 10, 12]);
  expect(all(3, 12, 4, 3)).toEqual([3, 7, 11, 12]);
  expect(all(-3, 3, 2, 0)).toEqual([-3, -2, 0, 2, 3]);
  expect(all(7, 7, 2, 0)).toEqual([7]);
  // 20 cm in eighths of an inch: 62 whole ones are 196.85 mm, and the end is 200.
  const eighths = all(0, 200, 25.4 / 8, 0);
  expect(eighths).toHaveLength(64);
  expect(eighths.slice(-2)).toEqual([196.85, 200]);
  // A tenth ten times over is not quite one.
  expect(all(0, 1, 0.1, 0)).toHaveLength(11);
});
