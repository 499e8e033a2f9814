// One number of a recipe is changed at random: everything that is then reported differs, and nothing that is not reported does,
// by measuring every edge and every place of both garments. Curves are measured by bezier-js, which is not ours.
import { Bezier } from "bezier-js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { compareGarments } from "../../kernel/compare/compare-garments.ts";
import { asItLies, laidOver } from "../../kernel/compare/laid-over.ts";
import { tellableLength } from "../../kernel/compare/rounding.ts";
import type { Path } from "../../kernel/geometry/path.ts";
import { isHidden } from "../../kernel/hidden-names.ts";
import type { Outcome } from "../../kernel/kernel.ts";
import { takenAlong } from "../../kernel/sewn.ts";
import type { Piece } from "../../kernel/working.ts";
import { apron, recipeText, workedAfresh } from "./compared.ts";

const recipes = [
  { file: "apron.chalk", text: apron },
  ...["lobby-coat-swing.chalk", "circle-skirt.chalk", "blocks/straight-coat.chalk", "a-line-skirt.chalk"].map(
    (file) => ({
      file,
      text: recipeText(file),
    }),
  ),
];

const worked = new Map(recipes.map(({ file, text }) => [file, workedAfresh(text, file)]));

const edit = fc.record({
  recipe: fc.constantFrom(...recipes),
  which: fc.double({ min: 0, max: 0.999, noNaN: true }),
  factor: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
});

// What lies nearer than this, in mm, to what can be told may be told or not: the two ways of measuring differ that much.
const dust = 0.01;

test("everything reported differs, and nothing unreported does", () => {
  let [pieces, reported] = [0, 0];
  fc.assert(
    fc.property(edit, ({ recipe: { file, text }, which, factor }) => {
      const numbers = [...text.matchAll(/(?<![\w."])\d+(?:\.\d+)?(?= (?:cm|mm|deg)\b)/g)];
      const number = numbers[Math.floor(which * numbers.length)]!;
      const other = (Number(number[0]) * factor).toFixed(3);
      const after = text.slice(0, number.index) + other + text.slice(number.index + number[0].length);
      const [was, is] = [worked.get(file)!, workedAfresh(after, file)];
      // A number that no line could work with, such as one outside its range, leaves nothing to compare.
      fc.pre(!is.incomplete);
      const seen = heldAgainst(was, is);
      pieces += seen.pieces;
      reported += seen.reported;
    }),
    { numRuns: 40 },
  );
  expect(pieces).toBeGreaterThan(40);
  expect(reported).toBeGreaterThan(60);
});

const heldAgainst = (was: Outcome, is: Outcome): { pieces: number; reported: number } => {
  const comparison = compareGarments(was, is);
  let reported = 0;
  for (const [name, after] of is.garment.pieces) {
    const before = was.garment.pieces.get(name)!;
    const told = comparison.pieces.find((piece) => piece.name === name);
    for (const edge of after.edges.keys()) {
      if (isHidden(edge) || !before.edges.has(edge)) continue;
      const difference = lengthOf(after, edge) - lengthOf(before, edge);
      const change = told?.edges.find((each) => each.name === edge);
      if (change) reported += 1;
      expect(change?.difference ?? 0).toBeCloseTo(change ? difference : 0, 2);
      if (!change) expect(Math.abs(difference)).toBeLessThan(tellableLength + dust);
      else expect(Math.max(Math.abs(difference), change.moved!)).toBeGreaterThan(tellableLength - dust);
    }
    // Of a piece that moved as a whole its places are told as it is laid back, which is for other tests.
    if (laidOver(before, after) !== asItLies) continue;
    for (const [place, { point }] of after.places) {
      const old = before.places.get(place);
      if (isHidden(place) || !old) continue;
      const moved = Math.sqrt((point.x - old.point.x) ** 2 + (point.y - old.point.y) ** 2);
      const change = told?.places.find((each) => each.name === place);
      if (change) expect(change.moved).toBeCloseTo(moved, 6);
      expect(change !== undefined).toBe(moved >= tellableLength);
    }
  }
  return { pieces: is.garment.pieces.size, reported };
};

/** Spans by bezier-js and by the straight line, less what sewing takes up. */
const lengthOf = (piece: Piece, edge: string): number =>
  around(piece.edges.get(edge)!.path) - takenAlong(piece, edge).reduce((sum, { amount }) => sum + amount, 0);

const around = (path: Path): number =>
  path.reduce((sum, span) => {
    if (span.kind === "line")
      return sum + Math.sqrt((span.end.x - span.start.x) ** 2 + (span.end.y - span.start.y) ** 2);
    return (
      sum + new Bezier([span.start, span.startHandle, span.endHandle, span.end].map(({ x, y }) => ({ x, y }))).length()
    );
  }, 0);
