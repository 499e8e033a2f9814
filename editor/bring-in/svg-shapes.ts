// The shapes of SVG as lines, in the user units they are written in (W3C SVG 2, chapter 10 "Basic Shapes").
import { type Path, straight, through } from "../../kernel/geometry/path.ts";
import type { Point } from "../../kernel/geometry/point.ts";
import { arcBetween, wholeCircle, wholeEllipse } from "./circle-arc.ts";
import { drawingLimits } from "./drawing-limits.ts";
import { svgLength } from "./svg-length.ts";
import { svgPath } from "./svg-path.ts";
import type { SvgElement } from "./svg-tree.ts";

/** What 100 % are, across and down; undefined where nobody knows. */
export interface Room {
  readonly width: number | undefined;
  readonly height: number | undefined;
}

/** The lines of a shape, and where in its path data reading stopped; or why there are none, in the plural. */
export type ShapeRead =
  | { readonly paths: readonly Path[]; readonly brokenAt?: number | undefined }
  | { readonly leftOut: string };

/** Reads one shape; undefined where the element is none. */
export const svgShape = (element: SvgElement, room: Room): ShapeRead | undefined => {
  const read = readers.get(element.name);
  if (!read) return undefined;
  const across = (name: string): number | undefined => lengthOf(element, name, room.width, 0);
  const down = (name: string): number | undefined => lengthOf(element, name, room.height, 0);
  return (
    read({ element, room, across, down }) ?? {
      leftOut: `elements (${element.name}) with a measure that cannot be read`,
    }
  );
};

/** A length in an attribute, or what stands for it; `whole` is what 100 % are. Undefined where it cannot be read. */
export const lengthOf = (
  { attributes }: SvgElement,
  name: string,
  whole: number | undefined,
  otherwise: number | undefined,
): number | undefined => {
  const written = attributes.get(name);
  return written === undefined || written === "auto" ? otherwise : svgLength(written, whole)?.value;
};

interface Shape {
  readonly element: SvgElement;
  readonly room: Room;
  /** Lengths by the names of their attributes, 0 where they are not said. */
  across(name: string): number | undefined;
  down(name: string): number | undefined;
}

const path = ({ element }: Shape): ShapeRead => svgPath(element.attributes.get("d") ?? "");

const line = ({ across, down }: Shape): ShapeRead | undefined => {
  const [x1, y1, x2, y2] = [across("x1"), down("y1"), across("x2"), down("y2")];
  if (x1 === undefined || y1 === undefined || x2 === undefined || y2 === undefined) return undefined;
  return { paths: x1 === x2 && y1 === y2 ? [] : [straight({ x: x1, y: y1 }, { x: x2, y: y2 })] };
};

const bentLine = ({ element }: Shape): ShapeRead | undefined => {
  const points = pointsIn(element.attributes.get("points") ?? "");
  if (points === undefined) return undefined;
  const isClosed = element.name === "polygon" && points.length > 2;
  return { paths: bent(isClosed ? [...points, points[0]!] : points) };
};

const rect = ({ element, room, across, down }: Shape): ShapeRead | undefined => {
  const [x, y, width, height] = [across("x"), down("y"), across("width"), down("height")];
  if (x === undefined || y === undefined || width === undefined || height === undefined) return undefined;
  if (width < 0 || height < 0) return undefined;
  if (width === 0 || height === 0 || isPaper(element, room, { width, height })) return { paths: [] };
  // A radius that is not said is the other one.
  const rx = lengthOf(element, "rx", room.width, undefined);
  const ry = lengthOf(element, "ry", room.height, undefined);
  return { paths: [rectangle(x, y, width, height, Math.max(0, rx ?? ry ?? 0), Math.max(0, ry ?? rx ?? 0))] };
};

const circle = ({ across, down }: Shape): ShapeRead | undefined => {
  const [cx, cy, r] = [across("cx"), down("cy"), across("r")];
  if (cx === undefined || cy === undefined || r === undefined || r < 0) return undefined;
  return { paths: r === 0 ? [] : [wholeCircle({ x: cx, y: cy }, r)] };
};

const ellipse = ({ element, room, across, down }: Shape): ShapeRead | undefined => {
  const [cx, cy] = [across("cx"), down("cy")];
  const rx = lengthOf(element, "rx", room.width, down("ry"));
  const ry = lengthOf(element, "ry", room.height, across("rx"));
  if (cx === undefined || cy === undefined || rx === undefined || ry === undefined || rx < 0 || ry < 0)
    return undefined;
  return { paths: rx === 0 || ry === 0 ? [] : [wholeEllipse({ x: cx, y: cy }, rx, ry)] };
};

const readers: ReadonlyMap<string, (shape: Shape) => ShapeRead | undefined> = new Map([
  ["path", path],
  ["line", line],
  ["polyline", bentLine],
  ["polygon", bentLine],
  ["rect", rect],
  ["circle", circle],
  ["ellipse", ellipse],
]);

/** Whether a rectangle is the paper that all is drawn on: filled, without an outline, as large as the drawing. */
const isPaper = (
  { attributes }: SvgElement,
  { width, height }: Room,
  rect: { readonly width: number; readonly height: number },
): boolean => {
  const stroke = attributes.get("stroke") ?? /(?:^|;)\s*stroke\s*:\s*([^;]+)/.exec(attributes.get("style") ?? "")?.[1];
  if (stroke !== undefined && stroke.trim() !== "none") return false;
  return width !== undefined && height !== undefined && rect.width >= width && rect.height >= height;
};

const pointsIn = (written: string): Point[] | undefined => {
  const values = written.trim() === "" ? [] : written.trim().split(/\s*,\s*|\s+/);
  if (values.length > 2 * drawingLimits.spans) return undefined;
  const numbers = values.map(Number);
  if (!numbers.every(Number.isFinite) || numbers.length % 2 !== 0) return undefined;
  return Array.from({ length: numbers.length / 2 }, (_, i) => ({ x: numbers[2 * i]!, y: numbers[2 * i + 1]! }));
};

/** A bent line without stretches of no length. */
const bent = (points: readonly Point[]): Path[] => {
  const apart = points.filter((p, i) => i === 0 || p.x !== points[i - 1]!.x || p.y !== points[i - 1]!.y);
  return apart.length < 2 ? [] : [through(apart)];
};

/** A rectangle with rounded corners, clockwise from the end of the upper left one (SVG 2, 10.2). */
const rectangle = (x: number, y: number, width: number, height: number, roundX: number, roundY: number): Path => {
  const [rx, ry] = [Math.min(roundX, width / 2), Math.min(roundY, height / 2)];
  const [right, bottom] = [x + width, y + height];
  const corners: Point[] = [
    { x: x + rx, y },
    { x: right - rx, y },
    { x: right, y: y + ry },
    { x: right, y: bottom - ry },
    { x: right - rx, y: bottom },
    { x: x + rx, y: bottom },
    { x, y: bottom - ry },
    { x, y: y + ry },
  ];
  return corners.flatMap((from, index) => {
    const to = corners[(index + 1) % corners.length]!;
    if (from.x === to.x && from.y === to.y) return [];
    return index % 2 === 0 ? straight(from, to) : arcBetween(from, to, { rx, ry, turn: 0 }, false, true);
  });
};
