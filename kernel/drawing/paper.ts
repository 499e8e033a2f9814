// The paper around what is drawn.
import { type Bounds, bounds } from "../geometry/bounds.ts";
import { straight } from "../geometry/path.ts";
import { rim } from "./box.ts";
import type { Group } from "./drawing.ts";
import { boxOf } from "./lettering.ts";

/** Paper, in whole mm, with a margin around every stroke and text; a small empty sheet where there are none. */
export const paperAround = (groups: readonly Group[]): Bounds => {
  const box = extentOf(groups);
  return {
    left: Math.floor(box.left) - margin,
    top: Math.floor(box.top) - margin,
    right: Math.ceil(box.right) + margin,
    bottom: Math.ceil(box.bottom) + margin,
  };
};

/** The box around every stroke and text of some groups, mm. */
export const extentOf = (groups: readonly Group[]): Bounds => {
  const strokes = groups.flatMap((group) => group.strokes.map(({ path }) => path));
  const texts = groups.flatMap((group) => group.texts.map((text) => rim(boxOf(text))));
  const paths = [
    ...strokes,
    ...texts.flatMap((points) => points.slice(1).map((point, i) => straight(points[i]!, point))),
  ];
  return paths.length === 0 ? { left: 0, top: 0, right: 0, bottom: 0 } : bounds(paths);
};

// Wide enough, in mm, for most printers and plotters to reach everything.
const margin = 15;
