// The title block of a sheet: squares to measure the print by, the garment's title, what the lines mean, a word of caution.
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Garment } from "../working.ts";
import { arrowhead } from "./arrowhead.ts";
import { cautionsFor } from "./cautions.ts";
import type { Group, Stroke, StrokeKind, Text } from "./drawing.ts";
import { isNet } from "./label-block.ts";
import { textWidth, wrapped } from "./lettering.ts";
import type { Remarks } from "./remarks.ts";
import { rectangle, scaleSquares, scaleSquareWords } from "./scale-square.ts";

/** The title block with its top left corner at (0, 0); the legend shows the kinds of line that the sheet has. */
export const titleBlock = (garment: Garment, kinds: ReadonlySet<StrokeKind>, remarks: Remarks): Group => {
  const squares = scaleSquares(garment.units, { x: inset, y: inset });
  const heading = headingOf(garment, remarks, squares.width + 2 * inset);
  const legend = legendOf(kinds, [...garment.pieces.values()].every(isNet), heading.width + squares.width + 3 * inset);
  const right = legend.right + inset;
  const words = cautionsFor(garment);
  const caution = cautionTexts(words, right - 2 * inset);
  const bottom = Math.max(inset + squares.height, heading.bottom, legend.bottom) + inset;
  const frameBottom = bottom + caution.height;
  return {
    of: "title-block",
    name: "title-block",
    words: `${remarks.unfit === undefined ? "" : `${remarks.unfit}. `}Title block with ${scaleSquareWords(garment.units)}. All measures in ${unitWords.get(garment.units)}. ${words.join(" ")}`,
    strokes: [
      ...squares.strokes,
      ...legend.strokes,
      { kind: "frame", path: rectangle({ x: 0, y: 0 }, right, frameBottom) },
      { kind: "frame", path: straight({ x: 0, y: bottom }, { x: right, y: bottom }) },
    ],
    texts: [...squares.texts, ...heading.texts, ...legend.texts, ...caution.textsAt(bottom)],
  };
};

const inset = 8;

/** Units as a title says them. */
export const unitWords = new Map([
  ["mm", "mm"],
  ["cm", "cm"],
  ["in", "inches"],
]);

const plain = (text: string, at: Point, size: number, align: Text["align"] = "start"): Text => ({
  text,
  at,
  size,
  turn: 0,
  align,
  weight: "plain",
});

const titleSize = 9;
const noteSize = 5;
const widestTitle = 150;

const headingOf = (
  garment: Garment,
  { unfit, choices, version }: Remarks,
  left: number,
): { texts: Text[]; width: number; bottom: number } => {
  const titles = wrapped(garment.title, titleSize, "bold", widestTitle);
  const drafted =
    choices.length === 0 ? [] : wrapped(`Drafted with ${choices.join(", ")}.`, noteSize, "plain", widestTitle);
  const notes = [
    ...drafted,
    ...(version === undefined ? [] : [`Recipe version ${version}.`]),
    `All measures in ${unitWords.get(garment.units)}.`,
    "Print at full size, not fitted to the page.",
  ];
  let y = inset + titleSize * 0.76;
  const texts: Text[] = [];
  for (const text of unfit === undefined ? titles : [unfit, ...titles]) {
    texts.push({ ...plain(text, { x: left, y }, titleSize), weight: "bold" });
    y += titleSize * 1.25;
  }
  for (const text of notes) {
    texts.push(plain(text, { x: left, y }, noteSize));
    y += noteSize * 1.5;
  }
  const width = Math.max(...texts.map(({ text, size, weight }) => textWidth(text, size, weight)));
  return { texts, width, bottom: y - noteSize };
};

const legendWords: readonly (readonly [StrokeKind, string])[] = [
  ["cutting-line", "cut here"],
  ["sewing-line", "sew here"],
  ["hem-line", "hem, turn up here"],
  ["fold", "fold of the cloth"],
  ["grain", "grain"],
  ["notch", "notch"],
  ["drill", "drill hole"],
  ["inner-line", "inner line"],
  ["dart-center", "middle of a dart"],
  ["before", "as it was before"],
];
const sampleWidth = 32;
const rowHeight = 9.5;
const rows = 5;
const columnGap = 12;

/** The kinds of line that a sheet has, and what each means. */
export const linesShown = (kinds: ReadonlySet<StrokeKind>, net: boolean): (readonly [StrokeKind, string])[] =>
  legendWords
    .filter(([kind]) => kinds.has(kind))
    // Where nothing has an allowance the outer line is where it is sewn, and whoever cuts there has nothing to sew.
    .map(([kind, words]) => [kind, net && kind === "cutting-line" ? "net edge: add allowances" : words]);

/** Samples of the lines in columns from a left edge on. */
const legendOf = (
  kinds: ReadonlySet<StrokeKind>,
  net: boolean,
  left: number,
): { strokes: Stroke[]; texts: Text[]; right: number; bottom: number } => {
  const shown = linesShown(kinds, net);
  const columnWidth = sampleWidth + 4 + Math.max(0, ...shown.map(([, words]) => textWidth(words, noteSize, "plain")));
  const places = shown.map(([kind, words], index) => {
    const x = left + Math.floor(index / rows) * (columnWidth + columnGap);
    return { kind, words, x, y: inset + 4 + (index % rows) * rowHeight };
  });
  return {
    strokes: places.flatMap(({ kind, x, y }) => sampleOf(kind, { x, y }, sampleWidth)),
    texts: places.map(({ words, x, y }) => plain(words, { x: x + sampleWidth + 4, y: y + 1.8 }, noteSize)),
    right: Math.max(left, ...places.map(({ x }) => x + columnWidth)),
    bottom: Math.max(0, ...places.map(({ y }) => y)),
  };
};

/** A sample of a line from its left end on. */
export const sampleOf = (kind: StrokeKind, { x, y }: Point, width: number): Stroke[] => {
  const [start, end, middle] = [
    { x, y },
    { x: x + width, y },
    { x: x + width / 2, y },
  ];
  switch (kind) {
    case "grain":
      return [
        { kind, path: straight(start, end) },
        { kind: "arrowhead", path: arrowhead(start, { x: -1, y: 0 }, 6) },
        { kind: "arrowhead", path: arrowhead(end, { x: 1, y: 0 }, 6) },
      ];
    case "notch":
      return [{ kind, path: straight({ x: middle.x, y: y - 3 }, { x: middle.x, y: y + 3 }) }];
    case "drill":
      return [
        { kind, path: straight({ x: middle.x - 3, y }, { x: middle.x + 3, y }) },
        { kind, path: straight({ x: middle.x, y: y - 3 }, { x: middle.x, y: y + 3 }) },
      ];
    default:
      return [{ kind, path: straight(start, end) }];
  }
};

const cautionSize = 4.5;
const cautionRow = cautionSize * 1.5;

/** The cautions in as many lines as their width in mm needs, to be set under a given height. */
const cautionTexts = (
  words: readonly string[],
  width: number,
): { height: number; textsAt: (top: number) => Text[] } => {
  const lines = words.flatMap((each) => wrapped(each, cautionSize, "plain", width));
  return {
    height: lines.length * cautionRow + inset / 2,
    textsAt: (top) => lines.map((text, i) => plain(text, { x: inset, y: top + (i + 1) * cautionRow }, cautionSize)),
  };
};
