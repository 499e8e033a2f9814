// Measuring along a path of the picture, with the browser's own ruler.
import type { Point } from "../../../kernel/geometry/point.ts";

const path = (d: string): SVGPathElement => {
  const element = document.createElementNS("http://www.w3.org/2000/svg", "path");
  element.setAttribute("d", d);
  return element;
};

/** The point at a part of a path's length, from 0 to 1. */
export const pathAt = (d: string, part: number): Point => {
  const measured = path(d);
  const { x, y } = measured.getPointAtLength(measured.getTotalLength() * part);
  return { x, y };
};

// As many spots of an edge are told apart as a hand could choose among.
const spots = 200;

/** The part of a path's length, from 0 to 1, that lies nearest to a point; the ends attract, since a corner is what is meant there. */
export const partOfPath = (d: string, { x, y }: Point): number => {
  const measured = path(d);
  const length = measured.getTotalLength();
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  for (let index = 0; index <= spots; index += 1) {
    const spot = measured.getPointAtLength((length * index) / spots);
    const away = Math.hypot(spot.x - x, spot.y - y);
    if (away < least) [best, least] = [index / spots, away];
  }
  return best < 0.03 ? 0 : best > 0.97 ? 1 : best;
};
