// The grid that a pattern is cut into when it is printed on tiles.
import type { Point } from "../geometry/point.ts";

/** A grid of tiles; lengths in mm. */
export interface Grid {
  readonly paper: { readonly width: number; readonly height: number };
  /** What of a page is printed on, and how far it is to the next page's. */
  readonly printed: { readonly width: number; readonly height: number };
  readonly step: { readonly width: number; readonly height: number };
  readonly columns: number;
}

/** A place in the grid; rows and columns from 0. */
export interface Cell {
  readonly row: number;
  readonly column: number;
}

/** A tile that something is printed on. */
export interface Tile extends Cell {
  readonly name: string;
  /** What one sees of the garment on it. */
  readonly pieces: readonly string[];
}

/** Where a tile's printed part lies on the spread pattern. */
export const originOf = ({ row, column }: Cell, { step }: Grid): Point => ({
  x: column * step.width,
  y: row * step.height,
});

/** What a tile is called: its row by number, its column by letter. (A page called A4 would be taken for its paper.) */
export const tileName = ({ row, column }: Cell): string => `${row + 1}${columnName(column)}`;

/** A column as letters: a to z, then aa, ab … */
const columnName = (column: number): string =>
  column < 26
    ? String.fromCharCode(97 + column)
    : `${columnName(Math.floor(column / 26) - 1)}${columnName(column % 26)}`;
