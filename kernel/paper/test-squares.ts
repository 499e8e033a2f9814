// The two squares on the first page of every print: whoever measures them knows that the printer has not fitted the page.
import type { Stroke, Text } from "../drawing/drawing.ts";
import { rectangle } from "../drawing/scale-square.ts";
import type { Point } from "../geometry/point.ts";

export interface TestSquares {
  readonly strokes: readonly Stroke[];
  readonly texts: readonly Text[];
  /** How much room they take, mm. */
  readonly width: number;
  readonly height: number;
}

/** A square of 100 mm and one of 4 in from an upper left corner, the second beside the first or below it. */
export const testSquares = ({ x, y }: Point, second: "beside" | "below"): TestSquares => {
  const on = side.metric + apart;
  const squares = [
    { size: side.metric, words: "100 mm", at: { x, y } },
    { size: side.inches, words: "4 in", at: second === "beside" ? { x: x + on, y } : { x, y: y + on } },
  ];
  return {
    strokes: squares.map(({ size, at }) => ({ kind: "scale-square", path: rectangle(at, size, size) })),
    texts: squares.flatMap(({ size, words, at }) => {
      const middle = { x: at.x + size / 2, y: at.y + size / 2 };
      return [line(words, middle, 8), line("each side", { x: middle.x, y: middle.y + 7 }, 4)];
    }),
    width: second === "beside" ? on + side.inches : side.inches,
    height: second === "beside" ? side.inches : on + side.inches,
  };
};

// mm.
const side = { metric: 100, inches: 4 * 25.4 };
const apart = 6;

const line = (text: string, at: Point, size: number): Text => ({
  text,
  at,
  size,
  turn: 0,
  align: "middle",
  weight: "plain",
});
