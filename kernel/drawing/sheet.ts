// All pieces of a garment on one sheet: rows from the top left, in the order of the recipe, the title block underneath.
// This is a sheet to look at and to print; how pieces lie on the cloth is another matter.
import type { Bounds } from "../geometry/bounds.ts";
import { mapped } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Garment } from "../working.ts";
import type { Drawing, Group } from "./drawing.ts";
import { extentOf, paperAround } from "./paper.ts";
import type { Remarks } from "./remarks.ts";
import { titleBlock } from "./title-block.ts";

/** The sheet with these groups side by side. */
export const sheetOf = (garment: Garment, pieces: readonly Group[], remarks: Remarks): Drawing => {
  const laid = inRows(pieces);
  const below = laid.length === 0 ? 0 : extentOf(laid).bottom + gap;
  const kinds = new Set(laid.flatMap(({ strokes }) => strokes.map(({ kind }) => kind)));
  const groups = [...laid, shifted(titleBlock(garment, kinds, remarks), { x: 0, y: below })];
  const count = pieces.length === 1 ? "1 piece" : `${pieces.length} pieces`;
  return {
    title: garment.title,
    words: [`${garment.title}: ${count}.`, ...pieces.map(({ words }) => words)].join(" "),
    paper: paperAround(groups),
    groups,
  };
};

// Between pieces, mm.
const gap = 25;

// A sheet a little wider than high reads best on a screen; where that leaves a row half empty, one up to twice as wide may be
// smaller in all.
const widthsToHeight = [1.4, 2];

/** The rows of the least paper, of two alike those that are less wide. */
const inRows = (pieces: readonly Group[]): Group[] => {
  const sizes = pieces.map((piece) => extentOf([piece]));
  const area = sizes.reduce(
    (sum, { left, top, right, bottom }) => sum + (right - left + gap) * (bottom - top + gap),
    0,
  );
  const widestPiece = Math.max(0, ...sizes.map(({ left, right }) => right - left));
  const tried = widthsToHeight.map((ratio) =>
    rowsWithin(pieces, sizes, Math.max(widestPiece, Math.sqrt(area * ratio))),
  );
  return tried.reduce((best, each) => (each.paper < best.paper * worthIt ? each : best)).laid;
};

// So much less paper is worth a wider sheet.
const worthIt = 0.9;

const rowsWithin = (
  pieces: readonly Group[],
  sizes: readonly Bounds[],
  widest: number,
): { readonly laid: Group[]; readonly paper: number } => {
  let [x, y, rowBottom, width] = [0, 0, 0, 0];
  const laid = pieces.map((piece, index) => {
    const { left, top, right, bottom } = sizes[index]!;
    if (x > 0 && x + right - left > widest) [x, y] = [0, rowBottom + gap];
    const placed = shifted(piece, { x: x - left, y: y - top });
    width = Math.max(width, x + right - left);
    x += right - left + gap;
    rowBottom = Math.max(rowBottom, y + bottom - top);
    return placed;
  });
  return { laid, paper: width * rowBottom };
};

const shifted = (group: Group, by: Point): Group => {
  const move = (p: Point): Point => ({ x: p.x + by.x, y: p.y + by.y });
  return {
    ...group,
    strokes: group.strokes.map((stroke) => ({ ...stroke, path: mapped(stroke.path, move) })),
    texts: group.texts.map((text) => ({ ...text, at: move(text.at) })),
  };
};
