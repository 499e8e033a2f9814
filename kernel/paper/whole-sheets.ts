// A pattern on sheets that are large enough for its pieces, or on a roll that is cut off where the pattern ends.
import type { Group, Text } from "../drawing/drawing.ts";
import type { Block } from "./block.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { groupsOf, type Laid, onShelves } from "./shelves.ts";
import { testSquares } from "./test-squares.ts";

/** The groups spread out and the pages; instead of them, the blocks that no sheet takes. */
export const wholeSheets = (
  blocks: readonly Block[],
  paper: PaperKind,
  title: string,
): { readonly groups: readonly Group[]; readonly pages: readonly Page[] } | { readonly tooLarge: readonly Block[] } => {
  const room = { width: paper.width - 2 * margin, height: paper.height - 2 * margin };
  const tooLarge = blocks.filter(({ width, height }) => !fits(width, height, room) && !fits(height, width, room));
  if (tooLarge.length > 0) return { tooLarge };
  const sheets: Laid[] = [];
  let left = blocks;
  do {
    const laid = onShelves(left, { ...room, ...(sheets.length === 0 && { first: [squares(title)] }) });
    sheets.push(laid);
    // What did not fit lying across fits upright, or the other way round; a block alone on a sheet always does.
    left = laid.left;
  } while (left.length > 0 && sheets.length < blocks.length + 2);
  return {
    groups: sheets.flatMap((laid, index) => groupsOf(laid, { x: originX(index, paper), y: 0 })),
    pages: sheets.map(({ height }, index): Page => {
      const used = paper.use === "roll" ? height : room.height;
      const from = originX(index, paper);
      return {
        name: String(index + 1),
        width: paper.width,
        height: used + 2 * margin,
        window: {
          of: { left: from - margin, top: -margin, right: from + room.width + margin, bottom: used + margin },
          at: { x: 0, y: 0 },
          scale: 1,
        },
        strokes: [],
        texts: [
          note(`${title}, ${index + 1} of ${sheets.length}, at 100 %`, margin - 3),
          ...(paper.use === "roll" && index + 1 < sheets.length
            ? [
                note(
                  `Cut the roll here. No piece runs across the cut; ${index + 2} of ${sheets.length} has the others.`,
                  margin + used + 6,
                ),
              ]
            : []),
        ],
      };
    }),
  };
};

/** A line of words along the left margin. */
const note = (text: string, y: number): Text => ({
  text,
  at: { x: margin, y },
  size: 4,
  turn: 0,
  align: "start",
  weight: "plain",
});

const fits = (width: number, height: number, room: { readonly width: number; readonly height: number }): boolean =>
  width <= room.width && height <= room.height;

/** Sheets lie side by side on the spread pattern, well apart. */
const originX = (index: number, { width }: PaperKind): number => index * (width + 100);

const squares = (title: string): Block => {
  const { strokes, texts, width, height } = testSquares({ x: 0, y: 0 }, "beside");
  const group: Group = {
    of: "scale-square",
    name: "squares",
    words: `Squares to measure ${title} by.`,
    strokes,
    texts,
  };
  return { name: "squares", width, height, groups: [group] };
};
