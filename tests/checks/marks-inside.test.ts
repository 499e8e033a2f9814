// Drill holes, labels, buttonholes and placed pockets lie on the cloth of their piece.
import { expect, test } from "vitest";
import { marksInside } from "../../kernel/checks/marks-inside.ts";
import { type Path, straight, through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Judgement, Piece } from "../../kernel/working.ts";
import { at, atLine, garment, judgementsOf, rectangle } from "./made-garment.ts";

const drilled = (x: number, y: number, more: Partial<Piece> = {}) =>
  judgementsOf(
    marksInside,
    garment([rectangle("back", 300, 400, { drills: [{ point: { x, y }, drawnBy: atLine(20) }], ...more })]),
  );

test.each([
  [150, 200, "pass"],
  [300, 200, "pass"],
  [300.009, 200, "pass"],
  [300.011, 200, "warning"],
  [-5, 200, "warning"],
])("a drill hole at (%f, %f): %s", (x, y, verdict) => {
  expect(drilled(x, y)).toMatchObject([{ on: "back", verdict, where: { line: 20 } }]);
});

test("says how far outside it lies", () => {
  expect(drilled(330, 200)).toMatchObject([
    { found: 30, wanted: 0, message: expect.stringContaining("outside its sewing line.") },
  ]);
});

test("looks at labels that were given a place, and at no others", () => {
  const labels = [
    { text: "pocket", at: { x: 500, y: 200 }, drawnBy: atLine(21) },
    { text: "right side only", drawnBy: atLine(22) },
  ];
  expect(judgementsOf(marksInside, garment([rectangle("back", 300, 400, { labels })]))).toMatchObject([
    { verdict: "warning", where: { line: 21 } },
  ]);
});

test("a piece with a failed line is not judged", () => {
  expect(drilled(500, 200, { doubtful: true })).toEqual([]);
});

/** A piece of 300 by 400 mm with a line inside it, and drill holes set by the same line of the recipe. */
const lined = (name: string, path: Path, drills: readonly Point[] = []): Piece => {
  const bare = rectangle("front", 300, 400, { drills: drills.map((point) => ({ point, drawnBy: atLine(30) })) });
  return { ...bare, edges: new Map(bare.edges).set(name, { name, path, role: "seam", drawnBy: atLine(30) }) };
};

const judged = (piece: Piece): Judgement[] => judgementsOf(marksInside, garment([piece]));

test.each([
  ["buttonhole-1", -3, 21, "warning", 3],
  ["buttonhole-12", 285, 306, "warning", 6],
  ["buttonhole-2", 0, 24, "pass", 0],
  ["back-buttonhole-2", -4, 20, "warning", 4],
])("%s from x = %f to %f: %s", (name, from, to, verdict, found) => {
  const hole = lined(name, straight(at(from, 200), at(to, 200)));
  expect(judged(hole)).toMatchObject([{ on: `front.${name}`, verdict, found, where: { line: 30 } }]);
});

test("a line of another name may run beyond the piece: it is a line to draft by", () => {
  expect(judged(lined("bust-line", straight(at(-50, 200), at(350, 200))))).toEqual([]);
  expect(judged(lined("no-buttonhole", straight(at(-50, 200), at(350, 200))))).toEqual([]);
});

const box = (left: number, top: number, right: number, bottom: number): Path =>
  through([at(left, top), at(right, top), at(right, bottom), at(left, bottom), at(left, top)]);

test("a placed pocket is judged once, and its corners not besides", () => {
  const inside = [at(204, 204), at(296, 204)];
  expect(judged(lined("pocket", box(200, 200, 300, 300), inside))).toMatchObject([
    { on: "front.pocket", verdict: "pass" },
  ]);
  const off = judged(lined("pocket", box(220, 200, 320, 300), [at(224, 204), at(316, 204)]));
  expect(off).toMatchObject([{ on: "front.pocket", verdict: "warning", found: 20, where: { line: 30 } }]);
  expect(off[0]!.message).toBe("Part of the pocket of front lies 20 mm outside its sewing line.");
});

test("a pocket is found off the piece where none of its corners is", () => {
  // The side goes in from x = 300 to 260 at its middle and out again; the pocket's own side stands at 262, and at its ends
  // the piece is wider than that. 2 mm beyond the bend, the nearest of a slant of 1 in 5 is 2 cos(atan(1 / 5)) = 1.961 away.
  const side = through([at(300, 0), at(260, 200), at(300, 400)]);
  const whole = lined("pocket", box(200, 50, 262, 350), [at(258, 54)]);
  const piece = { ...whole, edges: new Map(whole.edges).set("side", { ...whole.edges.get("side")!, path: side }) };
  const [judgement, ...others] = judged(piece);
  expect(others).toEqual([]);
  expect(judgement).toMatchObject({ on: "front.pocket", verdict: "warning" });
  expect(judgement!.found).toBeCloseTo(1.961, 2);
});

test("a closed line that nothing was drilled for is no pocket, and a drill hole beside it is judged", () => {
  expect(judged(lined("circle", box(200, 200, 320, 300)))).toEqual([]);
  const beside = judged(lined("circle", box(200, 200, 320, 300), [at(330, 250)]));
  expect(beside).toMatchObject([{ on: "front", verdict: "warning", found: 30 }]);
});
