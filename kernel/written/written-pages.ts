// A written sheet on paper: on as few pages as will do, if in smaller letters, and in the largest of those that take no more; and
// about as much on each, so that none ends with a line or two. Nothing is cut off: what is too wide is broken, what is too long
// goes on overleaf.
import type { Drawing, Stroke, Text } from "../drawing/drawing.ts";
import { ascent, textWidth, wrapped } from "../drawing/lettering.ts";
import { mapped, straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { type PaperKind, papers } from "../paper/papers.ts";
import type { Entry, Table } from "./entry.ts";

/** The papers that a sheet can be written on: those that lie in any printer, upright. */
export const writtenPapers: readonly PaperKind[] = papers.filter(({ name }) => name === "a4" || name === "letter");

/** The pages of a sheet, each a drawing. */
export const writtenPages = (
  name: string,
  entries: readonly Entry[],
  paper: PaperKind = writtenPapers[0]!,
): Drawing[] => {
  const height = paper.height - 2 * margin - footer;
  const tries = bodySizes.map((body) => {
    const blocks = entries
      .flatMap((entry) => blocksOf(entry, body, paper.width - 2 * margin))
      .flatMap((block) => parted(block, body, height / 2));
    return { blocks, count: pagesOf(blocks, height).length };
  });
  const fewest = Math.min(...tries.map(({ count }) => count));
  const pages = balanced(tries.find(({ count }) => count === fewest)!.blocks, fewest, height);
  return pages.map((blocks, index) =>
    pageOf(name, blocks, `page ${index + 1} of ${pages.length}`, pages.length, paper),
  );
};

/** The same number of pages, none filled much further than it has to be: the last would else hold what little is left. */
const balanced = (blocks: readonly Block[], count: number, height: number): Block[][] => {
  if (count === 1) return pagesOf(blocks, height);
  let [low, high] = [0, height];
  // A quarter of a line is near enough.
  while (high - low > 1) {
    const middle = (low + high) / 2;
    if (pagesOf(blocks, middle).length > count) low = middle;
    else high = middle;
  }
  // A little more room, which leaves the last page three quarters as full, keeps sections on the page that they almost fit.
  return pagesOf(blocks, Math.min(height, high * (1 + 1 / (4 * count))));
};

const margin = 14;
// Room for the page's number under the text, mm.
const footer = 8;

// The size of the letters in sentences and tables, mm: 9.6, 8.7 and 7.7 points. Smaller ones are hard to read on a table.
const bodySizes = [3.4, 3.06, 2.72] as const;
const leading = 1.36;
const titleSize = 2.2;
const headingSize = 1.25;
const columnGap = 4;
const indent = 4;

/** Lines that stay together, from their upper edge on. */
interface Block {
  readonly height: number;
  readonly texts: readonly Text[];
  readonly strokes: readonly Stroke[];
  /** Never the last on a page. */
  readonly leads: boolean;
  /** The heading of a section. */
  readonly begins: boolean;
}

const blocksOf = (entry: Entry, body: number, width: number): Block[] => {
  switch (entry.kind) {
    case "title":
      return [paragraph(entry.text, body * titleSize, "bold", 0, width)];
    case "warning":
      return [paragraph(entry.text, body * headingSize, "bold", 0, width)];
    case "heading":
      return [ruledHeading(entry.text, body, width)];
    case "sentence":
      return [paragraph(entry.text, body, "plain", indent, width)];
    case "table":
      return tableBlocks(entry, body, width);
    case "picture":
      return [{ height: entry.height, texts: entry.texts, strokes: entry.strokes, leads: false, begins: false }];
  }
};

const textAt = (
  text: string,
  x: number,
  y: number,
  size: number,
  weight: Text["weight"],
  align: Text["align"] = "start",
): Text => ({ text, at: { x, y: y + ascent * size }, size, turn: 0, align, weight });

/** Lines after the first are set in, so that one sentence is told from the next. */
const paragraph = (text: string, size: number, weight: Text["weight"], setIn: number, width: number): Block => {
  const lines = wrapped(text, size, weight, width - setIn);
  return {
    height: lines.length * size * leading,
    texts: lines.map((line, index) => textAt(line, index === 0 ? 0 : setIn, index * size * leading, size, weight)),
    strokes: [],
    leads: false,
    begins: false,
  };
};

const ruledHeading = (text: string, body: number, width: number): Block => {
  const size = body * headingSize;
  const above = body;
  const lines = wrapped(text, size, "bold", width);
  const under = above + lines.length * size * leading;
  return {
    height: under + body * 0.5,
    texts: lines.map((line, index) => textAt(line, 0, above + index * size * leading, size, "bold")),
    strokes: [{ kind: "inner-line", path: straight({ x: 0, y: under }, { x: width, y: under }) }],
    leads: true,
    begins: true,
  };
};

const tableBlocks = ({ columns, rows }: Table, body: number, width: number): Block[] => {
  const heads = columns.map(({ head }) => head);
  const widths = fittedWidths(
    columns.map(({ head }, index) =>
      Math.max(textWidth(head, body, "bold"), ...rows.map((row) => textWidth(row[index]!, body, "plain"))),
    ),
    width,
  );
  const rowBlock = (cells: readonly string[], weight: Text["weight"]): Block => {
    const wraps = cells.map((cell, index) => wrapped(cell, body, weight, widths[index]!));
    const texts = wraps.flatMap((lines, index) => {
      const left = widths.slice(0, index).reduce((sum, each) => sum + each + columnGap, 0);
      const isAmount = columns[index]!.amount;
      const x = isAmount ? left + widths[index]! : left;
      return lines.map((line, at) => textAt(line, x, at * body * leading, body, weight, isAmount ? "end" : "start"));
    });
    const most = Math.max(1, ...wraps.map(({ length }) => length));
    return { height: most * body * leading, texts, strokes: [], leads: weight === "bold", begins: false };
  };
  const head = heads.some((text) => text !== "") ? [lowered(rowBlock(heads, "bold"), body * 0.5)] : [];
  return [...head, ...rows.map((row) => rowBlock(row, "plain"))];
};

/** A block with some room above it. */
const lowered = (block: Block, by: number): Block => ({
  ...block,
  height: block.height + by,
  texts: block.texts.map((text) => ({ ...text, at: { x: text.at.x, y: text.at.y + by } })),
});

/** Widths that fit the page beside one another: the widest give way first, all to the same width. */
const fittedWidths = (wanted: readonly number[], width: number): number[] => {
  let room = width - columnGap * (wanted.length - 1);
  let widest = Number.POSITIVE_INFINITY;
  const rising = [...wanted].sort((a, b) => a - b);
  for (const [index, each] of rising.entries()) {
    const share = room / (rising.length - index);
    if (each > share) {
      widest = share;
      break;
    }
    room -= each;
  }
  return wanted.map((each) => Math.min(each, widest));
};

/** Blocks page by page: a section that a page can hold stays on one, a block that leads goes over with what it leads. */
const pagesOf = (blocks: readonly Block[], height: number): Block[][] => {
  const pages: Block[][] = [[]];
  let used = 0;
  for (const [index, block] of blocks.entries()) {
    const section = block.begins ? sectionFrom(blocks, index) : 0;
    const needed = Math.max(block.height + ledBy(blocks, index), section <= height ? section : 0);
    if (used + needed > height && used > 0) {
      pages.push([]);
      used = 0;
    }
    pages[pages.length - 1]!.push(block);
    used += block.height;
  }
  return pages;
};

/** The height of what has to follow a block on its page. */
const ledBy = (blocks: readonly Block[], index: number): number => {
  const next = blocks[index + 1];
  return blocks[index]!.leads && next ? next.height + ledBy(blocks, index + 1) : 0;
};

/** The height of a section that begins with a block. */
const sectionFrom = (blocks: readonly Block[], index: number): number => {
  const next = blocks.findIndex(({ begins }, at) => at > index && begins);
  return blocks.slice(index, next < 0 ? undefined : next).reduce((sum, each) => sum + each.height, 0);
};

/** A block higher than so many mm in parts, each with the lines that begin in it. */
const parted = (block: Block, body: number, most: number): Block[] => {
  if (block.height <= most) return [block];
  const size = block.texts[0]?.size ?? body;
  const rows = Math.max(1, Math.floor(most / (size * leading)));
  const step = rows * size * leading;
  return Array.from({ length: Math.ceil(block.height / step) }, (_, index): Block => {
    const top = index * step;
    const texts = block.texts.filter(({ at }) => Math.floor((at.y - ascent * size + rounding) / step) === index);
    return {
      height: Math.min(step, block.height - top),
      texts: texts.map((text) => ({ ...text, at: { x: text.at.x, y: text.at.y - top } })),
      strokes: index === 0 ? block.strokes : [],
      leads: false,
      begins: block.begins && index === 0,
    };
  });
};

const rounding = 1e-6;

const pageOf = (
  name: string,
  blocks: readonly Block[],
  numbered: string,
  count: number,
  { width, height }: PaperKind,
): Drawing => {
  let y = margin;
  const strokes: Stroke[] = [];
  const texts: Text[] = [];
  for (const block of blocks) {
    const top = y;
    const placed = (p: Point): Point => ({ x: p.x + margin, y: p.y + top });
    for (const text of block.texts) texts.push({ ...text, at: placed(text.at) });
    for (const { kind, path } of block.strokes) strokes.push({ kind, path: mapped(path, placed) });
    y += block.height;
  }
  const page = count === 1 ? name : `${name}, ${numbered}`;
  const foot = wrapped(page, footSize, "plain", width - 2 * margin)[0] ?? "";
  texts.push(textAt(foot, margin, height - margin - footSize, footSize, "plain"));
  const words = texts.map(({ text }) => text).join(" ");
  const paper = { left: 0, top: 0, right: width, bottom: height };
  return { title: page, words: page, paper, groups: [{ of: "page", name: "page", words, strokes, texts }] };
};

const footSize = 2.72;
