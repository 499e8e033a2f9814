// Tiles on which nothing would be printed, and which whoever tapes the pages together would yet look for.
import type { Cell, Tile } from "./grid.ts";

/** The places between two tiles of one row or one column that have no tile, row by row. */
export const leftOut = (tiles: readonly Tile[]): Cell[] => {
  const rows = spans(tiles.map(({ row, column }) => [row, column]));
  const columns = spans(tiles.map(({ row, column }) => [column, row]));
  const missing: Cell[] = [];
  for (let row = 0; row <= Math.max(-1, ...rows.keys()); row += 1) {
    for (let column = 0; column <= Math.max(-1, ...columns.keys()); column += 1) {
      const isBetween = isWithin(column, rows.get(row)) || isWithin(row, columns.get(column));
      if (isBetween && !tiles.some((tile) => tile.row === row && tile.column === column)) missing.push({ row, column });
    }
  }
  return missing;
};

interface Stretch {
  readonly first: number;
  readonly last: number;
}

/** From where to where each line of the grid has tiles. */
const spans = (places: readonly (readonly [number, number])[]): Map<number, Stretch> => {
  const found = new Map<number, Stretch>();
  for (const [line, at] of places) {
    const { first, last } = found.get(line) ?? { first: at, last: at };
    found.set(line, { first: Math.min(first, at), last: Math.max(last, at) });
  }
  return found;
};

const isWithin = (at: number, stretch: Stretch | undefined): boolean =>
  stretch !== undefined && stretch.first < at && at < stretch.last;
