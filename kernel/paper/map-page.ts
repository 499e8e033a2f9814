// The first page of a pattern on tiles: two squares to measure, the map of all pages, and how they are put together.

import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { wrapped } from "../drawing/lettering.ts";
import { extentOf } from "../drawing/paper.ts";
import { rectangle } from "../drawing/scale-square.ts";
import type { Point } from "../geometry/point.ts";
import { type Block, movedGroups } from "./block.ts";
import { type Grid, originOf, type Tile } from "./grid.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { testSquares } from "./test-squares.ts";

/** The map of these tiles. */
export const mapPage = (
  groups: readonly Group[],
  tiles: readonly Tile[],
  grid: Grid,
  paper: PaperKind,
  { title, titleBlock }: { readonly title: string; readonly titleBlock?: Block },
): Page => {
  const squares = testSquares({ x: margin, y: margin + headRoom }, "below");
  const left = margin + squares.width + 6;
  const room = { width: paper.width - margin - left, height: squares.height };
  const { right, bottom } = extentOf(groups);
  const wide = Math.max(right, ...tiles.map((tile) => originOf(tile, grid).x + grid.printed.width));
  const high = Math.max(bottom, ...tiles.map((tile) => originOf(tile, grid).y + grid.printed.height));
  const scale = Math.min(room.width / wide, room.height / high, 0.5);
  const at: Point = { x: left, y: margin + headRoom };
  const onMap = (p: Point): Point => ({ x: at.x + p.x * scale, y: at.y + p.y * scale });
  const names = Math.max(2.5, Math.min(6, grid.step.width * scale * 0.25));
  return {
    name: "map",
    width: paper.width,
    height: paper.height,
    window: { of: { left: 0, top: 0, right: wide, bottom: high }, at, scale },
    strokes: [
      ...(titleBlock ? underMap(titleBlock, paper).flatMap(({ strokes }) => strokes) : []),
      ...squares.strokes,
      ...tiles.map((tile): Stroke => {
        const { width, height } = grid.step;
        return { kind: "frame", path: rectangle(onMap(originOf(tile, grid)), width * scale, height * scale) };
      }),
    ],
    texts: [
      ...(titleBlock ? underMap(titleBlock, paper).flatMap(({ texts }) => texts) : []),
      { text: title, at: { x: margin, y: margin + 7 }, size: 7, turn: 0, align: "start", weight: "bold" },
      ...squares.texts,
      ...tiles.map((tile): Text => {
        const { x, y } = onMap(originOf(tile, grid));
        return {
          text: tile.name,
          at: { x: x + 1, y: y + names },
          size: names,
          turn: 0,
          align: "start",
          weight: "bold",
        };
      }),
      ...howTo(tiles.length, paper).flatMap((words, index, all) => {
        const before = all.slice(0, index).reduce((sum, each) => sum + lines(each, paper).length, 0);
        return lines(words, paper).map(
          (text, line): Text => ({
            text,
            at: { x: margin, y: margin + headRoom + squares.height + 9 + (before + line) * 5.2 },
            size: 4,
            turn: 0,
            align: "start",
            weight: "plain",
          }),
        );
      }),
    ],
  };
};

/** Whether a title block goes onto the map page, under the words. */
export const fitsUnderMap = ({ width, height }: Block, paper: PaperKind): boolean =>
  width <= paper.width - 2 * margin && height <= paper.height - 2 * margin - wordsBottom(paper);

/** The groups of a title block at the foot of the page. */
const underMap = ({ height, groups }: Block, paper: PaperKind): Group[] =>
  movedGroups(groups, { x: margin, y: paper.height - margin - height });

/** How far down the words reach, mm from the upper margin. */
const wordsBottom = (paper: PaperKind): number => {
  const squares = testSquares({ x: 0, y: 0 }, "below");
  const count = howTo(0, paper).reduce((sum, words) => sum + lines(words, paper).length, 0);
  return headRoom + squares.height + 9 + count * 5.2;
};

const headRoom = 12;

const lines = (words: string, paper: PaperKind): string[] => wrapped(words, 4, "plain", paper.width - 2 * margin);

const howTo = (count: number, { title }: PaperKind): string[] => [
  `${count === 1 ? "1 page" : `${count} pages`} of ${title} follow. Print at 100 %, "actual size", never fitted to the page; measure both squares before you cut.`,
  "Trim each page along its upper and left line. Lay it on the page before it, up to the thin line there, so that the crosses meet, and tape or glue it on; first the rows, then row under row.",
  "Keep fingers clear of blades and cut away from yourself.",
];
