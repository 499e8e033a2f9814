// How pieces are laid on one another: a piece that was turned or turned over as a whole is the same piece, and a picture may be
// laid by its fold, its grain, a place or as all of it fits best.
import { describe, expect, test } from "vitest";
import { isUnchanged } from "../../kernel/compare/comparison.ts";
import { type LaidBy, laid, laidAsAsked } from "../../kernel/compare/laid-over.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Piece } from "../../kernel/working.ts";
import { apron, compared, workedAfresh } from "./compared.ts";

/** The apron's corners and pocket as they lie when it is turned by 30 degrees, clockwise, about a place elsewhere. */
const turned = apron
  .replace("A = (0, 0)", "A = (5 cm, 3 cm)")
  .replace("A right wide", "A bearing 30 deg for wide")
  .replace("B down long", "B bearing 120 deg for long")
  .replace("A down long", "A bearing 120 deg for long")
  .replace("A right 10 cm down 20 cm", "A bearing 30 deg for 10 cm bearing 120 deg for 20 cm");

const over = apron.replace("A right wide", "A left wide").replace("A right 10 cm", "A left 10 cm");

test("a piece turned by 30 degrees has not changed", () => {
  expect(isUnchanged(compared(apron, turned))).toBe(true);
});

test("of one that is turned over nothing changed but that", () => {
  const { pieces, ...rest } = compared(apron, over);
  expect(isUnchanged({ pieces: [], ...rest })).toBe(true);
  expect(pieces[0]!.marks).toEqual([
    { kind: "lies", on: "", measures: "words", before: "face up", after: "face down" },
  ]);
  expect([pieces[0]!.edges, pieces[0]!.places, pieces[0]!.corners, pieces[0]!.area]).toEqual([[], [], [], null]);
});

test("a piece that is turned and altered is told by what was altered", () => {
  const { pieces } = compared(apron, turned.replace("side at 20 cm", "side at 21 cm"));
  expect(pieces[0]!.marks.map(({ kind, on, before, after }) => [kind, on, before, Math.round(Number(after))])).toEqual([
    ["notch", "side", 200, 210],
  ]);
  expect([pieces[0]!.edges, pieces[0]!.places, pieces[0]!.area]).toEqual([[], [], null]);
});

describe("laid as asked", () => {
  const panel = (text: string): Piece => workedAfresh(text).garment.pieces.get("panel")!;
  /** Where the later piece's place comes to lie on the earlier one's table. */
  const layingOf = (before: string, after: string, by: LaidBy) => {
    const [was, is] = [panel(before), panel(after)];
    const laying = laidAsAsked(was, is, by);
    return laying && ((name: string): Point => laid(is.places.get(name)!.point, laying));
  };
  const expectAt = (p: Point, x: number, y: number): void => {
    expect(p.x).toBeCloseTo(x, 6);
    expect(p.y).toBeCloseTo(y, 6);
  };

  test("by a place: it lies where it lay, and nothing is turned", () => {
    const place = layingOf(apron, turned, { by: "place", place: "A" })!;
    expectAt(place("A"), 0, 0);
    // 300 mm at 30 degrees.
    expectAt(place("B"), 300 * Math.cos(Math.PI / 6), 150);
    expect(layingOf(apron, turned, { by: "place", place: "nape" })).toBeUndefined();
  });

  test("by the fold: its start lies where it lay, and it runs as it ran", () => {
    const folded = (text: string): string => text.replace("mark hem as hem", "mark center as fold");
    const wider = folded(turned).replace("wide = 30 cm", "wide = 35 cm");
    const place = layingOf(folded(apron), wider, { by: "fold" })!;
    expectAt(place("A"), 0, 0);
    expectAt(place("D"), 0, 1000);
    expectAt(place("B"), 350, 0);
    expect(layingOf(apron, turned, { by: "fold" })).toBeUndefined();
  });

  test("by the grain: threads run as they ran, the middles on one another", () => {
    const place = layingOf(apron, turned.replace("wide = 30 cm", "wide = 34 cm"), { by: "grain" })!;
    // 340 mm about a middle at 150.
    expectAt(place("A"), -20, 0);
    expectAt(place("C"), 320, 1000);
  });

  test("as it fits best: exactly, where it can", () => {
    const place = layingOf(apron, turned, { by: "fit" })!;
    expectAt(place("A"), 0, 0);
    expectAt(place("C"), 300, 1000);
    expectAt(place("pocket"), 100, 200);
  });
});
