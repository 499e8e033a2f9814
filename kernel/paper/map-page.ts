// The first page of a pattern on tiles: two squares to measure, the map of all pages, and how they are put together.

import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { wrapped } from "../drawing/lettering.ts";
import { extentOf } from "../drawing/paper.ts";
import { rectangle } from "../drawing/scale-square.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { type Block, movedGroups } from "./block.ts";
import { type Cell, type Grid, originOf, type Tile } from "./grid.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { testSquares } from "./test-squares.ts";

/** All tiles of a print, and the places among them that are left out because nothing is drawn there. */
export interface Tiles {
  readonly tiles: readonly Tile[];
  readonly empty: readonly Cell[];
}

/** The map of these tiles; what is left out is crossed out. */
export const mapPage = (
  groups: readonly Group[],
  { tiles, empty }: Tiles,
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
      ...empty.flatMap((cell): Stroke[] => {
        const [from, { width, height }] = [originOf(cell, grid), grid.step];
        const [left, top, right, bottom] = [from.x, from.y, from.x + width, from.y + height];
        return [
          { kind: "frame", path: rectangle(onMap(from), width * scale, height * scale) },
          { kind: "frame", path: straight(onMap({ x: left, y: top }), onMap({ x: right, y: bottom })) },
          { kind: "frame", path: straight(onMap({ x: left, y: bottom }), onMap({ x: right, y: top })) },
        ];
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
      ...howTo(tiles.length, paper, empty).flatMap((words, index, all) => {
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

/** How far down the words reach at most, mm from the upper margin. */
const wordsBottom = (paper: PaperKind): number => {
  const squares = testSquares({ x: 0, y: 0 }, "below");
  const count = howTo(0, paper, [{ row: 0, column: 0 }]).reduce((sum, words) => sum + lines(words, paper).length, 0);
  return headRoom + squares.height + 9 + count * 5.2;
};

const headRoom = 12;

const lines = (words: string, paper: PaperKind): string[] => wrapped(words, 4, "plain", paper.width - 2 * margin);

const howTo = (count: number, { title }: PaperKind, empty: readonly Cell[]): string[] => [
  `${count === 1 ? "1 page" : `${count} pages`} of ${title} follow. Print at 100 %, "actual size", never fitted to the page; measure both squares before you cut.`,
  "Trim each page along its upper and left line. Lay it on the page before it, up to the thin line there, so that the crosses meet, and tape or glue it on; first the rows, then row under row.",
  ...(empty.length > 0
    ? ["Pages crossed out on the map are empty and left out: leave their place open, or lay blank paper there."]
    : []),
  "Keep fingers clear of blades and cut away from yourself.",
];
