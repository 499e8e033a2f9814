// Where in a piece a block of text has room: the pole of inaccessibility, the point farthest from every line, or a place
// nearer the middle that has room enough. Distance is measured in half widths and half heights of the block, so that the
// block itself, not a circle, is what fits.
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { asSeenBy, inTurned, isInside, type Line, squareRoom } from "./box.ts";

export interface Place {
  readonly center: Point;
  /** By what factor the block could grow there before it touches a line; under 1 it does not fit, under 0 it lies outside. */
  readonly room: number;
}

/** A block's size and how it is turned, mm and radians. */
export interface Turned {
  readonly width: number;
  readonly height: number;
  readonly turn: number;
}

/** The place inside a closed path where a block stands clearest of all lines. */
export const roomiestPlace = (loop: Path, lines: readonly Line[], block: Turned): Place =>
  placeFor(loop, lines, block, Number.NEGATIVE_INFINITY);

/** Such a place where the block has so much room; undefined where there is none, which is soon known. */
export const placeWithRoom = (loop: Path, lines: readonly Line[], block: Turned, least: number): Place | undefined => {
  const place = placeFor(loop, lines, block, least);
  return place.room >= least ? place : undefined;
};

const placeFor = (loop: Path, lines: readonly Line[], block: Turned, least: number): Place => {
  const halves = { halfWidth: block.width / 2, halfHeight: block.height / 2 };
  const origin = { x: 0, y: 0 };
  const seen = asSeenBy({ center: origin, turn: block.turn, ...halves });
  const outline = flattened(loop, drawnWithin).map(seen);
  const obstacles = [outline, ...lines.map((line) => line.map(seen))];
  const best = pole(outline, squareRoom(obstacles), least);
  const center = inTurned(origin, block.turn, { x: best.x * halves.halfWidth, y: best.y * halves.halfHeight });
  return { center, room: best.room };
};

// How near, in mm, the bent line keeps to the outline; the block's margin is far wider.
const drawnWithin = 0.5;

// Good enough, in half widths and half heights of the block.
const precision = 0.02;

// With this much room a block stands free, and the middle of the piece counts for more than further room.
const enough = 1.6;

// What a half width or half height away from the middle costs, in room.
const pull = 0.05;

/** A square of the search, by its middle and half its side. */
interface Cell {
  readonly x: number;
  readonly y: number;
  readonly half: number;
  /** The room at its middle. */
  readonly room: number;
  /** How good its middle is, and how good no place in it can be. */
  readonly worth: number;
  readonly beyond: number;
}

// Along a square room and nearness grow by half its side at most. Squares that so cannot beat the best place found are
// dropped, the most promising of the others is quartered.
const pole = (outline: Line, roomAmong: (p: Point) => number, least: number): Cell => {
  const [left, right] = [Math.min(...outline.map(({ x }) => x)), Math.max(...outline.map(({ x }) => x))];
  const [top, bottom] = [Math.min(...outline.map(({ y }) => y)), Math.max(...outline.map(({ y }) => y))];
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const cellAt = (x: number, y: number, half: number): Cell => {
    const clear = roomAmong({ x, y });
    const room = isInside({ x, y }, outline) ? clear : -clear;
    const away = Math.max(Math.abs(x - middle.x), Math.abs(y - middle.y));
    const worth = Math.min(room, enough) - pull * away;
    const beyond = Math.min(room + half, enough) - pull * Math.max(0, away - half);
    return { x, y, half, room, worth, beyond };
  };
  let best = cellAt(middle.x, middle.y, 0);
  const open: Cell[] = [];
  const put = (x: number, y: number, half: number): void => {
    const cell = cellAt(x, y, half);
    // What is wanted by a hair's breadth is given up, or its search would not end.
    if (cell.room + half >= least + precision) open.push(cell);
  };
  const side = Math.max(Math.min(right - left, bottom - top), Math.max(right - left, bottom - top) / mostCellsInARow);
  if (side === 0) return best;
  for (let x = left + side / 2; x - side / 2 < right; x += side)
    for (let y = top + side / 2; y - side / 2 < bottom; y += side) put(x, y, side / 2);
  for (let looks = 0; looks < mostLooks && open.length > 0; looks += 1) {
    const [cell] = open.splice(mostPromising(open), 1);
    const { x, y, half, room, worth, beyond } = cell!;
    const [wide, wideBefore] = [room >= least, best.room >= least];
    if (wide === wideBefore ? worth > best.worth : wide) best = cell!;
    if (best.room >= least && beyond <= best.worth + precision) break;
    for (const dx of [-half / 2, half / 2]) for (const dy of [-half / 2, half / 2]) put(x + dx, y + dy, half / 2);
  }
  return best;
};

// A piece a hundred times longer than wide is searched in no more squares than this along it.
const mostCellsInARow = 64;

// Far more than any piece has needed; an outline with hundreds of lines in it still ends soon.
const mostLooks = 2000;

const mostPromising = (open: readonly Cell[]): number => {
  let first = 0;
  for (let i = 1; i < open.length; i += 1) if (open[i]!.beyond > open[first]!.beyond) first = i;
  return first;
};
