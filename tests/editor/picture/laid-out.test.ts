// Where pieces lie on the table: apart, in rows, and still when one of them grows a little.
import fc from "fast-check";
import { expect, test } from "vitest";
import { laidOut } from "../../../editor/picture/laid-out.ts";

const box = (width: number, height: number) => ({ left: 0, top: 0, right: width, bottom: height });

test("nothing needs no room, and a single piece lies near the corner", () => {
  expect(laidOut([])).toEqual([]);
  // Its field begins in the corner, at a multiple of 60 mm that leaves 20 free.
  expect(laidOut([box(300, 900)])).toEqual([{ x: 60, y: 60 }]);
});

test("no two pieces come nearer to one another than 40 mm", () => {
  const size = fc.double({ min: 0, max: 2000, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.tuple(size, size), { minLength: 2, maxLength: 12 }), (sizes) => {
      const places = laidOut(sizes.map(([width, height]) => box(width, height)));
      places.forEach((one, i) => {
        places.slice(i + 1).forEach((other, j) => {
          const [width, height] = sizes[i]!;
          const [otherWidth, otherHeight] = sizes[i + 1 + j]!;
          const across = Math.max(other.x - (one.x + width), one.x - (other.x + otherWidth));
          const down = Math.max(other.y - (one.y + height), one.y - (other.y + otherHeight));
          expect(Math.max(across, down)).toBeGreaterThanOrEqual(40);
        });
      });
    }),
  );
});

test("it lies where its box says, wherever that is in its own coordinates", () => {
  // The second is the first, drawn 480 further left and 240 further down.
  const [first] = laidOut([box(300, 900)]);
  const [moved] = laidOut([{ left: -480, top: 240, right: -180, bottom: 1140 }]);
  expect({ x: moved!.x - 480, y: moved!.y + 240 }).toEqual(first);
});

test("a hem that swings a little wider leaves its neighbours where they are", () => {
  // 300 and 330 with 20 free both end within the field that ends at 360.
  expect(laidOut([box(330, 900), box(300, 900)])).toEqual(laidOut([box(300, 900), box(300, 900)]));
});

test("many pieces make a table that is wider than deep, and no endless row", () => {
  const places = laidOut(Array.from({ length: 16 }, () => box(320, 320)));
  const [width, height] = [Math.max(...places.map(({ x }) => x)) + 360, Math.max(...places.map(({ y }) => y)) + 360];
  expect(width).toBeGreaterThan(height);
  expect(height).toBeGreaterThan(360);
});
