// Where in a piece a block of text has room: the pole of inaccessibility, the point farthest from every line, or a place
// nearer the middle that has room enough. Distance is measured in half widths and half heights of the block, so that the
// block itself, not a circle, is what fits.
import { flattened } from "../geometry/area.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { asSeenBy, inTurned, type Line, squareDistance } from "./box.ts";

export interface Place {
  readonly center: Point;
  /** By what factor the block could grow there before it touches a line; under 1 it does not fit, under 0 it lies outside. */
  readonly room: number;
}

/** The place inside a closed path where a block of this size and turn, in mm and radians, stands clearest of all lines. */
export const roomiestPlace = (
  loop: Path,
  lines: readonly Line[],
  block: { readonly width: number; readonly height: number; readonly turn: number },
): Place => {
  const halves = { halfWidth: block.width / 2, halfHeight: block.height / 2 };
  const origin = { x: 0, y: 0 };
  const seen = asSeenBy({ center: origin, turn: block.turn, ...halves });
  const outline = flattened(loop, drawnWithin).map(seen);
  const obstacles = [outline, ...lines.map((line) => line.map(seen))];
  const best = pole(outline, obstacles);
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
const pole = (outline: Line, obstacles: readonly Line[]): Cell => {
  const [left, right] = [Math.min(...outline.map(({ x }) => x)), Math.max(...outline.map(({ x }) => x))];
  const [top, bottom] = [Math.min(...outline.map(({ y }) => y)), Math.max(...outline.map(({ y }) => y))];
  const middle = { x: (left + right) / 2, y: (top + bottom) / 2 };
  const cellAt = (x: number, y: number, half: number): Cell => {
    const room = roomAt({ x, y }, outline, obstacles);
    const away = Math.max(Math.abs(x - middle.x), Math.abs(y - middle.y));
    const worth = Math.min(room, enough) - pull * away;
    const beyond = Math.min(room + half, enough) - pull * Math.max(0, away - half);
    return { x, y, half, room, worth, beyond };
  };
  let best = cellAt(middle.x, middle.y, 0);
  const side = Math.max(Math.min(right - left, bottom - top), Math.max(right - left, bottom - top) / mostCellsInARow);
  if (side === 0) return best;
  const open: Cell[] = [];
  for (let x = left + side / 2; x - side / 2 < right; x += side)
    for (let y = top + side / 2; y - side / 2 < bottom; y += side) open.push(cellAt(x, y, side / 2));
  for (let looks = 0; looks < mostLooks && open.length > 0; looks += 1) {
    const [cell] = open.splice(mostPromising(open), 1);
    const { x, y, half, worth, beyond } = cell!;
    if (worth > best.worth) best = cell!;
    if (beyond <= best.worth + precision) break;
    for (const dx of [-half / 2, half / 2])
      for (const dy of [-half / 2, half / 2]) open.push(cellAt(x + dx, y + dy, half / 2));
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

const roomAt = (p: Point, outline: Line, obstacles: readonly Line[]): number => {
  const from = (q: Point): Point => ({ x: q.x - p.x, y: q.y - p.y });
  let least = Number.POSITIVE_INFINITY;
  for (const line of obstacles)
    for (let i = 1; i < line.length; i += 1)
      least = Math.min(least, squareDistance(from(line[i - 1]!), from(line[i]!)));
  return isInside(p, outline) ? least : -least;
};

const isInside = (p: Point, outline: Line): boolean => {
  let inside = false;
  for (let i = 0; i < outline.length; i += 1) {
    const a = outline[i]!;
    const b = outline[(i + 1) % outline.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y)) inside = !inside;
  }
  return inside;
};
