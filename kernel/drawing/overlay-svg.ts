// An overlay as SVG: what was is dashed and grey, what is solid and black; cloth added is hatched one way on a light tone, cloth
// taken off the other way, dotted, on a dark one, so that a copy in black and white tells them apart. True to size.
import type { Patch } from "../compare/cloth-between.ts";
import { number, pathData, place } from "../export/path-data.ts";
import { escaped, idOf } from "../export/svg.ts";
import type { Bounds } from "../geometry/bounds.ts";
import { between, distance, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import { rotated } from "../geometry/rotate.ts";
import { arrowhead } from "./arrowhead.ts";
import { type Box, inTurned, room } from "./box.ts";
import { textWidth } from "./lettering.ts";
import type { Dimension, Overlay } from "./overlay.ts";

/** What stands beside a dimension line: the amount, and the line of the recipe that caused it. */
export type DimensionWords = (dimension: Dimension) => readonly string[];

/** What is told of the whole picture. */
export interface OverlayWords {
  readonly title: string;
  /** The picture in words, for those who hear it read out. */
  readonly description: string;
  /** What the two hatchings stand for, with their areas: "added 171 cm2". */
  readonly added: string;
  readonly removed: string;
  readonly beside: DimensionWords;
}

/** The SVG; `of` sets its ids apart from those of others on one page. */
export const overlaySvg = (drawn: Overlay, words: OverlayWords, of: string): string => {
  const { grade } = drawn;
  const labels = labelsOf(drawn, words.beside);
  const paper = paperOf(drawn, labels);
  const id = `overlay-${idOf(of)}`;
  const [width, height] = [paper.right - paper.left, paper.bottom - paper.top];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(height)}mm" viewBox="${number(paper.left)} ${number(paper.top)} ${number(width)} ${number(height)}" role="img" aria-labelledby="${id}-title ${id}-words">`,
    `<title id="${id}-title">${escaped(words.title)}</title>`,
    `<desc id="${id}-words">${escaped(words.description)}</desc>`,
    ...hatching(id, grade),
    `<rect x="${number(paper.left)}" y="${number(paper.top)}" width="${number(width)}" height="${number(height)}" fill="#fff"/>`,
    patchesOf("removed", drawn.removed, id),
    patchesOf("added", drawn.added, id),
    `<g class="before" fill="none" stroke="#666" stroke-width="${number(grade * 0.5)}" stroke-dasharray="${number(grade * 2)} ${number(grade * 1.2)}">`,
    ...drawn.before.map((path) => `<path d="${pathData(path)}"/>`),
    "</g>",
    `<g class="after" fill="none" stroke="#000" stroke-width="${number(grade * 0.6)}" stroke-linecap="round">`,
    ...drawn.after.map((path) => `<path d="${pathData(path)}"/>`),
    "</g>",
    `<g class="dimensions" fill="none" stroke="#000" stroke-width="${number(grade * 0.25)}">`,
    ...drawn.dimensions.flatMap((dimension) => dimensionLines(dimension, grade)),
    "</g>",
    ...lettersOf(labels, grade),
    ...legendOf(drawn, words, paper, id),
    "</svg>",
    "",
  ].join("\n");
};

const hatching = (id: string, grade: number): string[] => {
  const step = number(grade * 2.4);
  const pattern = (name: string, turn: number, tone: string, pen: string): string =>
    `<pattern id="${id}-${name}" width="${step}" height="${step}" patternUnits="userSpaceOnUse" patternTransform="rotate(${turn})"><rect width="${step}" height="${step}" fill="${tone}"/><path d="M0 ${number(grade * 1.2)} H${step}" stroke="#000" ${pen}/></pattern>`;
  return [
    "<defs>",
    pattern("added", 45, "#eee", `stroke-width="${number(grade * 0.35)}"`),
    pattern(
      "removed",
      -45,
      "#bbb",
      `stroke-width="${number(grade * 0.6)}" stroke-dasharray="${number(grade)} ${number(grade)}"`,
    ),
    "</defs>",
  ];
};

const patchesOf = (name: "added" | "removed", patches: readonly Patch[], id: string): string => {
  const d = patches.map((patch) => `M${patch.map(place).join(" L")} Z`).join(" ");
  return d === "" ? "" : `<g class="${name}"><path d="${d}" fill="url(#${id}-${name})" fill-rule="nonzero"/></g>`;
};

const dimensionLines = ({ from, to, reaches }: Dimension, grade: number): string[] => {
  const along = unit(minus(to, from));
  const tip = Math.min(grade * 2.5, distance(from, to) / 3);
  const filled = (path: Parameters<typeof pathData>[0]): string =>
    `<path d="${pathData(path)}" fill="#000" stroke="none"/>`;
  return [
    ...reaches.map(
      ([a, b]) => `<path d="M${place(a)} L${place(plus(b, times(unit(minus(b, a)), grade * 1.5)))}" stroke="#777"/>`,
    ),
    `<path d="M${place(from)} L${place(to)}"/>`,
    filled(arrowhead(to, along, tip)),
    // Where a corner moved the arrow shows which way; a length has a tip at either end.
    ...(reaches.length === 0 ? [] : [filled(arrowhead(from, times(along, -1), tip))]),
  ];
};

interface Label {
  readonly lines: readonly string[];
  /** The middle of the label. */
  readonly at: Point;
  readonly box: Box;
  readonly isStrong: boolean;
}

// In grades: height of the letters, and from one line to the next.
const letters = 6;
const leading = 7.2;

/** What the first line says counts for more. */
const sizeOf = (index: number): number => (index === 0 ? letters : letters * 0.8);

