// The cloth added and taken off, held against Clipper2 compiled to WebAssembly from its author's own C++, which is given lines
// bent finer than ours and cut otherwise.
import { createRequire } from "node:module";
import type { MainModule, PathsD } from "clipper2-wasm/dist/clipper2z";
import { describe, expect, test } from "vitest";
import { clothBetween } from "../../kernel/compare/cloth-between.ts";
import { arcSpans } from "../../kernel/geometry/arc.ts";
import { pointOn } from "../../kernel/geometry/arc-length.ts";
import { joined, mapped, type Path, straight } from "../../kernel/geometry/path.ts";
import { boundary } from "../../kernel/outline.ts";
import { recipeFiles, recipeText, workedAfresh } from "./compared.ts";

// Its types do not cover its way in, which makes the module.
const clipper = await (createRequire(import.meta.url)("clipper2-wasm") as () => Promise<MainModule>)();

const square = (x: number, y: number, side: number): Path =>
  joined([
    straight({ x, y }, { x: x + side, y }),
    straight({ x: x + side, y }, { x: x + side, y: y + side }),
    straight({ x: x + side, y: y + side }, { x, y: y + side }),
    straight({ x, y: y + side }, { x, y }),
  ]);

test("two squares that share a quarter", () => {
  const { addedArea, removedArea, added, removed } = clothBetween(square(0, 0, 100), square(50, 50, 100));
  // Each has 100 x 100, and 50 x 50 of it are both's.
  expect([addedArea, removedArea]).toEqual([7500, 7500]);
  expect([added.length, removed.length]).toEqual([1, 1]);
});

test("a hole cut out counts as taken off, without its ring", () => {
  const circle = (radius: number): Path => arcSpans({ x: 0, y: 0 }, { x: radius, y: 0 }, 2 * Math.PI);
  const { addedArea, removedArea } = clothBetween(circle(100), circle(60));
  expect(addedArea).toBe(0);
  // pi (100^2 - 60^2) = 20106.19.
  expect(removedArea / 20106.19).toBeCloseTo(1, 3);
});

describe("as Clipper's own author reckons", () => {
  const pairs = recipeFiles.flatMap((file) => {
    const { garment } = workedAfresh(recipeText(file), file);
    return [...garment.pieces.values()].flatMap((piece) => {
      const [after, source] = [boundary(piece), piece.source && boundary(piece.source)];
      return after && source ? [{ name: `${file} ${piece.name}`, before: source, after }] : [];
    });
  });

  test("there are enough of them", () => expect(pairs.length).toBeGreaterThan(20));

  test.each(pairs)("$name", ({ before, after }) => {
    const ours = clothBetween(before, after);
    const around = Math.max(fine(before).length, fine(after).length);
    expect(around).toBeGreaterThan(3);
    // Bent lines 0.01 mm from the curves are off by that along a few metres: some 30 square mm.
    expect(Math.abs(ours.addedArea - theirs(after, before))).toBeLessThan(30);
    expect(Math.abs(ours.removedArea - theirs(before, after))).toBeLessThan(30);
  });

  test("and shifted, so that every edge crosses another", () => {
    const { after } = pairs[0]!;
    const shifted = mapped(after, ({ x, y }) => ({ x: x + 13.3, y: y - 7.7 }));
    const ours = clothBetween(after, shifted);
    expect(Math.abs(ours.addedArea - theirs(shifted, after))).toBeLessThan(30);
    expect(Math.abs(ours.removedArea - theirs(after, shifted))).toBeLessThan(30);
  });
});

const fine = (loop: Path): number[] =>
  loop.flatMap((span) => {
    const count = span.kind === "line" ? 1 : 200;
    return Array.from({ length: count }, (_, i) => pointOn(span, i / count)).flatMap(({ x, y }) => [x, y]);
  });

/** What one closed line holds and another does not, square mm. */
const theirs = (loop: Path, less: Path): number => {
  const paths = (line: Path): PathsD => {
    const list = new clipper.PathsD();
    list.push_back(clipper.MakePathD(fine(line)));
    return list;
  };
  const [subject, clip] = [paths(loop), paths(less)];
  const left = clipper.DifferenceD(subject, clip, clipper.FillRule.NonZero, 6);
  const area = Math.abs(clipper.AreaPathsD(left));
  for (const each of [subject, clip, left]) each.delete();
  return area;
};
