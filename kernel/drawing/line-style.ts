// How each kind of stroke looks. Kinds are told by weight and dashes alone, so that a copy in black and white will do, and
// so are the sizes of a nest.
import type { Drawing, StrokeKind } from "./drawing.ts";

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
  before: { width: 0.35, dashes: [0.8, 1.6], ink: "grey", filled: false },
  "inner-line": { width: 0.25, dashes: [], ...black },
  "dart-center": { width: 0.18, dashes: [8, 3], ...black },
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

/** The sizes of a drawing, in the order of its groups; none where it is of one size. */
export const sizesIn = ({ groups }: Pick<Drawing, "groups">): string[] => [
  ...new Set(groups.flatMap(({ size }) => (size === undefined ? [] : [size]))),
];

/** The look of a kind of stroke in one of the sizes of a drawing: lines that are cut or sewn have the dashes of their size. */
export const styleOf = (kind: StrokeKind, size: string | undefined, sizes: readonly string[]): LineStyle => {
  const usual = lineStyle[kind];
  if (size === undefined || sizes.length < 2 || !toldBySize.has(kind)) return usual;
  return { ...usual, width: Math.min(usual.width, nestedWidth), dashes: sizeDashes(sizes.indexOf(size)) };
};

const toldBySize: ReadonlySet<StrokeKind> = new Set(["cutting-line", "sewing-line", "hem-line", "inner-line"]);

// Two lines that run a millimetre apart stay two lines, in mm.
const nestedWidth = 0.5;

/** The dashes of a size by its place among the sizes: the first solid, then a dash with more and more dots, then a longer dash. */
const sizeDashes = (index: number): readonly number[] => {
  if (index <= 0) return [];
  const dots = (index - 1) % mostDots;
  const dash = shortDash + longer * Math.floor((index - 1) / mostDots);
  return [dash, gap, ...Array.from({ length: dots }, () => [dot, gap]).flat()];
};

// As many dots as one counts at a glance, and lengths in mm that are told apart at arm's length.
const mostDots = 4;
const shortDash = 9;
const longer = 14;
const dot = 1.5;
const gap = 2.5;

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
