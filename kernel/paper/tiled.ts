// A pattern on tiles: small pages that are trimmed and put together, rows 1, 2, 3 … and columns a, b, c …, with a map first.
// Pages on which nothing would be printed are left out; where one would look for them, the pages around say so.

import { rim } from "../drawing/box.ts";
import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { boxOf } from "../drawing/lettering.ts";
import { rectangle } from "../drawing/scale-square.ts";
import { flattened } from "../geometry/area.ts";
import { straight } from "../geometry/path.ts";
import { between, distance, type Point } from "../geometry/point.ts";
import { type Block, turnedBlock } from "./block.ts";
import { type Cell, type Grid, originOf, type Tile, tileName } from "./grid.ts";
import { leftOut } from "./left-out.ts";
import { fitsUnderMap, mapPage, type Tiles } from "./map-page.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { groupsOf, type Laid, onShelves } from "./shelves.ts";

/** The groups spread out, and the pages: the map, then the tiles row by row; instead of them, the blocks that take too many pages. */
export const tiledPages = (
  blocks: readonly Block[],
  paper: PaperKind,
  { title, titleBlock }: { readonly title: string; readonly titleBlock: Block },
): { readonly groups: readonly Group[]; readonly pages: readonly Page[] } | { readonly tooLarge: readonly Block[] } => {
  const tooLarge = tooManyPages(blocks, paper);
  if (tooLarge.length > 0) return { tooLarge };
  // The title block stands under the map where there is room for it, and so takes no page of its own.
  const isOnMap = fitsUnderMap(titleBlock, paper);
  const { grid, laid } = fewestPages(isOnMap ? blocks : [...blocks, titleBlock], paper);
  const groups = groupsOf(laid, { x: inside, y: inside });
  const tiles = tilesOf(groups, grid);
  const empty = leftOut(tiles);
  return {
    groups,
    pages: [
      mapPage(groups, { tiles, empty }, grid, paper, { title, ...(isOnMap && { titleBlock }) }),
      ...tiles.map((tile) => tilePage(tile, { tiles, empty }, grid, title)),
    ],
  };
};

// How far a page laps over the next, mm: room for glue, and for a pair of scissors that strays.
const lap = 10;

// How far inside the outermost trim lines the pattern begins, mm: no cutting line is trimmed away.
const inside = 5;

// Nobody puts together more pages than these, and every layout that is tried is bounded by them too.
const mostPages = 500;

/** The blocks that take too many pages by themselves, or all of them where they do so together. */
const tooManyPages = (blocks: readonly Block[], { width, height }: PaperKind): readonly Block[] => {
  const { step } = gridOf(width, height, 1);
  const pagesOf = (block: Block): number => (block.width * block.height) / (step.width * step.height);
  // A belt as long as a street has hardly any area, and yet takes a page at every step of its length.
  const stepsOf = (block: Block): number => Math.max(block.width, block.height) / Math.max(step.width, step.height);
  const alone = blocks.filter((block) => pagesOf(block) > mostPages || stepsOf(block) > mostPages);
  if (alone.length > 0) return alone;
  return blocks.reduce((sum, block) => sum + pagesOf(block), 0) > mostPages ? blocks : [];
};

const leastTried = 16;

const gridOf = (width: number, height: number, columns: number): Grid => {
  const printed = { width: width - 2 * margin, height: height - 2 * margin };
  return {
    paper: { width, height },
    printed,
    step: { width: printed.width - lap, height: printed.height - lap },
    columns,
  };
};

/** Upright or lying, as many columns as give the fewest pages, and blocks turned a quarter where that saves pages. */
const fewestPages = (blocks: readonly Block[], paper: PaperKind): { readonly grid: Grid; readonly laid: Laid } => {
  const narrowest = Math.max(0, ...blocks.map(({ width, height }) => Math.min(width, height)));
  const most = Math.max(
    leastTried,
    Math.ceil((narrowest + 2 * inside) / gridOf(paper.width, paper.height, 1).step.width),
  );
  const grids = Array.from({ length: most }, (_, index) => index + 1).flatMap((columns) => [
    gridOf(paper.width, paper.height, columns),
    gridOf(paper.height, paper.width, columns),
  ]);
  const quarters = blocks.map(turnedBlock);
  const tried = grids.flatMap((grid) => turnedToSave(blocks, quarters, grid) ?? []);
  // The last grid is as wide as the widest piece, so that there is a best one.
  // Of two with as many pages, the one with less turned, whose lettering reads one way; then the one nearer to a square: long
  // strips are tedious to put together.
  const unlike = ({ grid, laid }: Trial): number => Math.abs(grid.columns * grid.step.width - Math.max(laid.height, 1));
  return tried.sort((a, b) => a.pages - b.pages || a.turned - b.turned || unlike(a) - unlike(b))[0]!;
};

/** A layout that was tried: how many pages it takes, and how many blocks were turned for it. */
interface Trial {
  readonly grid: Grid;
  readonly laid: Laid;
  readonly pages: number;
  readonly turned: number;
}

/** The blocks on a grid, each turned in its turn and left so where that saves a page; undefined where one is too wide. */
const turnedToSave = (blocks: readonly Block[], quarters: readonly Block[], grid: Grid): Trial | undefined => {
  const width = (grid.columns - 1) * grid.step.width + grid.printed.width - 2 * inside;
  const trial = (lying: readonly Block[], turned: number): Trial => {
    const laid = onShelves(lying, { width, height: Infinity });
    return { grid, laid, pages: pagesUnder(laid, grid), turned };
  };
  let [lying, best] = [blocks, trial(blocks, 0)];
  if (best.laid.left.length > 0) return undefined;
  for (const [index, quarter] of quarters.entries()) {
    if (quarter.width > width) continue;
    const other = lying.with(index, quarter);
    const next = trial(other, best.turned + 1);
    if (next.pages < best.pages) [lying, best] = [other, next];
  }
  return best;
};

