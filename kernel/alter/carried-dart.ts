// A dart whose edge gets another line: its tip stays, and its legs end where they meet the new line.
import { dartMeasures } from "../dart-measures.ts";
import { crossingsWithRay } from "../geometry/intersect.ts";
import { endOf, type Path, startOf } from "../geometry/path.ts";
import { minus, type Point, sameSpot, unit } from "../geometry/point.ts";
import { Problem } from "../problem.ts";
import type { Dart } from "../working.ts";

/** The dart on another line; `old` is the line it lay on, whose ends go to the ends of the new one. */
export const carriedDart = (dart: Dart, old: Path, path: Path): Dart => {
  const [first, second] = dartMeasures(dart).legs;
  const carried = (end: Point, leg: number): Point => {
    if (sameSpot(end, startOf(old))) return startOf(path);
    if (sameSpot(end, endOf(old))) return endOf(path);
    const [met] = crossingsWithRay(path, dart.tip, unit(minus(end, dart.tip)))
      .filter(({ ahead }) => ahead > 0)
      .sort((a, b) => Math.abs(a.ahead - leg) - Math.abs(b.ahead - leg));
    if (met) return met.point;
    throw new Problem("dart-off-edge", `The legs of the dart ${dart.name} would not reach ${dart.edge} any more.`, {
      hint: `Shorten ${dart.name} first, or draw it below this line.`,
    });
  };
  return { ...dart, first: carried(dart.first, first), second: carried(dart.second, second) };
};
