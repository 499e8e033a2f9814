// How far something that belongs on the cloth reaches beyond it.
import { pathLength, pointAt } from "./geometry/arc-length.ts";
import { contains } from "./geometry/area.ts";
import { crossings } from "./geometry/intersect.ts";
import { nearest } from "./geometry/nearest.ts";
import { type Path, startOf } from "./geometry/path.ts";
import { type Point, sameSpotTolerance } from "./geometry/point.ts";

/** How far outside a closed line a line reaches, mm; 0 while all of it lies inside or on it. */
export const outsideBy = (loop: Path, line: Path): number => {
  const ends = [startOf(line), ...line.map(({ end }) => end)];
  return Math.max(...[...ends, ...between(loop, line)].map((point) => pointOutsideBy(loop, point)));
};

/** How far outside a closed line a point lies, mm; 0 inside and on it. */
export const pointOutsideBy = (loop: Path, point: Point): number => {
  if (contains(loop, point)) return 0;
  const { distance } = nearest(loop, point);
  return distance <= sameSpotTolerance ? 0 : distance;
};

/** Points of a line in each stretch between its crossings with the other, so that no stretch outside is passed over. */
const between = (loop: Path, line: Path): Point[] => {
  const stations = [0, ...crossings(line, loop).map(({ onFirst }) => onFirst), pathLength(line)].sort((a, b) => a - b);
  return stations.slice(1).flatMap((to, index) => {
    const from = stations[index]!;
    return Array.from({ length: looks }, (_, look) => pointAt(line, from + ((to - from) * (look + 0.5)) / looks));
  });
};

const looks = 9;
