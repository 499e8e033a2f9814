// A pattern on tiles: small pages that are trimmed and put together, rows 1, 2, 3 … and columns a, b, c …, with a map first.
// Pages on which nothing would be printed are left out; where one would look for them, the pages around say so.

import { limits } from "../../grammar/limits.ts";
import { rim } from "../drawing/box.ts";
import type { Group, Text } from "../drawing/drawing.ts";
import { boxOf } from "../drawing/lettering.ts";
import { rectangle } from "../drawing/scale-square.ts";
import { flattened } from "../geometry/area.ts";
import { straight } from "../geometry/path.ts";
import { between, distance, type Point } from "../geometry/point.ts";
import { type Block, turnedBlock } from "./block.ts";
import { type Cell, type Grid, originOf, type Tile, tileName } from "./grid.ts";
import { lap, registerMark } from "./joins.ts";
import { leftOut } from "./left-out.ts";
import { mapPages, type Tiles } from "./map-page.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { groupsOf, type Laid, onShelves } from "./shelves.ts";

/** The groups spread out, and the pages: the map, then the tiles row by row; instead of them, the blocks that take too many pages. */
export const tiledPages = (
  blocks: readonly Block[],
  paper: PaperKind,
  { title, column }: { readonly title: string; readonly column: readonly Group[] },
): { readonly groups: readonly Group[]; readonly pages: readonly Page[] } | { readonly tooLarge: readonly Block[] } => {
  const tooLarge = tooManyPages(blocks, paper);
  if (tooLarge.length > 0) return { tooLarge };
  const { grid, groups, tiles } = fewestPages(blocks, paper);
  const empty = leftOut(tiles);
  return {
    groups,
    pages: [
      ...mapPages(groups, { tiles, empty }, grid, paper, { title, column }),
      ...tiles.map((tile) => tilePage(tile, { tiles, empty }, grid, title)),
    ],
  };
};

// How far inside the outermost trim lines the pattern begins, mm: no cutting line is trimmed away.
const inside = 5;

/** The blocks that take too many pages by themselves, or all of them where they do so together: this bounds every layout that is tried. */
const tooManyPages = (blocks: readonly Block[], { width, height }: PaperKind): readonly Block[] => {
  const { step } = gridOf(width, height, 1);
  const pagesOf = (block: Block): number => (block.width * block.height) / (step.width * step.height);
  // A belt as long as a street has hardly any area, and yet takes a page at every step of its length.
  const stepsOf = (block: Block): number => Math.max(block.width, block.height) / Math.max(step.width, step.height);
  const alone = blocks.filter((block) => pagesOf(block) > limits.pages || stepsOf(block) > limits.pages);
  if (alone.length > 0) return alone;
  return blocks.reduce((sum, block) => sum + pagesOf(block), 0) > limits.pages ? blocks : [];
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
const fewestPages = (blocks: readonly Block[], paper: PaperKind): Spread => {
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
  const best = tried
    .sort((a, b) => a.pages - b.pages || a.turned - b.turned || unlike(a) - unlike(b))
    .slice(0, mostSpread);
  // The boxes of pieces lie over pages that no line comes to, so the best by their boxes are spread out and their pages counted.
  return best
    .map(({ grid, laid }): Spread => {
      const groups = groupsOf(laid, { x: inside, y: inside });
      return { grid, groups, tiles: tilesOf(groups, grid) };
    })
    .reduce((fewest, each) => (each.tiles.length < fewest.tiles.length ? each : fewest));
};

const mostSpread = 12;

/** A pattern spread out on a grid, and the tiles that something is printed on. */
interface Spread {
  readonly grid: Grid;
  readonly groups: readonly Group[];
  readonly tiles: readonly Tile[];
}

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

const cellsUnder = (from: Point, to: Point, step: Grid["step"]): Cell[] => {
  const cells: Cell[] = [];
  for (let row = Math.floor(from.y / step.height); row <= Math.floor(to.y / step.height); row += 1) {
    for (let column = Math.floor(from.x / step.width); column <= Math.floor(to.x / step.width); column += 1)
      cells.push({ row, column });
  }
  return cells;
};

// How far into the strip by which a page laps over the next a line may run, mm: it is seen whole, however thick it is.
const onLap = lap - 1.5;

/** A tile that is being found, and how far into it anything reaches from its left, mm. */
interface FoundTile extends Cell {
  readonly pieces: Set<string>;
  reach: number;
}

/** The tiles that a line or a word comes to, row by row. */
const tilesOf = (groups: readonly Group[], grid: Grid): Tile[] => {
  const { step, columns } = grid;
  const found = new Map<number, FoundTile>();
  const mark = (name: string, from: Point, to: Point): void => {
    const [low, high] = [
      { x: Math.min(from.x, to.x), y: Math.min(from.y, to.y) },
      { x: Math.max(from.x, to.x), y: Math.max(from.y, to.y) },
    ];
    for (const cell of cellsUnder(low, high, step)) {
      // What ends just on the last lap still lies on the last column.
      const column = Math.max(0, Math.min(columns - 1, cell.column));
      const row = Math.max(0, cell.row);
      const tile = found.get(row * columns + column) ?? { row, column, pieces: new Set(), reach: 0 };
      found.set(row * columns + column, tile);
      tile.pieces.add(name);
      tile.reach = Math.max(tile.reach, high.x - column * step.width);
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
  const tiles = [...found.entries()].sort(([a], [b]) => a - b).map(([, tile]) => tile);
  return withoutLapped(tiles).map(({ row, column, pieces }) => ({
    row,
    column,
    name: tileName({ row, column }),
    pieces: [...pieces].filter((piece) => piece !== ""),
  }));
};

/**
 * The tiles without those at the right end of a row of which the page before them shows all: it laps over them. Between two pages
 * they stay, for words would be printed on that lap.
 */
const withoutLapped = (tiles: readonly FoundTile[]): FoundTile[] =>
  tiles.filter(
    ({ row, column, reach }) =>
      reach > onLap ||
      !tiles.some((other) => other.row === row && other.column === column - 1) ||
      tiles.some((other) => other.row === row && other.column > column) ||
      isAmong(tiles, row, column),
  );

/** Whether a place has pages over and under it, so that one would look for a page there. */
const isAmong = (tiles: readonly Cell[], row: number, column: number): boolean =>
  [-1, 1].every((side) => tiles.some((other) => other.column === column && (other.row - row) * side > 0));

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

const note = (text: string, at: Point, size: number, turn: number): Text => ({
  text,
  at,
  size,
  turn,
  align: "start",
  weight: "plain",
});
