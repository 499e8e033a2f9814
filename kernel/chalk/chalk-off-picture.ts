// A chalked-off piece as a small picture: its ruled lines, the number of every point, and the line that is measured from.

import type { Box } from "../drawing/box.ts";
import type { Stroke, Text } from "../drawing/drawing.ts";
import { ascent, boxOf, textWidth } from "../drawing/lettering.ts";
import { arcSpans } from "../geometry/arc.ts";
import { straight, through } from "../geometry/path.ts";
import { minus, type Point, plus, times, unit } from "../geometry/point.ts";
import type { Picture } from "../written/entry.ts";
import type { ChalkedPiece } from "./chalk-off.ts";

/** The picture, down the line being down the page; long pieces lie on their side, the start of the line to the left. */
export const chalkOffPicture = ({ edges, frame }: ChalkedPiece): Picture => {
  const points = edges.flatMap((edge) => edge.points);
  const upright = points.map(({ down, across }): Point => ({ x: across, y: down }));
  const isTall = spread(upright, "y") > spread(upright, "x") * tall;
  // A quarter turn against the clock: down goes to the right.
  const laid = isTall ? upright.map(({ x, y }): Point => ({ x: y, y: -x })) : upright;
  const scale = Math.min(room.width / spread(laid, "x"), room.height / spread(laid, "y"));
  const [left, top] = [Math.min(...laid.map(({ x }) => x)), Math.min(...laid.map(({ y }) => y))];
  const spots = laid.map(({ x, y }): Point => ({ x: border + (x - left) * scale, y: border + (y - top) * scale }));
  const zero = laidOn({ x: 0, y: 0 }, { left, top, scale });
  const alongLine = isTall ? { x: 1, y: 0 } : { x: 0, y: 1 };
  const bottom = Math.max(...points.map(({ down }) => down), 0) * scale;
  return {
    kind: "picture",
    strokes: [
      { kind: "frame", path: through([...spots, spots[0]!]) },
      // A line inside the piece is drawn as the grain is; an edge is there already.
      ...(frame.edge === undefined
        ? [{ kind: "grain", path: straight(zero, plus(zero, times(alongLine, bottom))) } as const]
        : []),
      ...spots.map(dotAt),
    ],
    texts: numbersBeside(spots),
    height: spread(spots, "y") + 2 * border,
  };
};

const room = { width: 160, height: 62 };
// Room around the outline for the numbers, mm.
const border = 6;
// A piece so much longer than it is wide is laid on its side.
const tall = 1.1;

const spread = (points: readonly Point[], way: "x" | "y"): number => {
  const all = points.map((p) => p[way]);
  // A piece of no width is still drawn.
  return Math.max(...all) - Math.min(...all) || 1;
};

const laidOn = (p: Point, { left, top, scale }: { left: number; top: number; scale: number }): Point => ({
  x: border + (p.x - left) * scale,
  y: border + (p.y - top) * scale,
});

const dotRadius = 0.7;

const dotAt = (spot: Point): Stroke => ({
  kind: "arrowhead",
  path: arcSpans(spot, { x: spot.x + dotRadius, y: spot.y }, 2 * Math.PI),
});

const numberSize = 3;

// How far from its point a number may stand, mm: outside the outline as near as it can, or else inside.
const reaches = [0, 2.4, -5, 4.8, -7.5] as const;

/** The numbers of the points, each where it is clear of those before it and of the points themselves, if there is such a place. */
const numbersBeside = (spots: readonly Point[]): Text[] => {
  const placed: Text[] = [];
  for (const [index, spot] of spots.entries()) {
    const tried = reaches.map((further) => numberBeside(String(index + 1), spot, spots, index, further));
    const isClear = (text: Text): boolean =>
      placed.every((other) => !overlap(boxOf(text), boxOf(other))) &&
      spots.every((other) => !overlap(boxOf(text), { center: other, halfWidth: dotRadius, halfHeight: dotRadius }));
    placed.push(tried.find(isClear) ?? tried[0]!);
  }
  return placed;
};

type Level = Pick<Box, "center" | "halfWidth" | "halfHeight">;

const overlap = (a: Level, b: Level): boolean =>
  Math.abs(a.center.x - b.center.x) < a.halfWidth + b.halfWidth &&
  Math.abs(a.center.y - b.center.y) < a.halfHeight + b.halfHeight;

/** A number on the side that the two lines of its point turn away from. */
const numberBeside = (text: string, spot: Point, spots: readonly Point[], index: number, further: number): Text => {
  const before = spots[(index + spots.length - 1) % spots.length]!;
  const after = spots[(index + 1) % spots.length]!;
  const along = unit(minus(after, before));
  const away = area(spots) > 0 ? { x: along.y, y: -along.x } : { x: -along.y, y: along.x };
  const half = (Math.abs(away.x) * textWidth(text, numberSize, "plain") + Math.abs(away.y) * ascent * numberSize) / 2;
  const middle = plus(spot, times(away, 1.6 + half + further));
  return {
    text,
    at: { x: middle.x, y: middle.y + (ascent * numberSize) / 2 },
    size: numberSize,
    turn: 0,
    align: "middle",
    weight: "plain",
  };
};

/** Twice the area inside, positive when it runs clockwise on the page. */
const area = (spots: readonly Point[]): number =>
  spots.reduce((sum, { x, y }, index) => {
    const next = spots[(index + 1) % spots.length]!;
    return sum + x * next.y - y * next.x;
  }, 0);
