// A dart as strokes: its legs as sewing lines, the center that it is folded on, a drill hole short of the tip, and a notch
// at each leg end. The cap is drawn with the edge.
import { cuttingLine } from "../cloth/allowances/cutting-line.ts";
import { dartMeasures } from "../dart-measures.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { straight } from "../geometry/path.ts";
import { distance, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import type { Dart, Piece } from "../working.ts";
import type { Stroke } from "./drawing.ts";
import { drillMarks } from "./drill-marks.ts";

/** The strokes of a dart. */
export const dartMarks = (piece: Piece, dart: Dart): Stroke[] => {
  const { first, second, tip, drawnBy: where } = dart;
  const { outward, legs } = dartMeasures(dart);
  const peak = reach(piece, dart, outward) ?? Math.min(...legs);
  const short = Math.min(shortOfTip, peak / 2);
  return [
    { kind: "sewing-line", path: straight(first, tip), where },
    { kind: "sewing-line", path: straight(second, tip), where },
    { kind: "dart-center", path: straight(plus(tip, times(outward, peak)), tip), where },
    ...drillMarks(plus(tip, times(outward, short)), where),
    legNotch(piece, dart, first),
    legNotch(piece, dart, second),
  ];
};

// Common practice: the hole is drilled 10 to 15 mm short of the tip (handbook of the trade 5.5), so that the stitching covers it.
const shortOfTip = 12;

/** How far it is from the tip to the edge in a direction, mm. */
const reach = ({ edges }: Piece, { edge, tip }: Dart, direction: Point): number | undefined => {
  const path = edges.get(edge)?.path;
  return path && crossingsWithRay(path, tip, direction).find(({ ahead }) => ahead > 0)?.ahead;
};

// Without an allowance the notch goes into the piece, as deep as other notches.
const depth = 5;

/** Along the leg and not square to the edge: folded shut, both notches of the dart lie on one another. */
const legNotch = (piece: Piece, { edge, tip, drawnBy }: Dart, end: Point): Stroke => {
  const out = unit(minus(end, tip));
  const cutting = cuttingLine(piece)?.stretches.find((stretch) => stretch.edge === edge);
  const met =
    cutting && cutting.width > 0
      ? crossingsWithRay(cutting.path, end, out).find(({ ahead }) => ahead > onLine)
      : undefined;
  const inside = plus(end, times(out, -Math.min(depth, distance(end, tip) / 2)));
  return { kind: "notch", path: straight(end, met ? met.point : inside), where: drawnBy };
};

// A cutting line nearer than this, in mm, is the sewing line.
const onLine = 0.01;
