// What the lines of a nest mean: a sample of each size's cutting line with its name, and where the sizes of each piece lie on one
// another.
import type { Group } from "../drawing/drawing.ts";
import { textWidth, wrapped } from "../drawing/lettering.ts";
import { columnWidth } from "../drawing/title-column.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Nest } from "./nest-groups.ts";

/** The legend with its top left corner at a place: a heading, and for each size a group of its own that goes with its lines. */
export const sizeLegend = (
  sizes: readonly string[],
  nests: readonly Nest[],
  { x, y }: Point,
  {
    textSize,
    lineHeight,
    rowHeight,
    firstRow,
    sampleWidth,
    columnGap,
    mostRows,
    widestHeading,
  }: LegendForm = wideLegend,
): Group[] => {
  const widest = Math.max(...sizes.map((name) => textWidth(name, textSize, "plain")));
  const rows = Math.ceil(sizes.length / Math.ceil(sizes.length / mostRows));
  const said = laidInWords(nests);
  const heading = said.flatMap((words) => wrapped(words, textSize, "plain", widestHeading));
  const under = y + (heading.length - 1) * lineHeight;
  return [
    {
      of: "size-legend",
      name: "size-legend",
      words: `Legend of the sizes ${sizes.join(", ")}. ${said.join("; ")}.`,
      strokes: [],
      texts: heading.map((text, index) => ({
        text,
        at: { x, y: y + textSize + index * lineHeight },
        size: textSize,
        turn: 0,
        align: "start",
        weight: "plain",
      })),
    },
    ...sizes.map((size, index): Group => {
      const left = x + Math.floor(index / rows) * (sampleWidth + widest + columnGap);
      const middle = under + (index % rows) * rowHeight + firstRow;
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
            at: { x: left + sampleWidth + 4, y: middle + textSize * 0.36 },
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

/** Where the sizes lie, one sentence where that is the same for every piece; else a line for each way with its pieces. */
const laidInWords = (nests: readonly Nest[]): string[] => {
  const ways = new Map<string, string[]>();
  for (const { name, about } of nests) {
    const way = about ?? same;
    ways.set(way, [...(ways.get(way) ?? []), name]);
  }
  const [only] = ways.keys();
  if (ways.size === 1 && only !== same) return [`Sizes, laid on one another ${only}`];
  return ["Sizes, laid on one another", ...[...ways].map(([way, names]) => `${names.join(", ")}: ${way}`)];
};

const same = "the same in every size";

/** How a legend is set; lengths in mm. */
export interface LegendForm {
  readonly textSize: number;
  readonly lineHeight: number;
  readonly rowHeight: number;
  /** From the last line of the heading to the first sample. */
  readonly firstRow: number;
  readonly sampleWidth: number;
  readonly columnGap: number;
  readonly mostRows: number;
  /** Longer lines than this would make the legend wider than its samples. */
  readonly widestHeading: number;
}

// Samples are so long that the longest pattern of dashes is seen twice.
const wideLegend: LegendForm = {
  textSize: 5,
  lineHeight: 6.5,
  rowHeight: 9.5,
  firstRow: 13,
  sampleWidth: 90,
  columnGap: 16,
  mostRows: 6,
  widestHeading: 210,
};

/** For a narrow column: one sample under the other. */
export const narrowLegend: LegendForm = {
  textSize: 3.6,
  lineHeight: 5,
  rowHeight: 6.2,
  firstRow: 9,
  sampleWidth: 60,
  columnGap: 0,
  mostRows: Number.POSITIVE_INFINITY,
  widestHeading: columnWidth,
};
