// How wide the allowance of each edge is, written small in the band between sewing line and cutting line.

import { allowanceWidth } from "../cloth/allowances/cutting-line.ts";
import { directionAt, pathLength, pointAt } from "../geometry/arc-length.ts";
import { plus, times } from "../geometry/point.ts";
import { angleOf } from "../geometry/trig.ts";
import { boundary, outward, type Walked, walked } from "../outline.ts";
import { lengthIn } from "../units.ts";
import type { Piece, Units } from "../working.ts";
import { readable } from "./beside.ts";
import { inTurned, type Line, rim, room } from "./box.ts";
import type { Text } from "./drawing.ts";
import { ascent, boxOf, descent, textWidth } from "./lettering.ts";

/** The widths by their edges' names, where there is room for them clear of these lines and of each other. */
export const allowanceWidths = (piece: Piece, units: Units, lines: readonly Line[]): ReadonlyMap<string, Text> => {
  const written = new Map<string, Text>();
  if (!boundary(piece)) return written;
  for (const part of walked(piece)) {
    const width = allowanceWidth(piece, part);
    if (width === 0) continue;
    const text = widthAlong(piece, part, width, lengthIn(width, units), [...lines, ...rims(written.values())]);
    if (text) written.set(part.edge.name, text);
  }
  return written;
};

const rims = (texts: Iterable<Text>): Line[] => [...texts].map((text) => rim(boxOf(text)));

// Sizes tried, mm, and places along the edge, which keep clear of its middle, where notches and fold lines are.
const sizes = [4.2, 3.6];
const shares = [0.4, 0.6, 0.3, 0.7, 0.5, 0.2, 0.8, 0.12, 0.88];

// The white around letters reaches this far, mm.
const halo = 0.6;

const widthAlong = (
  piece: Piece,
  { path }: Walked,
  width: number,
  words: string,
  taken: readonly Line[],
): Text | undefined => {
  const length = pathLength(path);
  for (const size of sizes) {
    if (size + 2 * halo > width || textWidth(words, size, "plain") > length) continue;
    for (const share of shares) {
      const at = share * length;
      const travel = directionAt(path, at);
      const middle = plus(pointAt(path, at), times(outward(piece, travel), width / 2));
      const turn = readable(angleOf(travel));
      const baseline = inTurned(middle, turn, { x: 0, y: ((ascent - descent) / 2) * size });
      const text: Text = { text: words, at: baseline, size, turn, align: "middle", weight: "plain" };
      const box = boxOf(text);
      const clear = { ...box, halfWidth: box.halfWidth + halo, halfHeight: box.halfHeight + halo };
      if (room(clear, taken) > 1) return text;
    }
  }
  return undefined;
};
