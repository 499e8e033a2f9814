// How pages are joined: the strip by which one laps over the next, and crosses that come to lie on one another.
import type { Stroke, Text } from "../drawing/drawing.ts";
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { margin } from "./papers.ts";

/** How far a page laps over the next, mm: room for glue, and for a pair of scissors that strays. */
export const lap = 10;

/** The printed length of each of so many parts that lap over one another and have this length together, mm. */
export const joinedLength = (whole: number, parts: number): number => (whole + (parts - 1) * lap) / parts;

/** A cross that meets the crosses of the pages around it. */
export const registerMark = ({ x, y }: Point): Stroke[] => [
  { kind: "frame", path: straight({ x: x - 5, y }, { x: x + 5, y }) },
  { kind: "frame", path: straight({ x, y: y - 5 }, { x, y: y + 5 }) },
];

/** A line across a page where one part ends and the next begins, with a cross at either end. */
export const joinLine = (y: number, width: number): Stroke[] => [
  { kind: "frame", path: straight({ x: margin, y }, { x: width - margin, y }) },
  ...registerMark({ x: margin, y }),
  ...registerMark({ x: width - margin, y }),
];

/** What stands under such a line: which part is to be laid up to it. */
export const comesHere = (part: number, y: number): Text => ({
  text: `Part ${part} comes here: trim it along its upper line, and lay it up to this one, so that the crosses meet.`,
  at: { x: margin + 8, y: y + 6.5 },
  size: 4,
  turn: 0,
  align: "start",
  weight: "plain",
});
