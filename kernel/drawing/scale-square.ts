// The squares that a cutter lays the tape against before cutting: one of 50 mm, and beside it one of 2 inches where the
// garment is measured in inches.
import { through } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Units } from "../working.ts";
import type { Stroke, Text } from "./drawing.ts";

/** The squares in a row whose top left corner is a given place, and how much room they take, mm. */
export interface ScaleSquares {
  readonly strokes: readonly Stroke[];
  readonly texts: readonly Text[];
  readonly width: number;
  readonly height: number;
}

/** The scale squares of a garment in these units, the top left corner at a given place. */
export const scaleSquares = (units: Units, { x, y }: Point): ScaleSquares => {
  const squares = units === "in" ? [metric, imperial] : [metric];
  const drawn = squares.map((square, index) => squareAt(square, { x: x + index * (metric.side + apart), y }));
  const sides = squares.map(({ side }) => side);
  return {
    strokes: drawn.flatMap(({ strokes }) => strokes),
    texts: drawn.flatMap(({ texts }) => texts),
    width: sides.reduce((sum, side) => sum + side, apart * (squares.length - 1)),
    height: Math.max(...sides),
  };
};

/** What the squares are, in words. */
export const scaleSquareWords = (units: Units): string =>
  units === "in" ? "a scale square of 50 by 50 mm and one of 2 by 2 inches" : "a scale square of 50 by 50 mm";

interface Square {
  readonly side: number;
  readonly words: string;
}

// Small enough for any sheet, large enough to measure within half of one in a hundred with a tape.
const metric: Square = { side: 50, words: "50 x 50 mm" };
const imperial: Square = { side: 2 * 25.4, words: "2 x 2 in" };
const apart = 8;

const squareAt = ({ side, words }: Square, { x, y }: Point): { strokes: Stroke[]; texts: Text[] } => {
  const middle = { x: x + side / 2, y: y + side / 2 };
  const said = (text: string, down: number, size: number): Text => ({
    text,
    at: { x: middle.x, y: middle.y + down },
    size,
    turn: 0,
    align: "middle",
    weight: "plain",
  });
  return {
    strokes: [{ kind: "scale-square", path: rectangle({ x, y }, side, side) }],
    texts: [said(words, 0, 5.5), said("measure before", 8, 4), said("you cut", 13, 4)],
  };
};

/** A rectangle from its top left corner round and back to it. */
export const rectangle = ({ x, y }: Point, width: number, height: number) =>
  through([
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
    { x, y },
  ]);
