// A drawing: strokes and texts in millimetres, y down, with nothing left to decide but how a kind of line looks.
// Exporters and the preview see this and no piece.
import type { Where } from "../../grammar/diagnostic.ts";
import type { Bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";

/** All kinds of stroke, in the order they are laid on the paper. */
export const strokeKinds = [
  "before",
  "inner-line",
  "dart-center",
  "sewing-line",
  "hem-line",
  "fold",
  "fold-bracket",
  "cutting-line",
  "grain",
  "notch",
  "drill",
  "arrowhead",
  "scale-square",
  "frame",
] as const;

/** What a stroke means; `arrowhead` is the one kind that is filled. */
export type StrokeKind = (typeof strokeKinds)[number];

export interface Stroke {
  readonly kind: StrokeKind;
  readonly path: Path;
  /** The mark that this is a line of; all lines of one mark share it. */
  readonly of?: Mark;
}

/** A thing on a piece that is drawn with several lines, so that whoever points at one of them means it. */
export interface Mark {
  readonly kind: "dart" | "drill" | "grain" | "take-up";
  /** A dart's name, the edge of what is taken up; otherwise its kind. */
  readonly name: string;
  /** The recipe line that drew it. */
  readonly drawnBy: Where;
}

export interface Text {
  readonly text: string;
  /** The end or the middle of the baseline, as `align` says. */
  readonly at: Point;
  /** Height of the lettering from one baseline to the next when set solid, mm. */
  readonly size: number;
  /** How far the text is turned from level, radians, clockwise. */
  readonly turn: number;
  readonly align: "start" | "middle" | "end";
  readonly weight: "bold" | "plain";
}

/**
 * What belongs together on the paper: one piece, the title block of a sheet, the scale square beside a piece, the lines of the
 * sizes, or all of a page of words.
 */
export interface Group {
  readonly of: "piece" | "title-block" | "scale-square" | "size-legend" | "page";
  /** The piece's name; for what is no piece, what it is. */
  readonly name: string;
  /** On a drawing of nested sizes: the one size that this is of; what all sizes share has none. */
  readonly size?: string;
  /** What it is, in a sentence or two, for those who hear the drawing read out. */
  readonly words: string;
  readonly strokes: readonly Stroke[];
  readonly texts: readonly Text[];
}

export interface Drawing {
  readonly title: string;
  /** The whole drawing in words. */
  readonly words: string;
  /** The paper, in whole millimetres; the margin is inside it. */
  readonly paper: Bounds;
  readonly groups: readonly Group[];
}
