// A drawing as HP-GL for pen plotters: lines only, three pens, 40 units to the mm from the lower left corner of the paper.
// Dashes are drawn one by one, as plotters stretch their own to the size of the page. Names and labels are left to the other
// formats: plotters write letters of their own in any size they like, and few beyond ASCII.
import type { Drawing, Stroke, StrokeKind } from "../drawing/drawing.ts";
import { fittedDashes, sizesIn, styleOf } from "../drawing/line-style.ts";
import { pathLength } from "../geometry/arc-length.ts";
import { flattened } from "../geometry/area.ts";
import type { Bounds } from "../geometry/bounds.ts";
import type { Path } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import { part } from "../geometry/split.ts";
import { drawnWithin } from "./bent-line.ts";
import { number } from "./path-data.ts";
import { penLines } from "./pen-lines.ts";

/** The HP-GL of a drawing: IN, SP, PU, PD and nothing else. */
export const hpgl = (drawing: Drawing): string => {
  const sizes = sizesIn(drawing);
  const drawn = drawing.groups.flatMap(({ strokes, size }) =>
    penLines(strokes).map((stroke) => ({ pen: pens[stroke.kind], lines: dashesOf(stroke, size, sizes) })),
  );
  const plotted = [1, 2, 3].flatMap((pen) => {
    const lines = drawn.filter((each) => each.pen === pen).flatMap((each) => each.lines);
    return lines.length === 0 ? [] : [`SP${pen};`, ...lines.flatMap((line) => plottedLine(line, drawing.paper))];
  });
  return ["IN;", ...plotted, "PU;", "SP0;", ""].join("\n");
};

/**
 * What each kind is drawn with: 1 is cut, 2 is sewn or marked on the cloth, 3 is to be read. A pen has no grey, so the line of a
 * piece as it was before is left out: in black it would be cut.
 */
const pens: Readonly<Record<StrokeKind, number | undefined>> = {
  before: undefined,
  "inner-line": 2,
  "dart-center": 2,
  "sewing-line": 2,
  "hem-line": 2,
  fold: 2,
  "fold-bracket": 3,
  "cutting-line": 1,
  grain: 3,
  notch: 1,
  drill: 2,
  arrowhead: 3,
  "scale-square": 3,
  frame: 3,
};

/** A stroke as the stretches that the pen is down for. */
const dashesOf = ({ kind, path }: Stroke, size: string | undefined, sizes: readonly string[]): Path[] => {
  const length = pathLength(path);
  const dashes = fittedDashes(styleOf(kind, size, sizes).dashes, length);
  if (dashes.length === 0) return [path];
  const down: Path[] = [];
  for (let [at, index] = [0, 0]; at < length - hair; index += 1) {
    const next = Math.min(length, at + dashes[index % dashes.length]!);
    if (index % 2 === 0) down.push(part(path, at, next));
    at = next;
  }
  return down;
};

// A dash shorter than this, in mm, is what rounding left over.
const hair = 1e-6;

// Plotter units are 0.025 mm (HP-GL reference).
const unitsPerMillimetre = 40;

const plottedLine = (path: Path, paper: Bounds): string[] => {
  const points = flattened(path, drawnWithin).map((point) => plotted(point, paper));
  const [first, ...others] = points.filter((point, index) => point !== points[index - 1]);
  // What is shorter than a unit of the plotter would only be a blot.
  return others.length === 0 ? [] : [`PU${first};`, `PD${others.join(",")};`];
};

const plotted = ({ x, y }: Point, { left, bottom }: Bounds): string => `${inUnits(x - left)},${inUnits(bottom - y)}`;

// The lower left corner is the farthest a plotter goes one way, and numbers of 23 bits the other (HP-GL/2 reference).
const farthest = 2 ** 23 - 1;

const inUnits = (millimetres: number): string =>
  number(Math.min(farthest, Math.max(0, Math.round(millimetres * unitsPerMillimetre))));
