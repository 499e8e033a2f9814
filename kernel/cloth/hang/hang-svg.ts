// The pictures of a hung garment as one SVG sheet: its sides and its hem from below, a row for each round, and what they mean
// underneath. They are to be looked at and not cut after, so they are drawn small.

import { textWidth, wrapped } from "../../drawing/lettering.ts";
import { number, place } from "../../export/path-data.ts";
import { escaped } from "../../export/svg.ts";
import type { Point } from "../../geometry/point.ts";
import { lengthIn, plainNumber } from "../../units.ts";
import type { Units } from "../../working.ts";
import type { Shape, Tone } from "./elevation.ts";
import type { Figure } from "./figures.ts";

/** What the sheet tells besides its pictures. */
export interface HangSheet {
  readonly title: string;
  readonly units: Units;
  /** Pictures side by side, a row for each round. */
  readonly rows: readonly (readonly Titled[])[];
  /** Sentences under the pictures. */
  readonly notes: readonly string[];
}

export interface Titled {
  readonly title: string;
  readonly figure: Figure;
}

/** The sheet as SVG, at a fifth of the size. */
export const hangSvg = ({ title, units, rows: pictures, notes }: HangSheet): string => {
  const rows = pictures.map((row) =>
    row.map((titled) => ({ ...titled, box: boxOf(titled.figure), wide: widthOf(titled) })),
  );
  const widths = rows.map((row) => row.reduce((sum, { wide }) => sum + wide + gap, -gap));
  const width = Math.max(...widths, leastWidth) + 2 * margin;
  let y = margin + titleSize + gap / 2;
  const drawn = rows.flatMap((row) => {
    const tallest = Math.max(...row.map(({ box }) => box.bottom - box.top));
    let x = margin;
    const cells = row.map(({ title: over, figure, box, wide }) => {
      const cell = cellAt({ title: over, figure }, box, { x: x + wide / 2, y }, units);
      x += wide + gap;
      return cell;
    });
    y += tallest / scale + captionHeight + gap;
    return cells;
  });
  const lines = notes.flatMap((note) => wrapped(note, noteSize, "plain", width - 2 * margin));
  const foot = lines.map((text, index) => textAt(text, { x: margin, y: y + index * noteSize * 1.4 }, noteSize));
  const height = y + lines.length * noteSize * 1.4 + margin / 2;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="0 0 ${number(width)} ${number(height)}" role="img" aria-labelledby="hang-title hang-words">`,
    `<title id="hang-title">${escaped(title)}</title>`,
    `<desc id="hang-words">${escaped([...pictures.flat().map(({ figure }) => figureInWords(figure, units)), ...notes].join(" "))}</desc>`,
    `<style>${greys.map((grey, tone) => `.t${tone}{fill:${grey};stroke:${grey};stroke-width:1}`).join("")}.l{fill:none;stroke:#000}.rim,.turn{stroke-width:3}.seam,.crest{stroke-width:1.5}</style>`,
    `<rect width="${number(width)}" height="${number(height)}" fill="#fff"/>`,
    textAt(title, { x: margin, y: margin + titleSize * 0.7 }, titleSize),
    ...drawn,
    ...foot,
    "</svg>",
    "",
  ].join("\n");
};

/** What a figure shows, in a sentence. */
export const figureInWords = ({ pieces, from, folds, crests, width, hipWidth }: Figure, units: Units): string => {
  const count = folds === 0 ? "no folds" : folds === 1 ? "1 fold" : `${folds} folds`;
  const hip = hipWidth === undefined ? "" : `, the hip ${lengthIn(Math.round(hipWidth), units)}`;
  const seen = from === "below" ? `The hem of ${listed(pieces)} from below` : `The side of ${listed(pieces)}`;
  return `${seen}: ${count} all round${depthInWords(crests, units)}; the hem stands ${lengthIn(Math.round(width), units)} wide${hip}.`;
};

const depthInWords = (crests: Figure["crests"], units: Units): string => {
  if (crests.length === 0) return "";
  const depths = crests.map(({ depth }) => depth);
  const [least, most] = [Math.min(...depths), Math.max(...depths)].map((each) => lengthIn(Math.round(each), units));
  return least === most ? `, about ${most} deep` : `, about ${least} to ${most} deep`;
};

/** A picture's title. */
export const figureTitle = ({ pieces, from }: Figure): string =>
  from === "below" ? `${listed(pieces)}, from below` : listed(pieces);

/** The greys of the tones: the flank of a fold stands out in print as on a screen. */
export const greyOf = (tone: Tone): string => greys[tone]!;

