// The first page of a pattern on tiles: two squares to measure, the map of all pages, and how they are put together.

import type { Group, Stroke, Text } from "../drawing/drawing.ts";
import { textWidth, wrapped } from "../drawing/lettering.ts";
import { extentOf } from "../drawing/paper.ts";
import { rectangle } from "../drawing/scale-square.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { movedGroups } from "./block.ts";
import { type Cell, type Grid, originOf, type Tile } from "./grid.ts";
import type { Page } from "./page.ts";
import { margin, type PaperKind } from "./papers.ts";
import { testSquares } from "./test-squares.ts";

/** All tiles of a print, and the places among them that are left out because nothing is drawn there. */
export interface Tiles {
  readonly tiles: readonly Tile[];
  readonly empty: readonly Cell[];
}

/**
 * The map of these tiles, on which what is left out is crossed out, and beside it the column of what the lines mean; a column that
 * leaves no room for the map comes on a page of its own.
 */
export const mapPages = (
  groups: readonly Group[],
  tiles: Tiles,
  grid: Grid,
  paper: PaperKind,
  { title, column }: { readonly title: string; readonly column: readonly Group[] },
): Page[] => {
  const squares = testSquares({ x: margin, y: margin + headRoom }, "below");
  const left = margin + squares.width + gap;
  const bottom = margin + headRoom + squares.height;
  const columnHeight = column.length === 0 ? 0 : extentOf(column).bottom;
  const isBeside = columnHeight <= squares.height - leastMap;
  const height = isBeside && columnHeight > 0 ? squares.height - columnHeight - gap : squares.height;
  const onMap = mapAt(
    { x: left, y: margin + headRoom },
    { width: paper.width - margin - left, height },
    groups,
    tiles,
    grid,
  );
  const map: Page = {
    name: "map",
    width: paper.width,
    height: paper.height,
    window: onMap.window,
    strokes: [...squares.strokes, ...onMap.strokes],
    texts: [
      titleAt(title, paper),
      ...squares.texts,
      ...onMap.texts,
      ...wordsUnder(bottom, howTo(tiles.tiles.length, paper, tiles.empty), paper),
    ],
    groups: isBeside ? movedGroups(column, { x: left, y: bottom - columnHeight }) : [],
  };
  if (isBeside) return [map];
  const beside = movedGroups(column, { x: margin, y: margin + headRoom });
  const { width } = paper;
  return [
    map,
    { name: "lines", width, height: paper.height, strokes: [], texts: [titleAt(title, paper)], groups: beside },
  ];
};

/** The pattern made small, with the tiles on it by name. */
const mapAt = (
  at: Point,
  room: { readonly width: number; readonly height: number },
  groups: readonly Group[],
  { tiles, empty }: Tiles,
  grid: Grid,
): Required<Pick<Page, "window" | "strokes" | "texts">> => {
  const { right, bottom } = extentOf(groups);
  const wide = Math.max(right, ...tiles.map((tile) => originOf(tile, grid).x + grid.printed.width));
  const high = Math.max(bottom, ...tiles.map((tile) => originOf(tile, grid).y + grid.printed.height));
  const scale = Math.min(room.width / wide, room.height / high, 0.5);
  const onMap = (p: Point): Point => ({ x: at.x + p.x * scale, y: at.y + p.y * scale });
  const names = Math.max(2.5, Math.min(6, grid.step.width * scale * 0.25));
  return {
    window: { of: { left: 0, top: 0, right: wide, bottom: high }, at, scale },
    strokes: [
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
    texts: tiles.map((tile): Text => {
      const { x, y } = onMap(originOf(tile, grid));
      return { text: tile.name, at: { x: x + 1, y: y + names }, size: names, turn: 0, align: "start", weight: "bold" };
    }),
  };
};

/** The title over the page, in smaller letters where it is long. */
const titleAt = (title: string, { width }: PaperKind): Text => {
  const size = Math.min(titleSize, (titleSize * (width - 2 * margin)) / textWidth(title, titleSize, "bold"));
  return { text: title, at: { x: margin, y: margin + 7 }, size, turn: 0, align: "start", weight: "bold" };
};

const titleSize = 7;

const wordsUnder = (top: number, sentences: readonly string[], paper: PaperKind): Text[] =>
  sentences
    .flatMap((words) => wrapped(words, 4, "plain", paper.width - 2 * margin))
    .map(
      (text, index): Text => ({
        text,
        at: { x: margin, y: top + 9 + index * 5.2 },
        size: 4,
        turn: 0,
        align: "start",
        weight: "plain",
      }),
    );

// Between the squares, the map and the column, mm, and the least height that a map is read at.
const gap = 6;
const leastMap = 60;

const headRoom = 12;

const howTo = (count: number, { title }: PaperKind, empty: readonly Cell[]): string[] => [
  `${count === 1 ? "1 page" : `${count} pages`} of ${title} follow. Print at 100 %, "actual size", never fitted to the page; measure both squares before you cut.`,
  "Trim each page along its upper and left line. Lay it on the page before it, up to the thin line there, so that the crosses meet, and tape or glue it on; first the rows, then row under row.",
  ...(empty.length > 0
    ? ["Pages crossed out on the map are empty and left out: leave their place open, or lay blank paper there."]
    : []),
  "Keep fingers clear of blades and cut away from yourself.",
];
