// A pattern on sheets that are large enough for its pieces, or on a roll that is cut off where the pattern ends. What is longer than
// a roll's longest page goes over several of them, with marks to join them by.
import type { Group, Text } from "../drawing/drawing.ts";
import { type Block, turnedBlock } from "./block.ts";
import { comesHere, joinedLength, joinLine, lap } from "./joins.ts";
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
  const isWhole = ({ width, height }: Block): boolean => fits(width, height, room) || fits(height, width, room);
  const isLong = (block: Block): boolean =>
    paper.use === "roll" && !isWhole(block) && Math.min(block.width, block.height) <= room.width;
  const tooLarge = blocks.filter((block) => !isWhole(block) && !isLong(block));
  if (tooLarge.length > 0) return { tooLarge };
  const sheets = [
    ...shelvesOf(
      blocks.filter((block) => !isLong(block)),
      room,
      title,
    ),
    ...blocks.filter(isLong).map(alongTheRoll),
  ];
  return {
    groups: sheets.flatMap((laid, index) => groupsOf(laid, { x: originX(index, paper), y: 0 })),
    pages: sheets.flatMap(({ height }, index) => {
      const used = paper.use === "roll" ? height : room.height;
      return pagesOf({ title, number: index + 1, of: sheets.length }, used, originX(index, paper), paper);
    }),
  };
};

interface Room {
  readonly width: number;
  readonly height: number;
}

const fits = (width: number, height: number, room: Room): boolean => width <= room.width && height <= room.height;

/** What goes onto sheets whole, the squares to measure by first. */
const shelvesOf = (blocks: readonly Block[], room: Room, title: string): Laid[] => {
  const sheets: Laid[] = [];
  let left = blocks;
  do {
    const laid = onShelves(left, { ...room, ...(sheets.length === 0 && { first: [squares(title)] }) });
    sheets.push(laid);
    // What did not fit lying across fits upright, or the other way round; a block alone on a sheet always does.
    left = laid.left;
  } while (left.length > 0 && sheets.length < blocks.length + 2);
  return sheets;
};

/** A block by itself, its length along the roll. */
const alongTheRoll = (block: Block): Laid => {
  const upright = block.width <= block.height ? block : turnedBlock(block);
  return { blocks: [{ block: upright, at: { x: 0, y: 0 } }], height: upright.height, left: [] };
};

/** A sheet among the others of a print. */
interface Numbered {
  readonly title: string;
  readonly number: number;
  readonly of: number;
}

/** The pages of one sheet of which so many mm are used: one, or as many as it takes, all of one length. */
const pagesOf = ({ title, number, of }: Numbered, used: number, from: number, paper: PaperKind): Page[] => {
  const most = paper.height - 2 * margin;
  const parts = used <= most ? 1 : Math.ceil((used - lap) / (most - lap));
  const length = joinedLength(used, parts);
  return Array.from({ length: parts }, (_, index): Page => {
    const top = index * (length - lap);
    const part = parts === 1 ? "" : `, part ${index + 1} of ${parts}`;
    const isFirst = index === 0;
    const isLast = index + 1 === parts;
    const join = margin + length - lap;
    return {
      name: `${number}${part}`,
      width: paper.width,
      height: length + 2 * margin,
      window: {
        // The margins show what runs into them, but not what another part has.
        of: {
          left: from - margin,
          top: isFirst ? -margin : top,
          right: from - margin + paper.width,
          bottom: isLast ? top + length + margin : top + length,
        },
        at: { x: 0, y: isFirst ? 0 : margin },
        scale: 1,
      },
      strokes: [...(isFirst ? [] : joinLine(margin, paper.width)), ...(isLast ? [] : joinLine(join, paper.width))],
      texts: [
        note(`${title}, ${number} of ${of}${part}, at 100 %`, margin - 3),
        ...(isLast ? [] : [comesHere(index + 2, join)]),
        ...(paper.use === "roll" && isLast && number < of
          ? [
              note(
                `Cut the roll here. No piece runs across the cut; ${number + 1} of ${of} has the others.`,
                margin + length + 6,
              ),
            ]
          : []),
      ],
    };
  });
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