/** Labels beside their dimension lines, clear of those lines and of one another; one that finds no such place is left to the list. */
const labelsOf = ({ dimensions, grade }: Overlay, beside: DimensionWords): Label[] => {
  const lines = dimensions.flatMap(({ from, to, reaches }) => [[from, to], ...reaches]);
  const placed: Label[] = [];
  for (const dimension of dimensions) {
    const written = beside(dimension).filter((line) => line !== "");
    const wide = Math.max(...written.map((line, index) => textWidth(line, sizeOf(index) * grade, "plain"))) / 2;
    const high = (written.length * leading * grade) / 2;
    const boxAt = (center: Point): Box => ({ center, turn: 0, halfWidth: wide, halfHeight: high });
    const isFree = (at: Point): boolean =>
      placed.every(({ box }) => !overlap(box, boxAt(at))) && room(boxAt(at), lines) > 1;
    const at = placesFor(dimension, wide, high, grade).find(isFree);
    if (at) placed.push({ lines: written, at, box: boxAt(at), isStrong: dimension.of.kind === "edge" });
  }
  return placed;
};

/** Where a label could stand, the best first: outside of its line, or, beside the way of a corner, round about its end. */
const placesFor = ({ from, to, out, reaches }: Dimension, wide: number, high: number, grade: number): Point[] => {
  const isCorner = reaches.length === 0;
  const ways = isCorner
    ? [0, 1, -1, 2, -2, 3, -3, 4].map((eighths) => rotated(out, origin, (eighths * Math.PI) / 4))
    : [out];
  const spots = isCorner ? [to] : [0.5, 0.3, 0.7].map((share) => between(from, to, share));
  return [0, 1, 2, 3].flatMap((farther) =>
    ways.flatMap((way) => {
      const reach = Math.abs(way.x) * wide + Math.abs(way.y) * high + grade * 2 + farther * high;
      return spots.map((spot) => plus(spot, times(way, reach)));
    }),
  );
};

const origin: Point = { x: 0, y: 0 };

const overlap = (one: Box, other: Box): boolean =>
  Math.abs(one.center.x - other.center.x) < one.halfWidth + other.halfWidth &&
  Math.abs(one.center.y - other.center.y) < one.halfHeight + other.halfHeight;

const lettersOf = (labels: readonly Label[], grade: number): string[] =>
  labels.length === 0
    ? []
    : [
        `<g class="labels" fill="#000" stroke="#fff" stroke-width="${number(grade)}" stroke-linejoin="round" paint-order="stroke" font-family="sans-serif" text-anchor="middle">`,
        ...labels.flatMap(({ lines, at, isStrong }) =>
          lines.map((line, index) => {
            const y = at.y + (index - (lines.length - 1) / 2) * leading * grade + letters * grade * 0.35;
            const size = sizeOf(index);
            const bold = index === 0 && isStrong ? ' font-weight="bold"' : "";
            return `<text x="${number(at.x)}" y="${number(y)}" font-size="${number(size * grade)}"${bold}>${escaped(line)}</text>`;
          }),
        ),
        "</g>",
      ];

// In grades: the margin, and the height of the legend.
const margin = 6;
const legendHeight = 32;
const legendWidth = 110;

const paperOf = ({ bounds: box, dimensions, grade }: Overlay, labels: readonly Label[]): Bounds => {
  const spots = [
    { x: box.left, y: box.top },
    { x: box.right, y: box.bottom },
    ...dimensions.flatMap(({ from, to }) => [from, to]),
    ...labels.flatMap(({ box: each }) =>
      [-1, 1].map((side) => inTurned(each.center, 0, { x: side * each.halfWidth, y: side * each.halfHeight })),
    ),
  ];
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const left = Math.min(...xs) - margin * grade;
  return {
    left,
    top: Math.min(...ys) - margin * grade,
    right: Math.max(Math.max(...xs) + margin * grade, left + legendWidth * grade),
    bottom: Math.max(...ys) + (margin + legendHeight) * grade,
  };
};

const legendOf = (
  { grade, before, after, added, removed }: Overlay,
  words: OverlayWords,
  paper: Bounds,
  id: string,
): string[] => {
  const left = paper.left + margin * grade;
  const line =
    (dashed: boolean): ((y: number) => string) =>
    (y) =>
      dashed
        ? `<path d="M${number(left)} ${number(y)} h${number(grade * 12)}" stroke="#666" stroke-width="${number(grade * 0.5)}" stroke-dasharray="${number(grade * 2)} ${number(grade * 1.2)}"/>`
        : `<path d="M${number(left)} ${number(y)} h${number(grade * 12)}" stroke="#000" stroke-width="${number(grade * 0.6)}"/>`;
  const swatch =
    (name: string) =>
    (y: number): string =>
      `<rect x="${number(left)}" y="${number(y - grade * 2.5)}" width="${number(grade * 12)}" height="${number(grade * 5)}" fill="url(#${id}-${name})" stroke="#000" stroke-width="${number(grade * 0.2)}"/>`;
  const rows = [
    ...(before.length === 0 ? [] : [{ mark: line(true), text: "before" }]),
    ...(after.length === 0 ? [] : [{ mark: line(false), text: "after" }]),
    ...(added.length === 0 ? [] : [{ mark: swatch("added"), text: words.added }]),
    ...(removed.length === 0 ? [] : [{ mark: swatch("removed"), text: words.removed }]),
  ];
  const top = paper.bottom - legendHeight * grade;
  return [
    `<g class="legend" font-family="sans-serif" font-size="${number(letters * 0.8 * grade)}">`,
    ...rows.flatMap(({ mark, text }, index) => {
      const y = top + index * 7.5 * grade;
      return [mark(y), `<text x="${number(left + grade * 15)}" y="${number(y + grade * 1.6)}">${escaped(text)}</text>`];
    }),
    "</g>",
  ];
};