const greys = ["#ffffff", "#f4f4f4", "#e8e8e8", "#dbdbdb", "#cdcdcd", "#bebebe", "#aeaeae", "#9d9d9d"];

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The box round all that a figure shows, mm in life. */
export const boxOf = ({ shapes, straight, hip }: Figure): Box => {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  const lines = [...shapes.map((shape) => (shape.kind === "cloth" ? shape.outline : shape.along)), straight, hip];
  for (const line of lines) {
    for (const { x, y } of line) {
      [left, right] = [Math.min(left, x), Math.max(right, x)];
      [top, bottom] = [Math.min(top, y), Math.max(bottom, y)];
    }
  }
  // A side that shows nothing, as that of a hem of no length, takes no room.
  return left <= right ? { left, right, top, bottom } : { left: 0, right: 0, top: 0, bottom: 0 };
};

/** How wide a picture is on the paper with what is written over and under it, mm. */
const widthOf = ({ title, figure }: Titled): number => {
  const { left, right } = boxOf(figure);
  return Math.max((right - left) / scale, textWidth(title, captionSize, "plain"), captionWidth);
};

/** A picture with its words, the middle of its upper edge at a place of the paper. */
const cellAt = ({ title, figure }: Titled, box: Box, at: Point, units: Units): string => {
  const middle = at.x;
  const top = at.y + titleHeight;
  const move = `translate(${place({ x: middle - (box.left + box.right) / 2 / scale, y: top - box.top / scale })}) scale(${number(1 / scale)})`;
  const { hipWidth } = figure;
  const bottom = top + (box.bottom - box.top) / scale;
  const under = [
    `hem ${lengthIn(Math.round(figure.width), units)} wide`,
    ...(hipWidth === undefined ? [] : [`hip ${lengthIn(Math.round(hipWidth), units)} wide`]),
  ];
  return [
    "<g>",
    `<title>${escaped(figureInWords(figure, units))}</title>`,
    textAt(title, { x: middle, y: at.y + captionSize }, captionSize, "middle"),
    `<g transform="${move}" stroke-linejoin="round" stroke-linecap="round">`,
    ...(figure.hip.length === 0
      ? []
      : [`<path d="${lineData(figure.hip)}" fill="#eee" stroke="#777" stroke-width="1.5"/>`]),
    ...figure.shapes.map(shapeMark),
    `<path d="${lineData(figure.straight)}Z" fill="none" stroke="#000" stroke-width="1.5" stroke-dasharray="9 6"/>`,
    "</g>",
    ...depthMarks(figure, units, (p) => ({
      x: middle + (p.x - (box.left + box.right) / 2) / scale,
      y: top + (p.y - box.top) / scale,
    })),
    ...under.map((text, index) =>
      textAt(text, { x: middle, y: bottom + 8 + index * noteSize * 1.3 }, noteSize, "middle"),
    ),
    "</g>",
  ].join("\n");
};

const shapeMark = (shape: Shape): string =>
  shape.kind === "cloth"
    ? `<path class="t${shape.tone}" d="${lineData(shape.outline)}Z"/>`
    : `<path class="l ${shape.kind}" d="${lineData(shape.along)}"/>`;

/** Under the hem, how deep each fold is, where there is room for a number. */
const depthMarks = ({ shapes, from }: Figure, units: Units, onPaper: (point: Point) => Point): string[] => {
  // From below the crests stand where there is no room beside them.
  if (from === "below") return [];
  let last = -Infinity;
  return shapes
    .flatMap((shape) => (shape.kind === "crest" ? [{ at: onPaper(shape.along.at(-1)!), depth: shape.depth }] : []))
    .sort((a, b) => a.at.x - b.at.x)
    .flatMap(({ at, depth }) => {
      if (at.x - last < depthRoom) return [];
      last = at.x;
      const words = plainNumber(depth / (units === "in" ? 25.4 : units === "cm" ? 10 : 1), units === "mm" ? 0 : 1);
      return [textAt(words, { x: at.x, y: at.y + depthSize + 0.8 }, depthSize, "middle")];
    });
};

const lineData = (points: readonly Point[]): string =>
  points.length === 0 ? "" : `M${points.map(({ x, y }) => `${plainNumber(x, 0)} ${plainNumber(y, 0)}`).join("L")}`;

const textAt = (text: string, at: Point, size: number, align: "start" | "middle" = "start"): string =>
  `<text x="${number(at.x)}" y="${number(at.y)}" font-family="sans-serif" font-size="${number(size)}" text-anchor="${align}">${escaped(text)}</text>`;

// A coat fits on a page at this scale; sizes on the paper are in mm.
const scale = 5;
const margin = 10;
const gap = 14;
const leastWidth = 150;
const titleSize = 6;
const captionSize = 4.2;
const captionWidth = 34;
const titleHeight = 8;
const captionHeight = titleHeight + 18;
const noteSize = 3.4;
const depthSize = 2.8;
const depthRoom = 6;