/** How many tiles lie under the boxes of the blocks. */
const pagesUnder = ({ blocks }: Laid, { step }: Grid): number =>
  new Set(
    blocks.flatMap(({ block, at }) =>
      cellsUnder(
        { x: at.x + inside, y: at.y + inside },
        { x: at.x + inside + block.width, y: at.y + inside + block.height },
        step,
      ).map(({ row, column }) => `${row} ${column}`),
    ),
  ).size;

const cellsUnder = (
  from: Point,
  to: Point,
  step: Grid["step"],
): { readonly row: number; readonly column: number }[] => {
  const cells: { row: number; column: number }[] = [];
  for (let row = Math.floor(from.y / step.height); row <= Math.floor(to.y / step.height); row += 1) {
    for (let column = Math.floor(from.x / step.width); column <= Math.floor(to.x / step.width); column += 1)
      cells.push({ row, column });
  }
  return cells;
};

/** The tiles that a line or a word comes to, row by row. */
const tilesOf = (groups: readonly Group[], { step, columns }: Grid): Tile[] => {
  const found = new Map<number, { readonly row: number; readonly column: number; readonly pieces: Set<string> }>();
  const mark = (name: string, from: Point, to: Point): void => {
    const [low, high] = [
      { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y) },
      { x: Math.max(from.x, to.x), y: Math.max(from.y, to.y) },
    ];
    for (const cell of cellsUnder(low, high, step)) {
      // What ends just on the last lap still lies on the last column.
      const column = Math.max(0, Math.min(columns - 1, cell.column));
      const row = Math.max(0, cell.row);
      const tile = found.get(row * columns + column) ?? { row, column, pieces: new Set() };
      found.set(row * columns + column, tile);
      tile.pieces.add(name);
    }
  };
  for (const { of, name, strokes, texts } of groups) {
    const called = of === "piece" ? name : "";
    for (const { path } of strokes) {
      const line = flattened(path, 0.5);
      line.slice(1).forEach((to, index) => {
        const from = line[index]!;
        const parts = Math.max(1, Math.ceil(distance(from, to) / 10));
        for (let part = 0; part < parts; part += 1)
          mark(called, between(from, to, part / parts), between(from, to, (part + 1) / parts));
      });
    }
    for (const text of texts) {
      const corners = rim(boxOf(text));
      for (const corner of corners) mark(called, corner, corners[0]!);
    }
  }
  return [...found.entries()]
    .sort(([a], [b]) => a - b)
    .map(([, { row, column, pieces }]) => ({
      row,
      column,
      name: tileName({ row, column }),
      pieces: [...pieces].filter((piece) => piece !== ""),
    }));
};

const tilePage = (tile: Tile, all: Tiles, grid: Grid, title: string): Page => {
  const { paper, printed, step } = grid;
  const of = originOf(tile, grid);
  const corners = [
    { x: margin, y: margin },
    { x: margin + step.width, y: margin },
    { x: margin, y: margin + step.height },
    { x: margin + step.width, y: margin + step.height },
  ];
  return {
    name: tile.name,
    ...paper,
    window: {
      of: { left: of.x, top: of.y, right: of.x + printed.width, bottom: of.y + printed.height },
      at: { x: margin, y: margin },
      scale: 1,
    },
    strokes: [
      { kind: "frame", path: rectangle({ x: margin, y: margin }, printed.width, printed.height) },
      // Where the upper left corner of the next page comes to lie.
      {
        kind: "frame",
        path: straight({ x: margin + step.width, y: margin }, { x: margin + step.width, y: margin + printed.height }),
      },
      {
        kind: "frame",
        path: straight({ x: margin, y: margin + step.height }, { x: margin + printed.width, y: margin + step.height }),
      },
      ...corners.flatMap(registerMark),
    ],
    texts: [
      note(
        [tile.name, ...(tile.pieces.length > 0 ? [tile.pieces.join(", ")] : []), `${title}, at 100 %`].join("   "),
        { x: margin + 8, y: margin + step.height + 6.5 },
        4,
        0,
      ),
      ...comesAt(all, { row: tile.row, column: tile.column + 1 }).map((words) =>
        note(words, { x: margin + step.width + 6.5, y: margin + step.height - 8 }, 4, -Math.PI / 2),
      ),
      ...comesAt(all, { row: tile.row + 1, column: tile.column }).map((words) =>
        note(words, { x: margin + step.width - belowWidth, y: margin + step.height + 6.5 }, 4, 0),
      ),
    ],
  };
};

/** What is to be laid at a place, in words; nothing where the pattern has ended. */
const comesAt = ({ tiles, empty }: Tiles, place: Cell): string[] => {
  const isThere = ({ row, column }: Cell): boolean => row === place.row && column === place.column;
  if (tiles.some(isThere)) return [`${tileName(place)} comes here`];
  return empty.some(isThere) ? [`${tileName(place)} is empty, left out`] : [];
};

// Room for those words at the right end of the strip under a page, mm.
const belowWidth = 46;

/** A cross that meets the crosses of the pages around it. */
const registerMark = ({ x, y }: Point): Stroke[] => [
  { kind: "frame", path: straight({ x: x - 5, y }, { x: x + 5, y }) },
  { kind: "frame", path: straight({ x, y: y - 5 }, { x, y: y + 5 }) },
];

const note = (text: string, at: Point, size: number, turn: number): Text => ({
  text,
  at,
  size,
  turn,
  align: "start",
  weight: "plain",
});
