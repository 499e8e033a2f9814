// What lies on the table, as plain data that can cross from the worker to the page: lines as SVG path data, lengths in mm
// and in words. Nothing here decides how a kind of line looks.
import type { Mark, StrokeKind, Text } from "../../kernel/drawing/drawing.ts";
import type { Bounds } from "../../kernel/geometry/bounds.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import type { Role, Units } from "../../kernel/working.ts";

/** All pieces of a garment as the page shows them. */
export interface Picture {
  readonly title: string;
  readonly units: Units;
  /** Every line of the recipe could be worked. */
  readonly complete: boolean;
  readonly pieces: readonly PictureOfPiece[];
}

/** One piece in its own coordinates, mm, y down. */
export interface PictureOfPiece extends Lines {
  readonly name: string;
  /** What it is, in a sentence or two, for those who hear the table read out. */
  readonly words: string;
  /** A line of it failed, or lines before it did. */
  readonly doubtful: boolean;
  /** It is drawn as the last good text left it. */
  readonly kept?: true;
  readonly box: Bounds;
  /** Where the piece's origin lies on the table, mm. */
  readonly at: Point;
  /** The closed shape of the paper: the cutting line, or the sewing line where there is none yet; empty while it stands open. */
  readonly shape: string;
  /** All lines of one kind as one path; writing on the piece apart. */
  readonly strokes: readonly { readonly kind: StrokeKind; readonly d: string }[];
  readonly texts: readonly Text[];
  /** Where its name is best written. */
  readonly middle: Point;
  readonly edges: readonly PictureOfEdge[];
  readonly places: readonly PictureOfPlace[];
  readonly notches: readonly (Lines & { readonly edge: string; readonly at: Point })[];
  readonly things: readonly PictureOfThing[];
}

/** The lines of the opened recipe, from 1, that drew a thing or changed it: the one that drew it first. */
export interface Lines {
  readonly lines: readonly number[];
  /** Where one of them calls a step of the recipe's own: the lines in there that did it. */
  readonly inside: readonly InsideLine[];
}

/** A line inside a step of the recipe's own, under the line that called it. */
export interface InsideLine {
  readonly under: number;
  readonly line: number;
}

export interface PictureOfEdge extends Lines {
  readonly name: string;
  readonly role: Role;
  readonly inOutline: boolean;
  readonly d: string;
  /** Length as sewn, mm, and in the recipe's units. */
  readonly length: number;
  readonly lengthInWords: string;
  /** The middle of the edge, and the direction square to it that leads out of the piece. */
  readonly middle: Point;
  readonly outward: Point;
}

/** A dart, a drill hole, the grain line, or pleats and gathers on an edge. */
export interface PictureOfThing extends Lines {
  readonly kind: Mark["kind"];
  /** A dart's name, the edge that is gathered or pleated. */
  readonly name: string;
  /** All its lines as one path. */
  readonly d: string;
}

export interface PictureOfPlace extends Lines {
  readonly name: string;
  readonly at: Point;
}
