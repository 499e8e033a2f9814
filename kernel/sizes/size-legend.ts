// What the lines of a nest mean: a sample of each size's cutting line with its name.
import type { Group } from "../drawing/drawing.ts";
import { textWidth } from "../drawing/lettering.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** The legend with its top left corner at a place: a heading, and for each size a group of its own that goes with its lines. */
export const sizeLegend = (sizes: readonly string[], nestedAt: string, { x, y }: Point): Group[] => {
  const widest = Math.max(...sizes.map((name) => textWidth(name, textSize, "plain")));
  const rows = Math.ceil(sizes.length / Math.ceil(sizes.length / mostRows));
  const heading = {
    text: `Sizes, laid on one another at ${nestedAt}`,
    at: { x, y: y + textSize },
    size: textSize,
  } as const;
  return [
    {
      of: "size-legend",
      name: "size-legend",
      words: `Legend of the sizes ${sizes.join(", ")}, laid on one another at ${nestedAt}.`,
      strokes: [],
      texts: [{ ...heading, turn: 0, align: "start", weight: "plain" }],
    },
    ...sizes.map((size, index): Group => {
      const left = x + Math.floor(index / rows) * (sampleWidth + widest + columnGap);
      const middle = y + (index % rows) * rowHeight + firstRow;
      return {
        of: "size-legend",
        name: "size-legend",
        size,
        words: `The line of size ${size}.`,
        strokes: [
          { kind: "cutting-line", path: straight({ x: left, y: middle }, { x: left + sampleWidth, y: middle }) },
        ],
        texts: [
          {
            text: size,
            at: { x: left + sampleWidth + 4, y: middle + 1.8 },
            size: textSize,
            turn: 0,
            align: "start",
            weight: "plain",
          },
        ],
      };
    }),
  ];
};

const textSize = 5;
const rowHeight = 9.5;
const firstRow = 13;
const mostRows = 6;
// Long enough, in mm, that the longest pattern of dashes is seen twice.
const sampleWidth = 90;
const columnGap = 16;
