// A drawing as SVG text: true to size, the same bytes every time, one element a line, nothing in it that could run or
// that points outside the file.
import type { Drawing, Group, StrokeKind, Text } from "../drawing/drawing.ts";
import { strokeKinds } from "../drawing/drawing.ts";
import { fittedDashes, sizesIn, styleOf } from "../drawing/line-style.ts";
import { pathLength } from "../geometry/arc-length.ts";
import type { Path } from "../geometry/path.ts";
import { toDegrees } from "../geometry/trig.ts";
import type { Lettering } from "../lettering/lettering.ts";
import { number, pathData, place } from "./path-data.ts";
import { svgLetters } from "./svg-letters.ts";

/**
 * The SVG of a drawing, piece by piece; 1 unit is 1 mm. With a lettering its texts are the outlines of letters, for files that go
 * to others; without one they are text in whatever font the reader has, for a screen and for those who read the file.
 */
export const svg = (drawing: Drawing, lettering?: Lettering): string => {
  const sizes = sizesIn(drawing);
  return framed(
    drawing,
    drawing.groups.flatMap((group) => groupLines(group, sizes, lettering)),
  );
};

/** A whole file around lines that draw: the size in mm, a title, the drawing in words, and white paper. */
export const framed = (drawing: Drawing, lines: readonly string[]): string => {
  const { left, top, right, bottom } = drawing.paper;
  const [width, height] = [number(right - left), number(bottom - top)];
  const box = `${number(left)} ${number(top)} ${width} ${height}`;
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${box}" role="img" aria-labelledby="drawing-title drawing-words">`,
    `<title id="drawing-title">${escaped(drawing.title)}</title>`,
    `<desc id="drawing-words">${escaped(drawing.words)}</desc>`,
    `<rect x="${number(left)}" y="${number(top)}" width="${width}" height="${height}" fill="#fff"/>`,
    ...lines,
    "</svg>",
    "",
  ].join("\n");
};

/** User text made harmless: markup signs as entities, and no sign that is not for reading. */
export const escaped = (text: string): string =>
  text
    .replace(/[\t\n\r]+/g, " ")
    .replace(unreadable, "")
    .replace(/[&<>"']/g, (sign) => entities.get(sign)!);

/** A piece's name as an id: letters, digits, hyphens and points as they are, every other byte as %XX. */
export const idOf = (name: string): string =>
  [...new TextEncoder().encode(name)]
    .map((byte) => {
      const sign = String.fromCharCode(byte);
      return /[A-Za-z0-9.-]/.test(sign) ? sign : `%${byte.toString(16).toUpperCase().padStart(2, "0")}`;
    })
    .join("");

// Controls, halves of characters and other signs that XML forbids, and those that turn the direction of reading, which
// could make one text look like another.
const unreadable = /[\p{Cc}\p{Cs}\p{Noncharacter_Code_Point}\u202a-\u202e\u2066-\u2069]/gu;

const entities = new Map([
  ["&", "&amp;"],
  ["<", "&lt;"],
  [">", "&gt;"],
  ['"', "&quot;"],
  ["'", "&#39;"],
]);

const groupLines = (group: Group, sizes: readonly string[], lettering: Lettering | undefined): string[] => [
  `<g id="${groupId(group)}">`,
  `<title>${escaped(group.words)}</title>`,
  ...strokeKinds.flatMap((kind) => strokeLines(kind, group, sizes)),
  ...textLines(group.texts, lettering),
  "</g>",
];

/** The id of a group; no name makes an underscore, so that no piece is taken for another one's size. */
const groupId = ({ of, name, size }: Group): string => {
  const whole = of === "piece" ? `piece-${idOf(name)}` : of;
  return size === undefined ? whole : `${whole}_size-${idOf(size)}`;
};

/** The strokes of one kind in a group, as a group of their own; none where there are none. */
export const strokeLines = (kind: StrokeKind, { strokes, size }: Group, sizes: readonly string[]): string[] => {
  const own = strokes.filter((stroke) => stroke.kind === kind);
  if (own.length === 0) return [];
  const { width, dashes, ink, filled } = styleOf(kind, size, sizes);
  const color = ink === "black" ? "#000" : "#8a8a8a";
  const pen = filled
    ? `fill="${color}" stroke="none"`
    : `fill="none" stroke="${color}" stroke-width="${number(width)}" stroke-linecap="${capOf(kind, dashes)}" stroke-linejoin="round"`;
  return [`<g class="${kind}" ${pen}>`, ...own.map(({ path }) => pathLine(path, dashes)), "</g>"];
};

// Round ends close the joints between edges; elsewhere they would make lines longer than they are.
const capOf = (kind: StrokeKind, dashes: readonly number[]): string =>
  kind === "cutting-line" && dashes.length === 0 ? "round" : "butt";

const pathLine = (path: Path, dashes: readonly number[]): string => {
  const fitted = dashes.length === 0 ? [] : fittedDashes(dashes, pathLength(path));
  const dashing = fitted.length === 0 ? "" : ` stroke-dasharray="${fitted.map(number).join(" ")}"`;
  return `<path d="${pathData(path)}"${dashing}/>`;
};

/** Texts as a group; none where there are none. */
export const textLines = (texts: readonly Text[], lettering: Lettering | undefined): string[] => {
  if (lettering)
    return inGroup(
      `fill="#000"`,
      texts.flatMap((text) => letteredLine(text, lettering)),
    );
  // White around the letters keeps them readable where a quiet line runs underneath.
  const halo = 'stroke="#fff" stroke-width="1" stroke-linejoin="round" paint-order="stroke"';
  return inGroup(`fill="#000" ${halo} font-family="sans-serif"`, texts.map(textLine));
};

const inGroup = (pen: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [`<g class="text" ${pen}>`, ...lines, "</g>"];

/** Letters in outlines, beside them the words as they were meant, so that they are found in the file. No white around: a cutter would follow it. */
const letteredLine = (text: Text, lettering: Lettering): string[] => {
  const letters = svgLetters(text, lettering);
  if (!letters) return [];
  return [`<path aria-label="${escaped(text.text)}" transform="${letters.transform}" d="${letters.data}"/>`];
};

const textLine = ({ text, at, size, turn, align, weight }: Text): string => {
  const turned = number(toDegrees(turn));
  const transform = turned === "0" ? "" : ` transform="rotate(${turned} ${place(at)})"`;
  const bold = weight === "bold" ? ' font-weight="bold"' : "";
  return `<text x="${number(at.x)}" y="${number(at.y)}"${transform} font-size="${number(size)}"${bold} text-anchor="${align}">${escaped(text)}</text>`;
};
