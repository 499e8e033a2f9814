// How each kind of stroke looks. Kinds are told by weight and dashes alone, so that a copy in black and white will do.
import type { StrokeKind } from "./drawing.ts";

export interface LineStyle {
  /** Width of the pen, mm. */
  readonly width: number;
  /** Dash, gap, dash, gap … in mm; none for a solid line. */
  readonly dashes: readonly number[];
  readonly ink: "black" | "grey";
  /** The shape that the stroke goes round is filled with ink, and no pen follows it. */
  readonly filled: boolean;
}

const black = { ink: "black", filled: false } as const;

/** The look of each kind; after common practice, no source: cut heavy, sewn dashed, fold long dashes, grain with arrows. */
export const lineStyle: Readonly<Record<StrokeKind, LineStyle>> = {
  before: { width: 0.25, dashes: [], ink: "grey", filled: false },
  "inner-line": { width: 0.25, dashes: [], ...black },
  "dart-center": { width: 0.18, dashes: [], ...black },
  "sewing-line": { width: 0.3, dashes: [4, 2], ...black },
  "hem-line": { width: 0.35, dashes: [10, 2, 2, 2], ...black },
  fold: { width: 0.5, dashes: [16, 4], ...black },
  "fold-bracket": { width: 0.35, dashes: [], ...black },
  "cutting-line": { width: 0.8, dashes: [], ...black },
  grain: { width: 0.4, dashes: [], ...black },
  notch: { width: 0.6, dashes: [], ...black },
  drill: { width: 0.35, dashes: [], ...black },
  arrowhead: { width: 0, dashes: [], ink: "black", filled: true },
  "scale-square": { width: 0.25, dashes: [], ...black },
  frame: { width: 0.35, dashes: [], ...black },
};

/** The dashes stretched a little, so that a line of this length in mm begins and ends with a whole dash; none on a short one. */
export const fittedDashes = (dashes: readonly number[], length: number): readonly number[] => {
  const first = dashes[0];
  if (first === undefined) return [];
  const period = dashes.reduce((sum, part) => sum + part, 0);
  const count = Math.round((length - first) / period);
  if (count < 1) return [];
  const stretching = length / (count * period + first);
  return dashes.map((part) => part * stretching);
};
