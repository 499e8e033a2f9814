// The fold symbol: a line along the edge with both ends turned to the edge, and the words that go with it.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { endOf, startOf, through } from "../geometry/path.ts";
import { between, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { outward, type Walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { arrowhead } from "./arrowhead.ts";
import { baselineBeside, readable } from "./beside.ts";
import type { Stroke, Text } from "./drawing.ts";
import { textWidth } from "./lettering.ts";

/** The bracket beside a fold edge of the outline, and PLACE ON FOLD inside it. */
export const foldBracket = (piece: Piece, { edge, path }: Walked): { strokes: Stroke[]; texts: Text[] } => {
  const along = unit(minus(endOf(path), startOf(path)));
  const inward = times(outward(piece, along), -1);
  const length = pathLength(path);
  const [first, last] = [pointAt(path, length * margin), pointAt(path, length * (1 - margin))];
  const inset = times(inward, Math.min(usualInset, length * margin));
  const [from, to] = [plus(first, inset), plus(last, inset)];
  const out = times(inward, -1);
  const where = edge.drawnBy;
  return {
    strokes: [
      { kind: "fold-bracket", path: through([first, from, to, last]), where },
      { kind: "arrowhead", path: arrowhead(first, out, tipSize), where },
      { kind: "arrowhead", path: arrowhead(last, out, tipSize), where },
    ],
    texts: [words(between(from, to, 0.5), along, inward, length * (1 - 2 * margin))],
  };
};

// The bracket leaves this share of the fold free at each end, and stands this far in, mm.
const margin = 0.2;
const usualInset = 12;
const tipSize = 5;
const gap = 2;
const orders = "PLACE ON FOLD";
const usualSize = 6;

const words = (middle: Point, along: Point, inward: Point, space: number): Text => {
  const size = Math.min(usualSize, (usualSize * space) / textWidth(orders, usualSize, "plain"));
  const turn = readable(angleOf(along));
  return {
    text: orders,
    at: baselineBeside(middle, inward, turn, size, gap),
    size,
    turn,
    align: "middle",
    weight: "plain",
  };
};
