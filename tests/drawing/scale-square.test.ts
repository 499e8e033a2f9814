// The squares by which a cutter checks the scale of a print.
import { expect, test } from "vitest";
import { rim, room } from "../../kernel/drawing/box.ts";
import { draw, drawPiece } from "../../kernel/drawing/draw.ts";
import type { Drawing, Group } from "../../kernel/drawing/drawing.ts";
import { boxOf } from "../../kernel/drawing/lettering.ts";
import { extentOf } from "../../kernel/drawing/paper.ts";
import { flattened } from "../../kernel/geometry/area.ts";
import { bounds } from "../../kernel/geometry/bounds.ts";
import { back, beltLoop, cloak, garmentOf } from "./made-garment.ts";

const garment = garmentOf([back, beltLoop, cloak]);
const inInches = { ...garment, units: "in" } as const;
const of = (drawing: Drawing, kind: Group["of"]): Group => drawing.groups.find((group) => group.of === kind)!;

const sidesOf = (group: Group): number[] =>
  group.strokes
    .filter(({ kind }) => kind === "scale-square")
    .flatMap(({ path }) => {
      const { left, top, right, bottom } = bounds([path]);
      return [right - left, bottom - top];
    });

// An inch is 25.4 mm exactly (international yard and pound agreement of 1959).
test.each([
  ["cm", garment, [50, 50], ["50 x 50 mm"]],
  ["inches", inInches, [50, 50, 2 * 25.4, 2 * 25.4], ["50 x 50 mm", "2 x 2 in"]],
] as const)(
  "a garment in %s has its squares on the sheet and beside each piece, labelled",
  (_, measured, sides, words) => {
    const { sheet, pieces } = draw(measured);
    const groups = [of(sheet, "title-block"), ...[...pieces.values()].map((drawing) => of(drawing, "scale-square"))];
    for (const group of groups) {
      const found = sidesOf(group);
      expect(found).toHaveLength(sides.length);
      found.forEach((side, index) => {
        expect(side).toBeCloseTo(sides[index]!, 9);
      });
      expect(group.texts.map(({ text }) => text)).toEqual(expect.arrayContaining([...words]));
    }
  },
);

test("the square lies over nothing of the piece, and on the paper", () => {
  for (const drawing of draw(inInches).pieces.values()) {
    const [piece, square] = [of(drawing, "piece"), of(drawing, "scale-square")];
    const { left, top, right, bottom } = extentOf([square]);
    const box = {
      center: { x: (left + right) / 2, y: (top + bottom) / 2 },
      turn: 0,
      halfWidth: (right - left) / 2,
      halfHeight: (bottom - top) / 2,
    };
    const lines = [
      ...piece.strokes.map(({ path }) => flattened(path, 0.2)),
      ...piece.texts.map((text) => rim(boxOf(text))),
    ];
    expect(room(box, lines)).toBeGreaterThan(1);
    expect(left >= drawing.paper.left && right <= drawing.paper.right).toBe(true);
    expect(top >= drawing.paper.top && bottom <= drawing.paper.bottom).toBe(true);
  }
});

test("a piece that is drawn to be looked at has none", () => {
  expect(drawPiece(garment, back).groups.map(({ of }) => of)).toEqual(["piece"]);
});
