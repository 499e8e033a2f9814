// A double-ended dart is two darts that share one mouth; what holds for a dart that opens on an edge holds for each of them.
import type { Point } from "./geometry/point.ts";
import type { Dart } from "./working.ts";

/** The upper and the lower half of a double-ended dart, each as a dart of its own; any other dart is itself. */
export const dartHalves = (dart: Dart): readonly [Dart, ...Dart[]] => {
  const { lower, ...upper } = dart;
  return lower ? [upper, { ...upper, tip: lower }] : [dart];
};

/** The corners of a dart by the names that a recipe has for them: its one or two tips, and its leg ends. */
export const dartPlaces = ({ first, second, tip, lower }: Dart): ReadonlyMap<string, Point> => {
  const tips: [string, Point][] = lower
    ? [
        ["upper", tip],
        ["lower", lower],
      ]
    : [["tip", tip]];
  return new Map([...tips, ["first", first], ["second", second]]);
};

/** The corners of a dart: its one or two tips, and its leg ends. */
export const dartCorners = (dart: Dart): Point[] => [...dartPlaces(dart).values()];
