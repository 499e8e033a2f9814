// A pattern on tiles: small pages that are trimmed and put together, rows 1, 2, 3 … and columns a, b, c …, with a map first. (A
// page called A4 would be taken for its paper.)
// Pages on which nothing would be printed are left out.

import { rim } from "../drawing/box.ts";
import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { boxOf } from "../drawing/lettering.ts";
import { rectangle } from "../drawing/scale-square.ts";
import { flattened } from "../geometry/area.ts";
import { straight } from "../geometry/path.ts";
import { between, distance, type Point } from "../geometry/point.ts";
import type { Block } from "./block.ts";
import { type Grid, originOf, type Tile } from "./grid.ts";
import { fitsUnderMap, mapPage } from "./map-page.ts";
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
  return {
    groups,
    pages: [
      mapPage(groups, tiles, grid, paper, { title, ...(isOnMap && { titleBlock }) }),
      ...tiles.map((tile) => tilePage(tile, tiles, grid, title)),
    ],
  };
};

/** A column as letters: a to z, then aa, ab … */
export const columnName = (column: number): string =>
  column < 26
    ? String.fromCharCode(97 + column)
    : `${columnName(Math.floor(column / 26) - 1)}${columnName(column % 26)}`;

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

/** Upright or lying, as many columns as give the fewest pages. */
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
  const tried = grids.flatMap((grid) => {
    const width = (grid.columns - 1) * grid.step.width + grid.printed.width - 2 * inside;
    const laid = onShelves(blocks, { width, height: Infinity });
    return laid.left.length > 0 ? [] : [{ grid, laid, pages: pagesUnder(laid, grid) }];
  });
  // The last grid is as wide as the widest piece, so that there is a best one.
  // Of two with as many pages, the one nearer to a square: long strips are tedious to put together.
  const unlike = ({ grid, laid }: (typeof tried)[number]): number =>
    Math.abs(grid.columns * grid.step.width - Math.max(laid.height, 1));
  return tried.sort((a, b) => a.pages - b.pages || unlike(a) - unlike(b))[0]!;
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
      name: `${row + 1}${columnName(column)}`,
      pieces: [...pieces].filter((piece) => piece !== ""),
    }));
};

const tilePage = (tile: Tile, tiles: readonly Tile[], grid: Grid, title: string): Page => {
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
      ...neighbour(tiles, tile, 0, 1).map((name) =>
        note(`${name} comes here`, { x: margin + step.width + 6.5, y: margin + step.height - 8 }, 4, -Math.PI / 2),
      ),
      ...neighbour(tiles, tile, 1, 0).map((name) =>
        note(`${name} comes here`, { x: margin + step.width - 32, y: margin + step.height + 6.5 }, 4, 0),
      ),
    ],
  };
};

const neighbour = (tiles: readonly Tile[], { row, column }: Tile, down: number, right: number): string[] =>
  tiles.flatMap((tile) => (tile.row === row + down && tile.column === column + right ? [tile.name] : []));

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
