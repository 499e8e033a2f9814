// A printed page, and all that goes onto the pages of one print.
import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import type { Bounds } from "../geometry/bounds.ts";
import type { Point } from "../geometry/point.ts";

/** A page of paper, mm, y down from its upper left corner. */
export interface Page {
  /** "map", "B3", "1". */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** The part of the spread pattern that shows on it; none on a page of words. */
  readonly window?: Window;
  /** What belongs to the page and not to the pattern. */
  readonly strokes: readonly Stroke[];
  readonly texts: readonly Text[];
  /** What belongs to the page as well, each group with the lines of its size. */
  readonly groups?: readonly Group[];
}

/** A part of the spread pattern on a page. */
export interface Window {
  readonly of: Bounds;
  /** Where its upper left corner lies on the page. */
  readonly at: Point;
  /** 1 is life size. */
  readonly scale: number;
}

/** A pattern spread out, and the pages that show it. */
export interface Print {
  readonly title: string;
  /** The whole pattern in words. */
  readonly words: string;
  readonly groups: readonly Group[];
  readonly pages: readonly Page[];
}
