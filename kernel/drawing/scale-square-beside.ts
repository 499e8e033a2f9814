// Where the scale square stands on the paper of a single piece: in a corner that the piece leaves free, or else beside it.
import { flattened } from "../geometry/area.ts";
import type { Bounds } from "../geometry/bounds.ts";
import type { Point } from "../geometry/point.ts";
import type { Units } from "../working.ts";
import { type Box, rim, room } from "./box.ts";
import type { Group } from "./drawing.ts";
import { boxOf } from "./lettering.ts";
import { extentOf } from "./paper.ts";
import { scaleSquares, scaleSquareWords } from "./scale-square.ts";

/** The scale squares of a garment in these units, clear of a piece. */
export const scaleSquareBeside = (piece: Group, units: Units): Group => {
  const size = scaleSquares(units, { x: 0, y: 0 });
  const extent = extentOf([piece]);
  const lines = [
    ...piece.strokes.map(({ path }) => flattened(path, drawnWithin)),
    ...piece.texts.map((text) => rim(boxOf(text))),
  ];
  const free = corners(extent, size).find((corner) => room(boxAt(corner, size), lines) >= 1);
  const { strokes, texts } = scaleSquares(units, free ?? outside(extent, size));
  const words = scaleSquareWords(units);
  return {
    of: "scale-square",
    name: "scale-square",
    words: `Beside it ${words}, to measure before you cut.`,
    strokes,
    texts,
  };
};

interface Size {
  readonly width: number;
  readonly height: number;
}

// Between the square and the piece, mm.
const clear = 10;
const drawnWithin = 0.5;

const corners = ({ left, top, right, bottom }: Bounds, { width, height }: Size): Point[] => [
  { x: right - width, y: top },
  { x: left, y: top },
  { x: right - width, y: bottom - height },
  { x: left, y: bottom - height },
];

// It sticks out at the corner, so that no line over it means that it lies outside the piece.
const boxAt = ({ x, y }: Point, { width, height }: Size): Box => ({
  center: { x: x + width / 2, y: y + height / 2 },
  turn: 0,
  halfWidth: width / 2 + clear,
  halfHeight: height / 2 + clear,
});

/** Under the piece or to the right of it, whichever takes less paper. */
const outside = ({ left, top, right, bottom }: Bounds, { width, height }: Size): Point => {
  const under = (right - left) * (height + clear);
  const toTheRight = Math.max(bottom - top, height) * (width + clear);
  return under < toTheRight ? { x: left, y: bottom + clear } : { x: right + clear, y: top };
};
