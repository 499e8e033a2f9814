// walk: rolls one run of edges along another and marks matching notches on both.
import { optional, phrase } from "../../grammar/phrase.ts";
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { sameSpotTolerance } from "../geometry/point.ts";
import { Problem, Withheld } from "../problem.ts";
import { sewnLength, sewnUpTo } from "../sewn.ts";
import * as slot from "../slots.ts";
import { garmentStep } from "../step.ts";
import { lengthIn } from "../units.ts";
import type { EdgeValue } from "../value.ts";
import type { Garment, Notch, Piece, Units } from "../working.ts";

export const walk = garmentStep({
  name: "walk",
  since: "0.2",
  summary: "Walks one run of edges along another and sets a notch on both at each of the distances.",
  details: `The edges of each list are laid end to end as written, each as it was drafted (\`turned(EDGE)\` otherwise), and both start together, as in a \`seam\`.
Distances are measured from there along the sewn line, so darts and pleats on the way count as shut. Each notch lies equally far along both: no ease
between the start and the last notch. The words tell how much the two differ at their ends. By custom notches stand 20 to 40 cm apart on long seams, clear of the corners by 2 cm,
and not evenly, so that no piece can be sewn in upside down.`,
  phrase: [
    phrase`walk ${slot.edges("first", "the edges of one side, in order")} with ${slot.edges("second", "the edges of the other side, in order")}
      at ${slot.lengths("distances", "how far from the start")} ${optional`double`}`,
  ],
  example: `chalkline 1
units cm
piece front {
  line top  = (0, 0) to (30 cm, 0)
  line side = (30 cm, 0) to (30 cm, 60 cm)
  line hem  = (0, 60 cm) to (30 cm, 60 cm)
  line edge = (0, 0) to (0, 60 cm)
  outline edge, top, side, hem
}
piece back = front { }
walk front.side with back.side at 16 cm, 38 cm
seam front.side with back.side`,
  work(fill, garment, { where, units }) {
    const { first, second, distances } = fill;
    const double = "double" in fill;
    for (const [value, edge] of first.entries()) refuseInner(edge, garment, { slot: "first", value });
    for (const [value, edge] of second.entries()) refuseInner(edge, garment, { slot: "second", value });
    const mark = (now: Garment, edges: readonly EdgeValue[]): Garment =>
      distances.reduce((marked, at) => withNotch(marked, spotOn(edges, at, units), double, where), now);
    const now = mark(mark(garment, first), second);
    const off = sewnLengthOf(first) - sewnLengthOf(second);
    const ends =
      Math.abs(off) < tellable
        ? "their ends meet"
        : `at the end ${listed(off > 0 ? first : second)} is ${lengthIn(Math.abs(off), units)} longer`;
    const notches = distances.length === 1 ? "a notch" : `${distances.length} notches`;
    return { now, words: `walked ${listed(first)} along ${listed(second)}, ${notches} on each; ${ends}` };
  },
});

// In the words of `seam`, which would refuse the same edges below.
const refuseInner = (
  { of }: EdgeValue,
  garment: Garment,
  at: { readonly slot: string; readonly value: number },
): void => {
  const piece = of && garment.pieces.get(of.piece);
  if (!of || !piece) return;
  // A piece with a failed line may have no outline yet, and its own finding has said why.
  if (piece.doubtful && piece.outline.length === 0) throw new Withheld();
  // A slit is a line inside the piece, and both its sides are cut edges.
  const isSlit = piece.edges.get(of.edge)?.role === "opening";
  if (!isSlit && !piece.outline.some(({ edge }) => edge === of.edge)) {
    throw new Problem("walk-inner", `${of.piece}.${of.edge} is not part of an outline, and cannot be sewn.`, at);
  }
};

// A difference under this many mm reads as none.
const tellable = 0.05;

const listed = (edges: readonly EdgeValue[]): string =>
  edges.map(({ of }) => (of ? `${of.piece}.${of.edge}` : "a line")).join(", ");

const sewnLengthOf = (edges: readonly EdgeValue[]): number =>
  edges.reduce((sum, { path, taken }) => sum + sewnLength(path, taken), 0);

interface SpotOnEdge {
  readonly edge: EdgeValue;
  /** As cut, mm from the start of the edge. */
  readonly at: number;
}

const spotOn = (edges: readonly EdgeValue[], distance: number, units: Units): SpotOnEdge => {
  let left = distance;
  for (const edge of edges) {
    const length = sewnLength(edge.path, edge.taken);
    if (left >= 0 && left <= length + sameSpotTolerance) return { edge, at: cutAt(edge, Math.min(left, length)) };
    left -= length;
  }
  throw new Problem(
    "walk-beyond",
    `A notch at ${lengthIn(distance, units)} lies beyond ${listed(edges)}, which ${edges.length > 1 ? "are" : "is"} sewn to ${lengthIn(sewnLengthOf(edges), units)}.`,
    { hint: "Take a distance between 0 and that." },
  );
};

/** How far along the edge as cut a spot of the sewn line lies: sewing only ever shortens, so it is found by halving. */
const cutAt = ({ path, taken }: EdgeValue, sewn: number): number => {
  if (taken.length === 0) return sewn;
  let [low, high] = [0, pathLength(path)];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (sewnUpTo(path, taken, middle) < sewn) low = middle;
    else high = middle;
  }
  return high;
};

const withNotch = (garment: Garment, { edge, at }: SpotOnEdge, double: boolean, drawnBy: Notch["drawnBy"]): Garment => {
  const piece: Piece | undefined = edge.of && garment.pieces.get(edge.of.piece);
  if (!edge.of || !piece) {
    throw new Problem(
      "walk-foreign",
      `${edge.of ? `${edge.of.piece} is not a piece` : "A line between two places is no edge"} of this garment.`,
      {
        hint: edge.of
          ? `Copy it in first: piece ${edge.of.piece.split(".").at(-1)} = ${edge.of.piece} { }.`
          : "Name edges of pieces.",
      },
    );
  }
  const notch: Notch = { edge: edge.of.edge, point: pointAt(edge.path, at), double, drawnBy };
  return {
    ...garment,
    pieces: new Map(garment.pieces).set(piece.name, { ...piece, notches: [...piece.notches, notch] }),
  };
};
