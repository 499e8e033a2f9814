// Where the pieces lie on the table: rows from the top left. Each piece keeps a field that is somewhat larger than itself, so
// that a hem that swings a little wider moves neither the piece nor its neighbours.
import type { Bounds } from "../../kernel/geometry/bounds.ts";
import type { Point } from "../../kernel/geometry/point.ts";

/** For each piece, by the box around it, where its origin lies on the table, mm. */
export const laidOut = (boxes: readonly Bounds[]): Point[] => {
  const fields = boxes.map(fieldAround);
  const widths = fields.map(({ left, right }) => right - left);
  const area = fields.reduce((sum, { left, top, right, bottom }) => sum + (right - left) * (bottom - top), 0);
  const widest = Math.max(0, ...widths, Math.sqrt(area * widthToHeight));
  let [x, y, row] = [0, 0, 0];
  return fields.map(({ left, top, bottom }, index) => {
    const width = widths[index]!;
    if (x > 0 && x + width > widest) [x, y, row] = [0, y + row, 0];
    const origin = { x: x - left, y: y - top };
    x += width;
    row = Math.max(row, bottom - top);
    return origin;
  });
};

// The room around a piece is at least this, and each side of its field moves in steps of the second, mm.
const air = 20;
const stride = 60;

// A table is wider than it is deep.
const widthToHeight = 1.6;

const fieldAround = ({ left, top, right, bottom }: Bounds): Bounds => ({
  left: stride * Math.floor((left - air) / stride),
  top: stride * Math.floor((top - air) / stride),
  right: stride * Math.ceil((right + air) / stride),
  bottom: stride * Math.ceil((bottom + air) / stride),
});
