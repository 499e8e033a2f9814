// Linings and facings of any piece: what they are sewn to keeps its length, and a strip is of even width or is refused.
import fc from "fast-check";
import { expect, test } from "vitest";
import { pathLength, pointAt } from "../../kernel/geometry/arc-length.ts";
import { nearest } from "../../kernel/geometry/nearest.ts";
import { endOf, isStraight, startOf } from "../../kernel/geometry/path.ts";
import { boundary, walked } from "../../kernel/outline.ts";
import { Problem } from "../../kernel/problem.ts";
import { sewnLengthOf } from "../../kernel/sewn.ts";
import type { PieceStep } from "../../kernel/step.ts";
import { facing } from "../../kernel/steps/facing.ts";
import { lining } from "../../kernel/steps/lining.ts";
import type { Piece } from "../../kernel/working.ts";
import { anySlash } from "./any-piece.ts";
import { areaOf, lengthOf, pathOf, worked } from "./made-piece.ts";

/** What becomes of a piece, or the code of the Problem that refuses it. */
const outcomeOf = (step: PieceStep, fill: Readonly<Record<string, unknown>>, piece: Piece): Piece | string => {
  try {
    return worked(step, fill, piece).now;
  } catch (error) {
    if (error instanceof Problem) return error.code;
    throw error;
  }
};

/** The edges before and behind one in the outline. */
const neighboursOf = (piece: Piece, edge: string): [string, string] => {
  const names = walked(piece).map((each) => each.edge.name);
  const index = names.indexOf(edge);
  return [names.at(index - 1)!, names[(index + 1) % names.length]!];
};

test("a lining with a pleat at any edge is sewn to the same length at the edges next to it", () => {
  let lined = 0;
  fc.assert(
    fc.property(anySlash, fc.double({ min: 4, max: 40, noNaN: true }), ({ piece, hinge: { edge } }, pleat) => {
      const now = outcomeOf(lining, { shorter: 0, pleat, at: edge }, piece);
      if (typeof now === "string") return;
      lined += 1;
      expect(boundary(now)).toBeDefined();
      expect(areaOf(now)).toBeGreaterThan(areaOf(piece));
      for (const name of neighboursOf(piece, edge)) {
        expect(sewnLengthOf(now, name)).toBeCloseTo(lengthOf(piece, name), 4);
        // However it slants, it has grown by no less than the edge has moved, and half the pleat on each side.
        expect(lengthOf(now, name)).toBeGreaterThan(lengthOf(piece, name) + pleat / 2 - 1e-6);
      }
    }),
    { seed: 17, numRuns: 150 },
  );
  expect(lined).toBeGreaterThan(100);
});

test("the free edge of a facing ends on both neighbours, and is nowhere nearer to what is faced than its width", () => {
  let [faced, straight] = [0, 0];
  const refused = new Set<string>();
  fc.assert(
    fc.property(anySlash, fc.double({ min: 5, max: 120, noNaN: true }), ({ piece, hinge: { edge } }, width) => {
      const now = outcomeOf(facing, { edges: [edge], width }, piece);
      if (typeof now === "string") {
        refused.add(now);
        return;
      }
      faced += 1;
      const run = pathOf(piece, edge);
      const free = pathOf(now, "free-edge");
      const [before, after] = neighboursOf(piece, edge);
      expect(now.outline.map((part) => part.edge).sort()).toEqual([before, edge, after, "free-edge"].sort());
      expect(lengthOf(now, edge)).toBeCloseTo(lengthOf(piece, edge), 9);
      expect(nearest(pathOf(piece, before), startOf(free)).distance).toBeLessThan(0.01);
      expect(nearest(pathOf(piece, after), endOf(free)).distance).toBeLessThan(0.01);
      for (const share of [0, 0.1, 0.25, 0.5, 0.75, 0.9, 1]) {
        const spot = pointAt(free, share * pathLength(free));
        expect(nearest(run, spot).distance).toBeGreaterThan(width - 0.02);
      }
      if (!isStraight(run, 1e-9)) return;
      straight += 1;
      // A strip between parallel lines is half the sum of both times its width.
      const [p, q] = [pathOf(now, before), pathOf(now, after)];
      expect(isStraight(free, 1e-6)).toBe(true);
      if (isStraight(p, 1e-9) && isStraight(q, 1e-9))
        expect(areaOf(now)).toBeCloseTo(((pathLength(run) + pathLength(free)) / 2) * width, 3);
    }),
    { seed: 19, numRuns: 200 },
  );
  expect(faced).toBeGreaterThan(100);
  expect(straight).toBeGreaterThan(30);
  // Wide strips on pieces of all shapes do run past their neighbours.
  expect([...refused]).toEqual(["facing-ends"]);
});
