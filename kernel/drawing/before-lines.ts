// The piece as it was before it was altered: a quiet line under the new one. What was cut out of another piece, laid
// elsewhere or turned over has no such line, as it would show a piece beside this one and nothing that was changed in it.
import { flattened } from "../geometry/area.ts";
import { bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";
import { samePath } from "../geometry/same-path.ts";
import { boundary, sense, type Walked, walked } from "../outline.ts";
import type { Piece } from "../working.ts";
import { isInside, type Line } from "./box.ts";
import type { Stroke } from "./drawing.ts";

/** The sewing lines of the piece that this one is an alteration of, where they ran otherwise. */
export const beforeLines = (piece: Piece): Stroke[] => {
  const { source, edges } = piece;
  const moved = (source ? walked(source) : []).filter(({ edge }) => {
    const now = edges.get(edge.name)?.path;
    return !now || !samePath(edge.path, now, unmoved);
  });
  if (!source || moved.length === 0 || isTurnedOver(piece, source) || !lieTogether(piece, source)) return [];
  return moved.map(({ edge }) => ({ kind: "before", path: edge.path }));
};

// Unmoved within this, in mm, a line need not be drawn twice.
const unmoved = 0.01;

/** Whether every line that both outlines walk now has the piece on its other hand. */
const isTurnedOver = (piece: Piece, source: Piece): boolean => {
  const before = new Map(walked(source).map((part) => [part.edge.name, handOf(source, part)]));
  const both = walked(piece).filter(({ edge }) => before.has(edge.name));
  return both.length > 0 && both.every((part) => handOf(piece, part) !== before.get(part.edge.name));
};

const handOf = (piece: Piece, { turned }: Walked): number => (turned ? -sense(piece) : sense(piece));

/** Whether most of the source is still there, in its place on the table. */
const lieTogether = (piece: Piece, source: Piece): boolean => {
  const [loop, before] = [boundary(piece), boundary(source)];
  // While the outline stands open, what was before is what one steers by.
  return !loop || !before || sharedPart(before, flattened(loop, drawnWithin)) >= leastShared;
};

// A facing or a yoke is less than half of what it is cut from; a coat made a jacket, or one with a band cut off, is more.
const leastShared = 0.5;

// How near, in mm, the bent lines follow the outlines; a few mm make no difference between a facing and a coat.
const drawnWithin = 2;

// Spots looked at in each direction; their share is within a few in a hundred of the area's.
const rowsOfSpots = 12;

/** The part of a closed path's inside that lies inside another closed line too, 0 to 1. */
const sharedPart = (loop: Path, other: Line): number => {
  const own = flattened(loop, drawnWithin);
  const { left, top, right, bottom } = bounds([loop]);
  const shares = Array.from({ length: rowsOfSpots }, (_, i) => (i + 0.5) / rowsOfSpots);
  const inside = shares
    .flatMap((down) => shares.map((along) => ({ x: left + along * (right - left), y: top + down * (bottom - top) })))
    .filter((spot) => isInside(spot, own));
  return inside.length === 0 ? 1 : inside.filter((spot) => isInside(spot, other)).length / inside.length;
};
