// A written sheet on A4: on as few pages as will do, if in smaller letters, and in the largest of those that take no more.
// Nothing is cut off: what is too wide is broken, what is too long goes on overleaf.
import type { Drawing, Stroke, Text } from "../drawing/drawing.ts";
import { ascent, textWidth, wrapped } from "../drawing/lettering.ts";
import { mapped, straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Entry, Table } from "./entry.ts";

/** The pages of a sheet, each a drawing. */
export const writtenPages = (name: string, entries: readonly Entry[]): Drawing[] => {
  const tries = bodySizes.map((body) =>
    pagesOf(
      entries.flatMap((entry) => blocksOf(entry, body)),
      body,
    ),
  );
  const fewest = Math.min(...tries.map(({ length }) => length));
  const pages = tries.find(({ length }) => length === fewest)!;
  return pages.map((blocks, index) => pageOf(name, blocks, index, pages.length));
};

// A4 after ISO 216:2007, mm.
const paper = { left: 0, top: 0, right: 210, bottom: 297 };
const margin = 14;
const width = paper.right - 2 * margin;
// Room for the page's number under the text.
const footer = 8;
const height = paper.bottom - 2 * margin - footer;

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

const blocksOf = (entry: Entry, body: number): Block[] => {
  switch (entry.kind) {
    case "title":
      return [paragraph(entry.text, body * titleSize, "bold", 0)];
    case "warning":
      return [paragraph(entry.text, body * headingSize, "bold", 0)];
    case "heading":
      return [ruledHeading(entry.text, body)];
    case "sentence":
      return [paragraph(entry.text, body, "plain", indent)];
    case "table":
      return tableBlocks(entry, body);
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
const paragraph = (text: string, size: number, weight: Text["weight"], setIn: number): Block => {
  const lines = wrapped(text, size, weight, width - setIn);
  return {
    height: lines.length * size * leading,
    texts: lines.map((line, index) => textAt(line, index === 0 ? 0 : setIn, index * size * leading, size, weight)),
    strokes: [],
    leads: false,
    begins: false,
  };
};

const ruledHeading = (text: string, body: number): Block => {
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

const tableBlocks = ({ columns, rows }: Table, body: number): Block[] => {
  const heads = columns.map(({ head }) => head);
  const widths = fittedWidths(
    columns.map(({ head }, index) =>
      Math.max(textWidth(head, body, "bold"), ...rows.map((row) => textWidth(row[index]!, body, "plain"))),
    ),
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
const fittedWidths = (wanted: readonly number[]): number[] => {
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
const pagesOf = (blocks: readonly Block[], body: number): Block[][] => {
  const pages: Block[][] = [[]];
  let used = 0;
  const all = blocks.flatMap((block) => parted(block, body));
  for (const [index, block] of all.entries()) {
    const section = block.begins ? sectionFrom(all, index) : 0;
    const needed = Math.max(block.height + ledBy(all, index), section <= height ? section : 0);
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

/** A block higher than half a page in parts of so many mm, each with the lines that begin in it. */
const parted = (block: Block, body: number): Block[] => {
  const most = height / 2;
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

const pageOf = (name: string, blocks: readonly Block[], index: number, count: number): Drawing => {
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
  const page = count === 1 ? name : `${name}, page ${index + 1} of ${count}`;
  const foot = wrapped(page, footSize, "plain", width)[0] ?? "";
  texts.push(textAt(foot, margin, paper.bottom - margin - footSize, footSize, "plain"));
  const words = texts.map(({ text }) => text).join(" ");
  return { title: page, words: page, paper, groups: [{ of: "title-block", name: "page", words, strokes, texts }] };
};

const footSize = 2.72;
