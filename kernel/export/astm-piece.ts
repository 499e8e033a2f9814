// What a cutting room is sent: pieces as lines and marks with nothing left to decide but how the file writes them.
// Places in mm, y down, each piece where it was drafted.
import type { Text } from "../drawing/drawing.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** One notch at the edge that is cut. */
export interface CutNotch {
  readonly at: Point;
  /** From the edge to where the snip ends. */
  readonly to: Point;
}

/** One piece in one size. */
export interface CutPiece {
  readonly name: string;
  readonly size?: string;
  /** How many to cut of it, all cloths taken together; 0 where the recipe does not say. */
  readonly quantity: number;
  /** The cloths it is cut of. */
  readonly material: string;
  /** The line it is cut along, one path an edge, each beginning where the last one ends; none where it stands open. */
  readonly boundary: readonly Path[];
  /** Where it lies on the fold of the cloth, on which its other half is the mirror image. */
  readonly mirror: readonly Path[];
  readonly grain: readonly Path[];
  readonly sewing: readonly Path[];
  /** Lines that are marked and not cut. */
  readonly inner: readonly Path[];
  /** Lines inside the piece that are cut. */
  readonly cutouts: readonly Path[];
  readonly notches: readonly CutNotch[];
  readonly drills: readonly Point[];
  readonly texts: readonly Text[];
  /** How far it is moved where the file shows all pieces together. */
  readonly laid: Point;
}

/** All pieces of a garment. */
export interface CutGarment {
  readonly title: string;
  /** The size that the others are graded from; the only one where there is one. */
  readonly sampleSize?: string;
  readonly pieces: readonly CutPiece[];
}
