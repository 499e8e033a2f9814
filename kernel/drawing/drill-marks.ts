// A drill hole as an upright cross.
import { straight } from "../geometry/path.ts";
import type { Point } from "../geometry/point.ts";
import type { Stroke } from "./drawing.ts";

/** The two strokes that cross at a drill hole. */
export const drillMarks = ({ x, y }: Point): Stroke[] => [
  { kind: "drill", path: straight({ x: x - reach, y }, { x: x + reach, y }) },
  { kind: "drill", path: straight({ x, y: y - reach }, { x, y: y + reach }) },
];

// Half the height of the cross, mm.
const reach = 4;
