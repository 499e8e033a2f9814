// The fold symbol: a line along the edge with both ends turned to the edge, and the words that go with it. Both stay
// between the fold and the grain line, however narrow the piece is.
import { pathLength, pointAt } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, startOf, through } from "../geometry/path.ts";
import { between, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { angleOf, cos, sin } from "../geometry/trig.ts";
import { boundary, outward, type Walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { arrowhead } from "./arrowhead.ts";
import { baselineBeside, readable } from "./beside.ts";
import { type Line, room } from "./box.ts";
import type { Stroke, Text } from "./drawing.ts";
import { grainLine } from "./grain-line.ts";
import { boxOf, textWidth } from "./lettering.ts";

/** The bracket beside a fold edge of the outline, and PLACE ON FOLD inside it where there is room for these words. */
export const foldBracket = (piece: Piece, { path }: Walked): { strokes: Stroke[]; texts: Text[] } => {
  const along = unit(minus(endOf(path), startOf(path)));
  const inward = times(outward(piece, along), -1);
  const length = pathLength(path);
  const [first, last] = [pointAt(path, length * margin), pointAt(path, length * (1 - margin))];
  const deep = depthOf(piece, pointAt(path, length / 2), inward);
  const inset = times(inward, Math.min(usualInset, length * margin, deep * shareOfDepth));
  const [from, to] = [plus(first, inset), plus(last, inset)];
  const out = times(inward, -1);
  return {
    strokes: [
      { kind: "fold-bracket", path: through([first, from, to, last]) },
      { kind: "arrowhead", path: arrowhead(first, out, tipSize) },
      { kind: "arrowhead", path: arrowhead(last, out, tipSize) },
    ],
    texts: words(piece, between(from, to, 0.5), along, inward, length * (1 - 2 * margin)),
  };
};

// The bracket leaves this share of the fold free at each end, and stands this far in, mm; in a narrow piece this share of
// its depth, which leaves room for the words before the grain line at a third of it.
const margin = 0.2;
const usualInset = 12;
const shareOfDepth = 1 / 8;
const tipSize = 5;
const gap = 2;

// A line nearer than this, in mm, is the fold itself.
const onFold = 0.01;

/** How far it is from a spot of the fold to the other side of the piece, mm. */
const depthOf = (piece: Piece, from: Point, inward: Point): number => {
  const across = crossingsWithRay(boundary(piece) ?? [], from, inward).find(({ ahead }) => ahead > onFold);
  return across?.ahead ?? Number.POSITIVE_INFINITY;
};

// In one row where it goes, in more on a short fold; below 3 mm of capitals nobody can read it, and the label says it too.
const orders = [["PLACE ON FOLD"], ["PLACE", "ON FOLD"], ["PLACE", "ON", "FOLD"]] as const;
const sizes = [6, 5, 4.2];
const leading = 1.2;

const words = (piece: Piece, middle: Point, along: Point, inward: Point, space: number): Text[] => {
  const grain = grainLine(piece);
  const lines = [boundary(piece), grain].flatMap((path): Line[] => (path ? [flattened(path, keptClear)] : []));
  for (const rows of orders) {
    for (const size of sizes) {
      if (Math.max(...rows.map((row) => textWidth(row, size, "plain"))) > space) continue;
      const texts = inRows(rows, size, middle, along, inward);
      if (texts.every((text) => room(boxOf(text), lines) > 1)) return texts;
    }
  }
  return [];
};

// How near, in mm, the bent lines follow the outline.
const keptClear = 0.5;

const inRows = (rows: readonly string[], size: number, middle: Point, along: Point, inward: Point): Text[] => {
  const turn = readable(angleOf(along));
  // Further from the line is further down the text where it hangs below the line, and up where it stands above.
  const below = cos(turn) * inward.y - sin(turn) * inward.x > 0;
  return rows.map((text, index) => {
    const before = below ? index : rows.length - 1 - index;
    const at = baselineBeside(middle, inward, turn, size, gap + before * size * leading);
    return { text, at, size, turn, align: "middle", weight: "plain" };
  });
};
