// A dart as strokes: its legs as sewing lines, the center that it is folded on, a drill hole short of the tip, and a notch
// at each leg end. The cap is drawn with the edge. A double-ended dart has drill holes at its leg ends instead of notches.
import { dartHalves } from "../dart-halves.ts";
import { dartMeasures } from "../dart-measures.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { straight } from "../geometry/path.ts";
import { distance, minus, type Point, plus, times, unit } from "../geometry/point.ts";
import type { Dart, Piece } from "../working.ts";
import { cutAcross } from "./cut-across.ts";
import type { Stroke } from "./drawing.ts";
import { drillMarks } from "./drill-marks.ts";

/** The strokes of a dart. */
export const dartMarks = (piece: Piece, dart: Dart): Stroke[] => {
  const { first, second, tip, lower } = dart;
  if (lower) return doubleEndedMarks(dart, lower);
  const { outward, legs } = dartMeasures(dart);
  const peak = reach(piece, dart, outward) ?? Math.min(...legs);
  const short = Math.min(shortOfTip, peak / 2);
  return [
    { kind: "sewing-line", path: straight(first, tip) },
    { kind: "sewing-line", path: straight(second, tip) },
    { kind: "dart-center", path: straight(plus(tip, times(outward, peak)), tip) },
    ...drillMarks(plus(tip, times(outward, short))),
    legNotch(piece, dart, first),
    legNotch(piece, dart, second),
  ];
};

// Common practice: the hole is drilled 10 to 15 mm short of the tip (handbook of the trade 5.5), so that the stitching covers it.
const shortOfTip = 12;

const doubleEndedMarks = (dart: Dart, lower: Point): Stroke[] => {
  const { first, second, tip } = dart;
  const legs = dartHalves(dart).flatMap((half) => [straight(half.first, half.tip), straight(half.second, half.tip)]);
  const ends = dartHalves(dart).map((half) => {
    const way = minus(half.tip === tip ? lower : tip, half.tip);
    const deep = distance(half.tip, dartMeasures(half).middle);
    return plus(half.tip, times(unit(way), Math.min(shortOfTip, deep / 2)));
  });
  const inset = Math.min(insideLegs, distance(first, second) / 4);
  const across = times(unit(minus(second, first)), inset);
  const holes = [...ends, plus(first, across), minus(second, across)];
  return [
    ...legs.map((path): Stroke => ({ kind: "sewing-line", path })),
    { kind: "dart-center", path: straight(tip, lower) },
    ...holes.flatMap(drillMarks),
  ];
};

// 2 to 5 mm inside the legs at the widest (handbook of the trade 5.5, common practice), so that the stitching covers the holes.
const insideLegs = 3;

/** How far it is from the tip to the edge in a direction, mm. */
const reach = ({ edges }: Piece, { edge, tip }: Dart, direction: Point): number | undefined => {
  const path = edges.get(edge)?.path;
  return path && crossingsWithRay(path, tip, direction).find(({ ahead }) => ahead > 0)?.ahead;
};

// Without an allowance the notch goes into the piece, as deep as other notches.
const depth = 5;

/** Along the leg and not square to the edge: folded shut, both notches of the dart lie on one another. */
const legNotch = (piece: Piece, { edge, tip }: Dart, end: Point): Stroke => {
  const out = unit(minus(end, tip));
  const inside = plus(end, times(out, -Math.min(depth, distance(end, tip) / 2)));
  return { kind: "notch", path: straight(end, cutAcross(piece, edge, end, out)?.point ?? inside) };
};
