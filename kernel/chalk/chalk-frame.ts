// Where a tape is laid to mark a piece on the cloth: a line to measure out from, and a level to measure down from.
import { flattened } from "../geometry/area.ts";
import { endOf, isStraight, type Path, startOf } from "../geometry/path.ts";
import { cross, distance, dot, minus, type Point, plus, sameSpot, times, unit } from "../geometry/point.ts";
import { foldOf, grainDirection } from "../grain-direction.ts";
import { isHidden } from "../hidden-names.ts";
import { type Walked, walked } from "../outline.ts";
import type { Piece } from "../working.ts";

export interface ChalkFrame {
  /** What is measured out from, in words: "the fold center", "the grain line". */
  readonly from: string;
  /** The outline edge that it is; none where it is a line inside the piece. */
  readonly edge?: string;
  /** The place that is measured down from, in words: "nape". */
  readonly level: string;
  /** Where both are 0, on the drafted piece. */
  readonly origin: Point;
  /** Along the line, length 1. */
  readonly down: Point;
  /** Square to it, to the right when the top of the line lies away from one, as on the drafted piece; length 1. */
  readonly right: Point;
  /** On which side of the line the piece lies, its top away from one. */
  readonly side: "right" | "left" | "both";
}

/** A spot as the tape has it, mm; `across` is positive to the right. */
export interface Taped {
  readonly down: number;
  readonly across: number;
}

/** The spot of the drafted piece as the tape has it, exactly. */
export const tapedIn = ({ origin, down, right }: ChalkFrame, p: Point): Taped => {
  const v = minus(p, origin);
  return { down: dot(v, down), across: dot(v, right) };
};

/** Where on the drafted piece a taped spot lies. */
export const untaped = ({ origin, down, right }: ChalkFrame, taped: Taped): Point =>
  plus(origin, plus(times(down, taped.down), times(right, taped.across)));

/**
 * The line and level of a piece with a closed outline: the fold; else a straight edge along the grain that the whole piece
 * lies to one side of, a center before others; else the grain line; else a straight edge; else a plumb line.
 */
export const chalkFrame = (piece: Piece): ChalkFrame => {
  const parts = walked(piece);
  const outline = parts.flatMap(({ path }) => flattened(path, drawnWithin));
  const fold = foldOf(piece);
  if (fold && isStraight(fold.path, straightWithin))
    return alongPath(piece, outline, fold.path, `the fold ${fold.name}`, fold.name);
  const grain = grainDirection(piece);
  const straights = parts.filter(({ path }) => isStraight(path, straightWithin)).sort(centerFirst);
  const beside = straights
    .filter(({ path }) => grain && Math.abs(cross(directionOf(path), grain)) < alongWithin)
    .map((part) => alongPath(piece, outline, part.path, `the edge ${part.edge.name}`, part.edge.name))
    .find(({ side }) => side !== "both");
  if (beside) return beside;
  if (grain && piece.grain?.kind === "line")
    return throughSpot(piece, outline, piece.grain.from, grain, "the grain line");
  const any = straights[0];
  if (any) return alongPath(piece, outline, any.path, `the edge ${any.edge.name}`, any.edge.name);
  return throughSpot(piece, outline, highestCorner(piece, plumb), plumb, "a plumb line");
};

const plumb: Point = { x: 0, y: 1 };

// A line that strays less than this, in mm, is straight to a chalk line's width.
const straightWithin = 0.5;
const drawnWithin = 0.1;

// The sine of the angle that still counts as along the grain: 5 mm in a meter.
const alongWithin = 0.005;

// What a piece may reach beyond the line, in mm, and still lie to one side of it.
const reachesBeyond = 1;

const directionOf = (path: Path): Point => unit(minus(endOf(path), startOf(path)));

const lengthOf = ({ path }: Walked): number => distance(startOf(path), endOf(path));

// Common practice, no source: one measures from the center, or from the edge that closes there.
const isCenter = ({ edge: { name, role } }: Walked): boolean => role === "opening" || name.startsWith("center");

const centerFirst = (a: Walked, b: Walked): number =>
  Number(isCenter(b)) - Number(isCenter(a)) || lengthOf(b) - lengthOf(a);

/** Down the page, or to the right where the line is level. */
const downward = (v: Point): Point => (v.y < -level || (v.y <= level && v.x < 0) ? times(v, -1) : v);
const level = 1e-6;

const alongPath = (piece: Piece, outline: readonly Point[], path: Path, from: string, edge: string): ChalkFrame => {
  const down = downward(directionOf(path));
  const origin = dot(minus(endOf(path), startOf(path)), down) >= 0 ? startOf(path) : endOf(path);
  return { ...framed(outline, origin, down), from, edge, level: cornerName(piece, origin) };
};

/** The level is that of the highest corner. */
const throughSpot = (
  piece: Piece,
  outline: readonly Point[],
  spot: Point,
  direction: Point,
  from: string,
): ChalkFrame => {
  const down = downward(direction);
  const highest = highestCorner(piece, down);
  const origin = plus(spot, times(down, dot(minus(highest, spot), down)));
  return { ...framed(outline, origin, down), from, level: cornerName(piece, highest) };
};

const framed = (outline: readonly Point[], origin: Point, down: Point) => {
  const right = { x: down.y, y: -down.x };
  const across = outline.map((p) => dot(minus(p, origin), right));
  const side = Math.min(...across) > -reachesBeyond ? "right" : Math.max(...across) < reachesBeyond ? "left" : "both";
  return { origin, down, right, side } as const;
};

const highestCorner = (piece: Piece, down: Point): Point =>
  walked(piece)
    .map(({ path }) => startOf(path))
    .reduce((best, p) => (dot(p, down) < dot(best, down) - level ? p : best));

/** The place of the recipe that lies there, or the edges that meet there. */
const cornerName = (piece: Piece, p: Point): string => {
  const place = [...piece.places.values()].find(({ name, point }) => !isHidden(name) && sameSpot(point, p));
  if (place) return place.name;
  const meeting = walked(piece).filter(({ path }) => sameSpot(startOf(path), p) || sameSpot(endOf(path), p));
  return `the corner of ${[...new Set(meeting.map(({ edge }) => edge.name))].join(" and ")}`;
};
