// How a picture lies on the paper: from a rectangle of known size that is seen in it, from two points a known distance apart,
// or from both.
import { cross, distance, minus, type Point, size } from "../../kernel/geometry/point.ts";
import type { Fault } from "./fault.ts";
import { enlarged, type Homography, inverse, type Quad, rectangleTo, sentBy } from "./homography.ts";

/** A rectangle seen in the picture: as many of its corners as are set, in picture pixels, the first at its top left. */
export interface KnownRectangle {
  readonly corners: readonly Point[];
  /** Its true breadth and height, mm; undefined where nothing readable is written. */
  readonly width: number | undefined;
  readonly height: number | undefined;
}

/** Two points of the picture, as many as are set, in pixels. */
export interface KnownDistance {
  readonly points: readonly Point[];
  /** How far apart they are in truth, mm; undefined where nothing readable is written. */
  readonly length: number | undefined;
}

/** From picture pixels to millimetres of paper, and back. */
export interface Straightened {
  readonly toPaper: Homography;
  readonly toPicture: Homography;
}

/** How the picture lies, or what is missing. Without corners the picture counts as taken straight from above. */
export const straightened = (rectangle: KnownRectangle, known: KnownDistance): Straightened | Fault => {
  const asSeen = rectangle.corners.length === 0 ? straightFromAbove : fromRectangle(rectangle);
  if ("words" in asSeen) return asSeen;
  const scale = scaleOf(asSeen.toPaper, known);
  if (scale === undefined) {
    const none = "Its size is not known: set two points whose distance you know, or straighten it by a rectangle.";
    return rectangle.corners.length === 0 ? { part: "size", words: none } : asSeen;
  }
  if (typeof scale !== "number") return scale;
  const toPaper = enlarged(asSeen.toPaper, scale);
  return { toPaper, toPicture: inverse(toPaper) };
};

/** How long a pixel of the picture is on the paper at a spot of it, mm: no point can be set more exactly by eye. */
export const pixelAt = ({ toPaper }: Straightened, spot: Point): number => {
  const here = sentBy(toPaper, spot);
  const beside = [sentBy(toPaper, { x: spot.x + 1, y: spot.y }), sentBy(toPaper, { x: spot.x, y: spot.y + 1 })];
  return Math.max(...beside.map((next) => (here && next ? distance(here, next) : Number.POSITIVE_INFINITY)));
};

const same: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];
const straightFromAbove: Straightened = { toPaper: same, toPicture: same };

const fromRectangle = ({ corners, width, height }: KnownRectangle): Straightened | Fault => {
  const quad = clockwise(corners);
  if ("words" in quad) return quad;
  if (width === undefined || height === undefined || width <= 0 || height <= 0)
    return { part: "straighten", words: "Write how long the rectangle's sides are: two lengths above 0." };
  const toPicture = rectangleTo(width, height, quad.corners);
  return { toPaper: inverse(toPicture), toPicture };
};

// Sine of the angle below which three points count as lying in one line: a rectangle seen as flat as that tells nothing.
const inOneLine = 0.03;

/** The corners clockwise on the page, still from the first; a photograph never shows a thing mirrored. */
const clockwise = (corners: readonly Point[]): { readonly corners: Quad } | Fault => {
  const fault = (words: string): Fault => ({ part: "straighten", words });
  const [p, q, r, s] = corners;
  if (!p || !q || !r || !s) return fault(`${corners.length} of the rectangle's 4 corners are set.`);
  const quad: Quad = [p, q, r, s];
  const turns = quad.map((here, i) => sineOfTurn(quad[(i + 3) % 4]!, here, quad[(i + 1) % 4]!));
  if (turns.some((turn) => !(Math.abs(turn) > inOneLine)))
    return fault("Three of the four corners lie in one line, so they are not those of a rectangle.");
  const clockwiseTurns = turns.filter((turn) => turn > 0).length;
  if (clockwiseTurns === 2)
    return fault("The four corners do not go round the rectangle in turn: two of its sides would cross.");
  if (clockwiseTurns % 4 !== 0)
    return fault("One of the four corners lies inside the other three, so they are not those of a rectangle.");
  return { corners: clockwiseTurns === 4 ? quad : [p, s, r, q] };
};

const sineOfTurn = (before: Point, here: Point, after: Point): number => {
  const [arriving, leaving] = [minus(here, before), minus(after, here)];
  return cross(arriving, leaving) / (size(arriving) * size(leaving));
};

/** How many times larger the paper is than the map says; undefined where no two points say so. */
const scaleOf = (toPaper: Homography, { points, length }: KnownDistance): number | Fault | undefined => {
  const fault = (words: string): Fault => ({ part: "size", words });
  const [from, to] = points;
  if (!from) return undefined;
  if (!to) return fault("1 of the 2 points is set.");
  if (length === undefined || length <= 0) return fault("Write how far apart the two points are: a length above 0.");
  const [start, end] = [sentBy(toPaper, from), sentBy(toPaper, to)];
  if (!start || !end) return fault("One of the two points lies where no paper can be seen: behind the horizon.");
  const apart = distance(start, end);
  return distance(from, to) < 2 || apart === 0
    ? fault("The two points lie on one spot, which gives no size.")
    : length / apart;
};
