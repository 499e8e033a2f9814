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

/** A tile that something is printed on; rows and columns from 0. */
export interface Tile {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** What one sees of the garment on it. */
  readonly pieces: readonly string[];
}

/** Where a tile's printed part lies on the spread pattern. */
export const originOf = ({ row, column }: Tile, { step }: Grid): Point => ({
  x: column * step.width,
  y: row * step.height,
});
